package structure

import (
	"strconv"

	"underfoot/assess/formula"
	"underfoot/assess/message"
	"underfoot/assess/quantity"
)

// A bent floor is one row of the table of finite-element deflections.
type bent map[string]string

// number is a cell; an empty one is zero.
func (b bent) number(column string) float64 {
	v, _ := strconv.ParseFloat(b[column], 64)
	return v
}

// A bentJoist is the joist of a row, without a load.
type bentJoist func(bent) Joist

// overSpans is the joist over so many spans, with its sister.
func overSpans(spans int) bentJoist {
	return func(b bent) Joist {
		j := point(b.number("width_in"), b.number("depth_in"), b.number("span_in"), b.number("spacing_in"), b.number("modulus_psi"), 0, 0)
		j.Spans = spans
		if p := quantity.Point; b["sister_width_in"] != "" {
			j.Sister = Piece{p(b.number("sister_width_in")), p(b.number("sister_depth_in")), p(b.number("sister_modulus_psi"))}
		}
		return j
	}
}

// propped is the joist with a beam put under its middle.
func propped(b bent) Joist { return beamAtMidSpan(overSpans(1)(b)).joist }

// reckonLive is the deflection with the row's load on the worst spans alone.
func reckonLive(of bentJoist) func(bent) float64 {
	return func(b bent) float64 {
		j := of(b)
		j.Live = quantity.Point(b.number("load_psf"))
		return value(j.Sheet(LiveLoad), "sag").Lo
	}
}

// reckonAll is the deflection with the row's load on all spans, as dead load,
// and with its point load.
func reckonAll(of bentJoist) func(bent) float64 {
	return func(b bent) float64 {
		j := of(b)
		j.Dead, j.Point = quantity.Point(b.number("load_psf")), quantity.Point(b.number("point_lb"))
		return value(j.Sheet(TotalLoad), "sag").Lo
	}
}

// reckonTip is the deflection of the end of an overhang.
func reckonTip(b bent) float64 {
	j, overhang := overSpans(1)(b), b.number("overhang_in")
	j.Live = quantity.Point(b.number("load_psf"))
	var a Analysis
	a.tip(Member{Overhang: quantity.Point(overhang)}, j)
	return 2 * overhang / a.Tip.Lo
}

// reckonPanel is the deflection of the sheets between joists that are 1-1/2 in wide.
func reckonPanel(bays int) func(bent) float64 {
	return func(b bent) float64 {
		p := quantity.Point
		a := DeckAnalysis{Sheet: &formula.Sheet{}}
		a.Sheet.Input("first", message.Message{}, "lb in^2/ft", quantity.Number, p(b.number("sheet_stiffness_lbf_in2_per_ft")), formula.Stated)
		a.Sheet.Input("second", message.Message{}, "lb in^2/ft", quantity.Number, p(b.number("second_sheet_stiffness_lbf_in2_per_ft")), formula.Stated)
		a.compute(Deck{Spacing: p(b.number("spacing_in")), Bays: bays, Live: p(b.number("load_psf"))}, "first + second")
		return a.Deflection.Lo
	}
}

// reckonTest is the drop of the middle by the sum of a load test, turned round:
// the drop that gives the joist the stiffness it has. Two weights that stand
// alike from either end each bend the middle by half.
func reckonTest(b bent) float64 {
	j := overSpans(1)(b)
	drop := b.number("deflection_in") / 2
	test := LoadTest{Weight: quantity.Point(b.number("point_lb")), Place: quantity.Point(b.number("point_at_in")), Drop: quantity.Point(drop)}
	measured := value(test.sheet(j), "stiffness").Lo
	return b.number("deflection_in") * measured / j.stiffnessOf().Lo
}

// reckonedKinds are the kinds of floors in the table, and how each is reckoned.
var reckonedKinds = map[string]func(bent) float64{
	"simple, uniform":                                reckonLive(overSpans(1)),
	"simple, point at mid span":                      reckonAll(overSpans(1)),
	"simple, uniform and point at mid span":          reckonAll(overSpans(1)),
	"simple, two points":                             reckonTest,
	"two spans, both loaded":                         reckonAll(overSpans(2)),
	"two spans, one loaded":                          reckonLive(overSpans(2)),
	"two spans, point at mid span of one":            reckonAll(overSpans(2)),
	"three spans, all loaded":                        reckonAll(overSpans(3)),
	"three spans, outer two loaded":                  reckonLive(overSpans(3)),
	"three spans, point at mid span of an outer one": reckonAll(overSpans(3)),
	"overhang loaded, tip":                           reckonTip,
	"full-length sister":                             reckonLive(overSpans(1)),
	"mid-span support added, one bay loaded":         reckonLive(propped),
	"mid-span support added, both bays loaded":       reckonAll(propped),
	"panel, one span":                                reckonPanel(1),
	"panel, two spans":                               reckonPanel(2),
	"panel, three spans":                             reckonPanel(3),
	"panel of two sheets, two spans":                 reckonPanel(2),
}

// summedKinds are the kinds whose live and dead load bend most at unlike places. The
// product adds both greatest deflections, which is never less than the truth.
var summedKinds = map[string]int{
	"two spans, live load on one, dead load on both":        2,
	"three spans, live load on outer two, dead load on all": 3,
}
