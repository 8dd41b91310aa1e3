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
	s := a.show(&formula.Sheet{Title: message.Verbatim(titleStrength)})
	j.size(s)
	j.forces(s)
	s.Input("strength", message.Verbatim("bending strength with its factors, Fb'"), "psi", quantity.Strength, r.bending, formula.Stated)
	a.Bending = s.Let("bending", message.Verbatim("bending stress over bending strength"), "", quantity.Number, "moment / (width * depth^2 / 6 * strength)")
	s.Input("shear_strength", message.Verbatim("shear strength with its factors, Fv'"), "psi", quantity.Strength, r.shear, formula.Stated)
	a.Shear = s.Let("shear", message.Verbatim("shear stress over shear strength"), "", quantity.Number, "3 * force / (2 * width * depth * shear_strength)")
}

// forces writes the greatest moment, in lb in, and shear, in lb, of a joist
// under the total load.
func (j Joist) forces(s *formula.Sheet) {
	s.Input("live", message.Verbatim("live load"), "psf", quantity.Load, positive(j.Live), formula.Stated)
	s.Input("dead", message.Verbatim("dead load"), "psf", quantity.Load, positive(j.Dead), formula.Stated)
	s.Let("line_load", message.Verbatim("load on one joist"), "lb/in", quantity.Number, "(live + dead) * spacing / 144")
	moment, force := "line_load * span^2 / 8", "line_load * span / 2"
	if j.spans() > 1 {
		force = "5 * line_load * span / 8"
	}
	if j.Point != (quantity.Range{}) {
		s.Input("point", message.Verbatim("point load at mid span of one joist"), "lb", quantity.Weight, positive(j.Point), formula.Stated)
		moment += " + point * span / 4"
		force += map[bool]string{true: " + point / 2", false: " + 11 * point / 16"}[j.spans() == 1]
	}
	s.Let("moment", message.Verbatim("greatest bending moment"), "lb in", quantity.Number, moment)
	s.Let("force", message.Verbatim("greatest shear force"), "lb", quantity.Number, force)
}
