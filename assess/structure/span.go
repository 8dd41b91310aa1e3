package structure

import (
	"math"

	"underfoot/assess/figure"
	"underfoot/assess/formula"
	"underfoot/assess/message"
	"underfoot/assess/quantity"
)

// LongestSpanIn is the length at which published joist tables end, 26 ft, and
// with them the sums of this package.
const LongestSpanIn = 26 * 12.0

// Longest is the greatest clear span of a joist, in inches, by deflection and
// by bending strength; neither is capped at the end of the tables. A point load
// is not in it.
//
//	by deflection  L = (384 E I / (5 N w))^(1/3)    w the load of the bound on one joist, N its ratio
//	by the cap     L = (384 E I x cap / (5 w))^(1/4)    where that is longer than the span from which the cap counts
//	by bending     L = sqrt(8 Fb' S / w)            w the total load, S = width x depth^2 / 6
//
// Fb' is the bending strength in psi with the factors for size and for
// repetitive members. No shear, bearing or creep term: published joist tables
// have none. Source: recomputed from IRC 2018 Tables R502.3.1 and R802.5.1,
// which these formulas give to the inch.
type Longest struct {
	Deflection, Bending quantity.Range
}

// Longest is the longest span that keeps the bound, and the bending stress
// under the total load.
func (j Joist) Longest(b Bound, bending quantity.Range) Longest {
	s := j.longest(b, bending)
	stiff, _ := s.Line("stiff")
	if capped, ok := s.Line("capped"); ok {
		stiff.Value = quantity.Range{Lo: b.shorter(stiff.Value.Lo, capped.Value.Lo), Hi: b.shorter(stiff.Value.Hi, capped.Value.Hi)}
	}
	strong, _ := s.Line("strong")
	return Longest{stiff.Value, strong.Value}
}

// shorter is the span that the ratio and the cap allow together.
func (b Bound) shorter(byRatio, byCap float64) float64 {
	return math.Min(byRatio, math.Max(b.CapFrom, byCap))
}

// longest is the sum behind Longest.
func (j Joist) longest(b Bound, bending quantity.Range) *formula.Sheet {
	s := &formula.Sheet{Title: message.New("structure/title.longest")}
	j.size(s)
	s.Input("limit", message.New("structure/line.limit"), "L/", quantity.Ratio, quantity.Point(b.Ratio), formula.Stated)
	s.Input("strength", message.New("structure/line.bending_strength"), "psi", quantity.Strength, positive(bending), formula.Stated)
	uniform := j
	uniform.Point = quantity.Range{}
	terms := uniform.terms(s, b.Load)
	if b.Load == LiveLoad {
		s.Input("dead", message.New("structure/line.dead"), "psf", quantity.Load, positive(j.Dead), formula.Stated)
	}
	stiffness := j.stiffness(s)
	var sum string
	if len(terms) == 1 {
		sum = terms[0].line()
	} else {
		sum = "(" + terms[0].line() + " + " + terms[1].line() + ")"
	}
	if b.Cap > 0 {
		s.Input("cap", message.New("structure/line.cap"), "in", quantity.Length, quantity.Point(b.Cap), formula.Stated)
		s.Let("capped", message.New("structure/line.by_cap"), "in", quantity.Length, "("+stiffness+" * cap / "+sum+")^(1 / 4)")
	}
	s.Let("stiff", message.New("structure/line.by_limit"), "in", quantity.Length, "("+stiffness+" / (limit * "+sum+"))^(1 / 3)")
	s.Let("strong", message.New("structure/line.by_strength"), "in", quantity.Length, "sqrt(8 * strength * width * depth^2 / 6 / ((live + dead) * spacing / 144))")
	return s
}

// line is the load of a term with its fraction.
func (t term) line() string {
	text := t.load + " / " + t.of.under
	if t.of.over != "" {
		text = t.of.over + " * " + text
	}
	return "(" + text + ")"
}

// Governing is the shorter of the two, and never over LongestSpanIn.
func (l Longest) Governing() quantity.Range {
	short := func(a, b float64) float64 { return math.Min(LongestSpanIn, math.Min(a, b)) }
	return quantity.Range{Lo: short(l.Deflection.Lo, l.Bending.Lo), Hi: short(l.Deflection.Hi, l.Bending.Hi)}
}

// BendingStrength is Fb', in psi, of a nominal size in a species and grade:
// the table value times the factors for size and for repetitive members, for
// dry wood under ordinary load. ok is false where no table has it.
func BendingStrength(species, grade, nominal string) (psi float64, ok bool) {
	fb, ok := figure.LumberValue(species, grade, nominal, figure.Bending)
	size, sized := figure.SizeFactor(species, nominal)
	return fb.Value * size.Value * figure.RepetitiveFactor().Value, ok && sized
}
