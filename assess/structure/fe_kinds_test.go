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

// reckonLive is the deflection with the row's load on the worst spans alone.
func reckonLive(spans int) func(bent) float64 {
	return func(b bent) float64 {
		j := b.joist(spans)
		j.Live = quantity.Point(b.number("load_psf"))
		return value(j.Sheet("", LiveLoad), "sag").Lo
	}
}

// reckonAll is the deflection with the row's load on all spans, as dead load, and
// with its point load.
func reckonAll(spans int) func(bent) float64 {
	return func(b bent) float64 {
		j := b.joist(spans)
		j.Dead, j.Point = quantity.Point(b.number("load_psf")), quantity.Point(b.number("point_lb"))
		return value(j.Sheet("", TotalLoad), "sag").Lo
	}
}

// reckonHalf is a reckoning of the joist that a support at mid span leaves.
func reckonHalf(reckon func(bent) float64) func(bent) float64 {
	return func(b bent) float64 {
		b = maps.Clone(b)
		b["span_in"] = strconv.FormatFloat(b.number("span_in")/2, 'g', -1, 64)
		return reckon(b)
	}
}

// reckonTip is the deflection of the end of an overhang.
func reckonTip(b bent) float64 {
	j, overhang := b.joist(1), b.number("overhang_in")
	j.Live = quantity.Point(b.number("load_psf"))
	var a Analysis
	a.tip(Member{Overhang: quantity.Point(overhang)}, j)
	return 2 * overhang / a.Tip.Lo
}

// reckonBy reckons by an expression where the product has no sum yet: P and a a
// point load and its place, q the load on a panel in psf, L the span, EI the
// stiffness.
func reckonBy(expr string) func(bent) float64 {
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

// reckonedKinds are the kinds of floors in the table, and how each is reckoned.
var reckonedKinds = map[string]func(bent) float64{
	"simple, uniform":                                reckonLive(1),
	"simple, point at mid span":                      reckonAll(1),
	"simple, uniform and point at mid span":          reckonAll(1),
	"simple, two points":                             reckonBy("P * a * (3 * L^2 - 4 * a^2) / (24 * EI)"),
	"two spans, both loaded":                         reckonAll(2),
	"two spans, one loaded":                          reckonLive(2),
	"two spans, point at mid span of one":            reckonAll(2),
	"three spans, all loaded":                        reckonAll(3),
	"three spans, outer two loaded":                  reckonLive(3),
	"three spans, point at mid span of an outer one": reckonAll(3),
	"overhang loaded, tip":                           reckonTip,
	"full-length sister":                             reckonLive(1),
	"mid-span support added, one bay loaded":         reckonHalf(reckonLive(2)),
	"mid-span support added, both bays loaded":       reckonHalf(reckonAll(2)),
	"panel, one span":                                reckonBy("q * L^4 / (921.6 * EI)"),
	"panel, two spans":                               reckonBy("q * L^4 / (2215.6 * EI)"),
	"panel, three spans":                             reckonBy("q * L^4 / (1743 * EI)"),
	"panel of two sheets, two spans":                 reckonBy("q * L^4 / (2215.6 * EI)"),
}

// summedKinds are the kinds whose live and dead load bend most at unlike places. The
// product adds both greatest deflections, which is never less than the truth.
var summedKinds = map[string]int{
	"two spans, live load on one, dead load on both":        2,
	"three spans, live load on outer two, dead load on all": 3,
}
