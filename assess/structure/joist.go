package structure

import (
	"underfoot/assess/figure"
	"underfoot/assess/formula"
	"underfoot/assess/quantity"
)

// A Joist is one sawn joist on two supports under a uniform load.
type Joist struct {
	Width, Depth   quantity.Range // in, true size
	Span, Spacing  quantity.Range // in; the span clear, face to face of the supports
	Modulus        quantity.Range // E, psi; a published one, which carries shear deflection already
	Live, Dead     quantity.Range // psf
	SizeOrigin     string         // what the size was taken from, or empty
	ModulusOrigin  string
	ModulusSources []figure.Source
}

// A Load is the part of the load under which a deflection is counted.
type Load uint8

// LiveLoad is what comes and goes; TotalLoad adds what always lies there.
const (
	LiveLoad Load = iota
	TotalLoad
)

// BeamSource is where the deflection formula was read.
var BeamSource = figure.Source{Title: "Wood Handbook FPL-GTR-190", Edition: "2010, Table 9-1: simple span, uniform load, 5/384", Known: "lookup"}

// Sheet is the sum that gives the ratio of span to deflection, a plain number:
//
//	w = load x spacing / 144             lb/in
//	I = width x depth^3 / 12             in^4
//	deflection = 5 w L^4 / (384 E I)     in
//	ratio = L / deflection = 384 E I / (5 w L^3)
//
// The ratio is written out so that the span stands in it once: its ends are
// then those that some floor within the inputs really has. An input that is
// not known gives a ratio that is not known. Source: BeamSource.
func (j Joist) Sheet(title string, load Load) *formula.Sheet {
	s := &formula.Sheet{Title: title}
	s.Input("span", "clear span between supports", "in", quantity.Length, positive(j.Span), "")
	s.Input("spacing", "joist spacing, centre to centre", "in", quantity.Length, positive(j.Spacing), "")
	s.Input("width", "thickness of a joist", "in", quantity.Length, positive(j.Width), j.SizeOrigin)
	s.Input("depth", "depth of a joist", "in", quantity.Length, positive(j.Depth), j.SizeOrigin)
	s.Input("modulus", "stiffness of the wood, E", "psi", quantity.Strength, positive(j.Modulus), j.ModulusOrigin)
	s.Input("live", "live load", "psf", quantity.Load, positive(j.Live), "")
	area := "live"
	if load == TotalLoad {
		s.Input("dead", "dead load", "psf", quantity.Load, positive(j.Dead), "")
		area = "(live + dead)"
	}
	s.Let("line_load", "load on one joist", "lb/in", quantity.Number, area+" * spacing / 144")
	s.Let("inertia", "second moment of area, I", "in^4", quantity.Number, "width * depth^3 / 12")
	s.Let("sag", "deflection at mid span", "in", quantity.Length, "5 * line_load * span^4 / (384 * modulus * inertia)")
	s.Let("ratio", "span over deflection", "L/", quantity.Ratio, "384 * modulus * inertia / (5 * line_load * span^3)")
	return s
}

// Ratio is span over deflection under the load; see Sheet.
func (j Joist) Ratio(load Load) quantity.Range { return j.Sheet("", load).Result() }

// positive is what is possible of a size or load: nothing below nought is.
func positive(r quantity.Range) quantity.Range {
	if r.Lo < 0 {
		r.Lo = 0
	}
	return r
}
