package structure

import (
	"math"

	"underfoot/assess/figure"
	"underfoot/assess/formula"
	"underfoot/assess/quantity"
)

// LongestSpanIn is the length at which published joist tables end, 26 ft, and
// with them the sums of this package.
const LongestSpanIn = 26 * 12.0

// SpanTableSource is where the end of the tables was read.
var SpanTableSource = figure.Source{Title: "International Residential Code", Edition: "2018, R802.5.1(2) note a; the same practice in the floor tables is from memory", Known: "lookup"}

// Longest is the greatest clear span of a joist, in inches, by deflection and
// by bending strength; neither is capped.
//
//	by deflection  L = (384 E I / (5 N w))^(1/3)    w the live load on one joist, N the limit
//	by bending     L = sqrt(8 Fb' S / w)            w the total load, S = width x depth^2 / 6
//
// Fb' is the bending strength in psi with the factors for size and for
// repetitive members. No shear, bearing or creep term: published joist tables
// have none. Source: recomputed from IRC 2018 Tables R502.3.1 and R802.5.1,
// which these formulas give to the inch.
type Longest struct {
	Deflection, Bending quantity.Range
}

// Longest is the longest span that keeps the limit under live load and the
// bending stress under the total load.
func (j Joist) Longest(limit float64, bending quantity.Range) Longest {
	s := &formula.Sheet{}
	s.Input("spacing", "", "in", quantity.Length, positive(j.Spacing), "")
	s.Input("width", "", "in", quantity.Length, positive(j.Width), "")
	s.Input("depth", "", "in", quantity.Length, positive(j.Depth), "")
	s.Input("modulus", "", "psi", quantity.Strength, positive(j.Modulus), "")
	s.Input("live", "", "psf", quantity.Load, positive(j.Live), "")
	s.Input("dead", "", "psf", quantity.Load, positive(j.Dead), "")
	s.Input("limit", "", "L/", quantity.Ratio, quantity.Point(limit), "")
	s.Input("strength", "", "psi", quantity.Strength, positive(bending), "")
	return Longest{
		Deflection: s.Let("stiff", "", "in", quantity.Length, "(384 * modulus * width * depth^3 / 12 / (5 * limit * live * spacing / 144))^(1 / 3)"),
		Bending:    s.Let("strong", "", "in", quantity.Length, "sqrt(8 * strength * width * depth^2 / 6 / ((live + dead) * spacing / 144))"),
	}
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
