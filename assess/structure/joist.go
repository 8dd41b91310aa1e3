package structure

import (
	"underfoot/assess/figure"
	"underfoot/assess/formula"
	"underfoot/assess/message"
	"underfoot/assess/quantity"
)

// A Joist is one sawn joist under a uniform load, on two supports or running
// on over equal spans.
type Joist struct {
	Width, Depth   quantity.Range // in, true size
	Span, Spacing  quantity.Range // in; the span clear, face to face of the supports
	Modulus        quantity.Range // E, psi; a published one, which carries shear deflection already
	Live, Dead     quantity.Range // psf
	Point          quantity.Range // lb at mid span of this one joist, with the total load; nought: none
	Spans          int            // equal spans that it runs over, 1 to 3; nought is one
	Softer         []Factor       // on the modulus: wet service, incising
	Sister         Piece          // fastened beside it over the full length
	SizeOrigin     string         // what the size was taken from, or empty
	ModulusOrigin  string
	ModulusSources []figure.Source
}

// A Piece is a second joist fastened to the first from support to support. The
// two bend alike, so that their stiffnesses add up; no more is counted,
// however well they are fastened. The zero Piece is none.
type Piece struct {
	Width, Depth quantity.Range // in
	Modulus      quantity.Range // psi
}

// A Factor is a sourced factor on a design value.
type Factor struct {
	Name, What string
	figure.Figure
}

// A Load is the part of the load under which a deflection is counted.
type Load uint8

// LiveLoad is what comes and goes; TotalLoad adds what always lies there.
const (
	LiveLoad Load = iota
	TotalLoad
)

// String is the word for the load: live or total.
func (l Load) String() string { return [...]string{"live", "total"}[l] }

// Sheet is the sum that gives the ratio of span to deflection, a plain number:
//
//	w = load x spacing / 144             lb/in
//	I = width x depth^3 / 12             in^4
//	deflection = 5 w L^4 / (384 E I)     in
//	ratio = L / deflection = 384 E I / (5 w L^3)
//
// A joist over several spans has the factors of its beam in place of 5/384, a
// sister adds its E I, a point load its P L^3 / (48 E I) to the total load. An
// input that is not known gives a ratio that is not known. Source: BeamSource,
// ContinuousSource.
func (j Joist) Sheet(title string, load Load) *formula.Sheet {
	s := &formula.Sheet{Title: message.Verbatim(title)}
	j.size(s)
	terms := j.terms(s, load)
	stiffness := j.stiffness(s)
	s.Let("sag", message.Verbatim(j.place()), "in", quantity.Length, sag(terms, stiffness))
	s.Let("ratio", message.Verbatim("span over deflection"), "L/", quantity.Ratio, spanOverSag(terms, stiffness))
	return s
}

// Ratio is span over deflection under the load; see Sheet.
func (j Joist) Ratio(load Load) quantity.Range { return j.Sheet("", load).Result() }

func (j Joist) spans() int { return max(j.Spans, 1) }

func (j Joist) place() string {
	if j.spans() == 1 {
		return "deflection at mid span"
	}
	return "greatest deflection, live load on the worst of " + []string{2: "two", 3: "three"}[j.spans()] + " equal spans"
}

// size writes what the joist is.
func (j Joist) size(s *formula.Sheet) {
	s.Input("span", message.Verbatim("clear span between supports"), "in", quantity.Length, positive(j.Span), formula.Stated)
	s.Input("spacing", message.Verbatim("joist spacing, centre to centre"), "in", quantity.Length, positive(j.Spacing), formula.Stated)
	s.Input("width", message.Verbatim("thickness of a joist"), "in", quantity.Length, positive(j.Width), message.Verbatim(j.SizeOrigin))
	s.Input("depth", message.Verbatim("depth of a joist"), "in", quantity.Length, positive(j.Depth), message.Verbatim(j.SizeOrigin))
	s.Input("modulus", message.Verbatim("stiffness of the wood, E"), "psi", quantity.Strength, positive(j.Modulus), message.Verbatim(j.ModulusOrigin))
}

// terms writes the loads and gives what bends the joist.
func (j Joist) terms(s *formula.Sheet, load Load) []term {
	b := beams[j.spans()]
	s.Input("live", message.Verbatim("live load"), "psf", quantity.Load, positive(j.Live), formula.Stated)
	if load == LiveLoad {
		s.Let("line_load", message.Verbatim("load on one joist"), "lb/in", quantity.Number, "live * spacing / 144")
		return []term{{"line_load", b.live, 4}}
	}
	s.Input("dead", message.Verbatim("dead load"), "psf", quantity.Load, positive(j.Dead), formula.Stated)
	var terms []term
	if b.live == b.dead {
		s.Let("line_load", message.Verbatim("load on one joist"), "lb/in", quantity.Number, "(live + dead) * spacing / 144")
		terms = []term{{"line_load", b.live, 4}}
	} else {
		s.Let("line_load", message.Verbatim("live load on one joist"), "lb/in", quantity.Number, "live * spacing / 144")
		s.Let("dead_line", message.Verbatim("dead load on one joist"), "lb/in", quantity.Number, "dead * spacing / 144")
		terms = []term{{"line_load", b.live, 4}, {"dead_line", b.dead, 4}}
	}
	if j.Point != (quantity.Range{}) {
		s.Input("point", message.Verbatim("point load at mid span of one joist"), "lb", quantity.Weight, positive(j.Point), formula.Stated)
		terms = append(terms, term{"point", b.point, 3})
	}
	return terms
}

// stiffness writes what resists bending and gives it as an expression.
func (j Joist) stiffness(s *formula.Sheet) string {
	modulus := "modulus"
	if len(j.Softer) > 0 {
		product := modulus
		for _, f := range j.Softer {
			s.Input(f.Name, message.Verbatim(f.What), "", quantity.Number, quantity.Point(f.Value), message.Verbatim(f.Source.Title))
			product += " * " + f.Name
		}
		modulus = "modulus_in_use"
		s.Let(modulus, message.Verbatim("stiffness of the wood as it is used"), "psi", quantity.Strength, product)
	}
	s.Let("inertia", message.Verbatim("second moment of area, I"), "in^4", quantity.Number, "width * depth^3 / 12")
	if j.Sister == (Piece{}) {
		return modulus + " * inertia"
	}
	s.Input("sister_width", message.Verbatim("thickness of the sister"), "in", quantity.Length, positive(j.Sister.Width), formula.Stated)
	s.Input("sister_depth", message.Verbatim("depth of the sister"), "in", quantity.Length, positive(j.Sister.Depth), formula.Stated)
	s.Input("sister_modulus", message.Verbatim("stiffness of its wood, E"), "psi", quantity.Strength, positive(j.Sister.Modulus), formula.Stated)
	s.Let("stiffness", message.Verbatim("E I of both together"), "lb in^2", quantity.Number, modulus+" * inertia + sister_modulus * sister_width * sister_depth^3 / 12")
	return "stiffness"
}

// positive is what is possible of a size or load: nothing below nought is.
func positive(r quantity.Range) quantity.Range {
	if r.Lo < 0 {
		r.Lo = 0
	}
	return r
}
