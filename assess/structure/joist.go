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
	Width, Depth   quantity.Range  // in, true size
	Span, Spacing  quantity.Range  // in; the span clear, face to face of the supports
	Modulus        quantity.Range  // E, psi; a published one, which carries shear deflection already
	Live, Dead     quantity.Range  // psf
	Point          quantity.Range  // lb at mid span of this one joist, with the total load; zero: none
	Spans          int             // equal spans that it runs over, 1 to 3; zero is one
	Softer         []Factor        // on the modulus: wet service, incising
	Sister         Piece           // fastened beside it over the full length
	SizeOrigin     message.Message // what the size was taken from, or nothing
	ModulusOrigin  message.Message
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
	Name string
	What message.Message
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
// input that is not known gives a ratio that is not known. Source: methods.csv,
// beam and continuous.
func (j Joist) Sheet(load Load) *formula.Sheet {
	s := &formula.Sheet{}
	j.size(s)
	terms := j.terms(s, load)
	stiffness := j.stiffness(s)
	s.Let("sag", j.place(), "in", quantity.Length, sag(terms, stiffness))
	s.Let("ratio", message.New("structure/line.ratio"), "L/", quantity.Ratio, spanOverSag(terms, stiffness))
	return s
}

// Ratio is span over deflection under the load; see Sheet.
func (j Joist) Ratio(load Load) quantity.Range { return j.Sheet(load).Result() }

func (j Joist) spans() int { return max(j.Spans, 1) }

func (j Joist) place() message.Message {
	switch j.spans() {
	case 1:
		return message.New("structure/line.sag")
	case 2:
		return message.New("structure/line.sag_two")
	}
	return message.New("structure/line.sag_three")
}

// size writes what the joist is.
func (j Joist) size(s *formula.Sheet) {
	s.Input("span", message.New("structure/line.span"), "in", quantity.Length, positive(j.Span), formula.Stated)
	s.Input("spacing", message.New("structure/line.spacing"), "in", quantity.Length, positive(j.Spacing), formula.Stated)
	s.Input("width", message.New("structure/line.width"), "in", quantity.Length, positive(j.Width), j.SizeOrigin)
	s.Input("depth", message.New("structure/line.depth"), "in", quantity.Length, positive(j.Depth), j.SizeOrigin)
	s.Input("modulus", message.New("structure/line.modulus"), "psi", quantity.Strength, positive(j.Modulus), j.ModulusOrigin)
}

// terms writes the loads and gives what bends the joist.
func (j Joist) terms(s *formula.Sheet, load Load) []term {
	b := beams[j.spans()]
	s.Input("live", message.New("structure/line.live"), "psf", quantity.Load, positive(j.Live), formula.Stated)
	if load == LiveLoad {
		s.Let("line_load", message.New("structure/line.line_load"), "lb/in", quantity.Number, "live * spacing / 144")
		return []term{{"line_load", b.live, 4}}
	}
	s.Input("dead", message.New("structure/line.dead"), "psf", quantity.Load, positive(j.Dead), formula.Stated)
	var terms []term
	if b.live == b.dead {
		s.Let("line_load", message.New("structure/line.line_load"), "lb/in", quantity.Number, "(live + dead) * spacing / 144")
		terms = []term{{"line_load", b.live, 4}}
	} else {
		s.Let("line_load", message.New("structure/line.live_line"), "lb/in", quantity.Number, "live * spacing / 144")
		s.Let("dead_line", message.New("structure/line.dead_line"), "lb/in", quantity.Number, "dead * spacing / 144")
		terms = []term{{"line_load", b.live, 4}, {"dead_line", b.dead, 4}}
	}
	if j.Point != (quantity.Range{}) {
		s.Input("point", message.New("structure/line.point"), "lb", quantity.Weight, positive(j.Point), formula.Stated)
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
			s.Input(f.Name, f.What, "", quantity.Number, quantity.Point(f.Value), message.Verbatim(f.Source.Title))
			product += " * " + f.Name
		}
		modulus = "modulus_in_use"
		s.Let(modulus, message.New("structure/line.modulus_in_use"), "psi", quantity.Strength, product)
	}
	s.Let("inertia", message.New("structure/line.inertia"), "in^4", quantity.Number, "width * depth^3 / 12")
	if j.Sister == (Piece{}) {
		return modulus + " * inertia"
	}
	s.Input("sister_width", message.New("structure/line.sister_width"), "in", quantity.Length, positive(j.Sister.Width), formula.Stated)
	s.Input("sister_depth", message.New("structure/line.sister_depth"), "in", quantity.Length, positive(j.Sister.Depth), formula.Stated)
	s.Input("sister_modulus", message.New("structure/line.sister_modulus"), "psi", quantity.Strength, positive(j.Sister.Modulus), formula.Stated)
	s.Let("stiffness", message.New("structure/line.both"), "lb in^2", quantity.Number, modulus+" * inertia + sister_modulus * sister_width * sister_depth^3 / 12")
	return "stiffness"
}

// positive is what is possible of a size or load: nothing below zero is.
func positive(r quantity.Range) quantity.Range {
	if r.Lo < 0 {
		r.Lo = 0
	}
	return r
}
