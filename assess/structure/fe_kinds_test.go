package structure

import (
	"maps"
	"math"
	"strconv"

	"underfoot/assess/formula"
	"underfoot/assess/quantity"
)

// A bent floor is one row of the table of finite-element deflections.
type bent map[string]string

// number is a cell; an empty one is nought.
func (b bent) number(column string) float64 {
	v, _ := strconv.ParseFloat(b[column], 64)
	return v
}

// stiffness is E I of everything that bends, lb in^2; of a panel for a foot of width.
func (b bent) stiffness() float64 {
	return b.number("modulus_psi")*b.number("width_in")*math.Pow(b.number("depth_in"), 3)/12 +
		b.number("sheet_stiffness_lbf_in2_per_ft") + b.number("second_sheet_stiffness_lbf_in2_per_ft")
}

// joist is the joist of a row over so many spans, without a load.
func (b bent) joist(spans int) Joist {
	j := point(b.number("width_in"), b.number("depth_in"), b.number("span_in"), b.number("spacing_in"), b.number("modulus_psi"), 0, 0)
	j.Spans = spans
	if b["sister_width_in"] != "" {
		p := quantity.Point
		j.Sister = Piece{p(b.number("sister_width_in")), p(b.number("sister_depth_in")), p(b.number("sister_modulus_psi"))}
	}
	return j
}

// live is the deflection with the row's load on the worst spans alone.
func live(spans int) func(bent) float64 {
	return func(b bent) float64 {
		j := b.joist(spans)
		j.Live = quantity.Point(b.number("load_psf"))
		return value(j.Sheet("", LiveLoad), "sag").Lo
	}
}

// all is the deflection with the row's load on all spans, as dead load, and
// with its point load.
func all(spans int) func(bent) float64 {
	return func(b bent) float64 {
		j := b.joist(spans)
		j.Dead, j.Point = quantity.Point(b.number("load_psf")), quantity.Point(b.number("point_lb"))
		return value(j.Sheet("", TotalLoad), "sag").Lo
	}
}

// halved is a reckoning of the joist that a support at mid span leaves.
func halved(reckon func(bent) float64) func(bent) float64 {
	return func(b bent) float64 {
		b = maps.Clone(b)
		b["span_in"] = strconv.FormatFloat(b.number("span_in")/2, 'g', -1, 64)
		return reckon(b)
	}
}

// tip is the deflection of the end of an overhang.
func tip(b bent) float64 {
	j, overhang := b.joist(1), b.number("overhang_in")
	j.Live = quantity.Point(b.number("load_psf"))
	var a Analysis
	a.tip(Member{Overhang: quantity.Point(overhang)}, j)
	return 2 * overhang / a.Tip.Lo
}

// by reckons by an expression where the product has no sum yet: P and a a
// point load and its place, q the load on a panel in psf, L the span, EI the
// stiffness.
func by(expr string) func(bent) float64 {
	return func(b bent) float64 {
		s := &formula.Sheet{}
		put := func(name string, v float64) {
			s.Input(name, "", "", quantity.Number, quantity.Point(v), "")
		}
		put("P", b.number("point_lb"))
		put("a", b.number("point_at_in"))
		put("q", b.number("load_psf"))
		put("L", b.number("span_in"))
		put("EI", b.stiffness())
		return s.Let("sag", "", "in", quantity.Length, expr).Lo
	}
}

// reckonings are the kinds of floors in the table, and how each is reckoned.
var reckonings = map[string]func(bent) float64{
	"simple, uniform":                                live(1),
	"simple, point at mid span":                      all(1),
	"simple, uniform and point at mid span":          all(1),
	"simple, two points":                             by("P * a * (3 * L^2 - 4 * a^2) / (24 * EI)"),
	"two spans, both loaded":                         all(2),
	"two spans, one loaded":                          live(2),
	"two spans, point at mid span of one":            all(2),
	"three spans, all loaded":                        all(3),
	"three spans, outer two loaded":                  live(3),
	"three spans, point at mid span of an outer one": all(3),
	"overhang loaded, tip":                           tip,
	"full-length sister":                             live(1),
	"mid-span support added, one bay loaded":         halved(live(2)),
	"mid-span support added, both bays loaded":       halved(all(2)),
	"panel, one span":                                by("q * L^4 / (921.6 * EI)"),
	"panel, two spans":                               by("q * L^4 / (2215.6 * EI)"),
	"panel, three spans":                             by("q * L^4 / (1743 * EI)"),
	"panel of two sheets, two spans":                 by("q * L^4 / (2215.6 * EI)"),
}

// summed are the kinds whose live and dead load bend most at unlike places. The
// product adds both greatest deflections, which is never less than the truth.
var summed = map[string]int{
	"two spans, live load on one, dead load on both":        2,
	"three spans, live load on outer two, dead load on all": 3,
}
