package structure

import (
	"underfoot/assess/formula"
	"underfoot/assess/message"
	"underfoot/assess/quantity"
)

// strength is how far the total load uses up bending and shear strength, both
// as a share: a warning, since a row of joists has to be sized for more than
// this. Moments of continuous joists are at most those of one span; their
// greatest shear is 5/8 of the load of a span.
//
//	bending  M = w L^2 / 8 + P L / 4,  M / (S Fb')    S = width x depth^2 / 6
//	shear    V = w L / 2 + P / 2,      3 V / (2 width depth Fv')
//
// Source: Wood Handbook FPL-GTR-190, chapter 9; NDS for the strengths.
func (a *Analysis) strength(r row) {
	j := r.joist
	a.Bending, a.Shear = quantity.Everything, quantity.Everything
	if !bounded(r.bending) {
		return
	}
	s := a.show(&formula.Sheet{Title: message.New("structure/title.strength")})
	j.size(s)
	j.forces(s)
	s.Input("strength", message.New("structure/line.strength"), "psi", quantity.Strength, r.bending, formula.Stated)
	a.Bending = s.Let("bending", message.New("structure/line.bending"), "", quantity.Number, "moment / (width * depth^2 / 6 * strength)")
	s.Input("shear_strength", message.New("structure/line.shear_strength"), "psi", quantity.Strength, r.shear, formula.Stated)
	a.Shear = s.Let("shear", message.New("structure/line.shear"), "", quantity.Number, "3 * force / (2 * width * depth * shear_strength)")
}

// forces writes the greatest moment, in lb in, and shear, in lb, of a joist
// under the total load.
func (j Joist) forces(s *formula.Sheet) {
	s.Input("live", message.New("structure/line.live"), "psf", quantity.Load, positive(j.Live), formula.Stated)
	s.Input("dead", message.New("structure/line.dead"), "psf", quantity.Load, positive(j.Dead), formula.Stated)
	s.Let("line_load", message.New("structure/line.line_load"), "lb/in", quantity.Number, "(live + dead) * spacing / 144")
	moment, force := "line_load * span^2 / 8", "line_load * span / 2"
	if j.spans() > 1 {
		force = "5 * line_load * span / 8"
	}
	if j.Point != (quantity.Range{}) {
		s.Input("point", message.New("structure/line.point"), "lb", quantity.Weight, positive(j.Point), formula.Stated)
		moment += " + point * span / 4"
		force += map[bool]string{true: " + point / 2", false: " + 11 * point / 16"}[j.spans() == 1]
	}
	s.Let("moment", message.New("structure/line.moment"), "lb in", quantity.Number, moment)
	s.Let("force", message.New("structure/line.force"), "lb", quantity.Number, force)
}
