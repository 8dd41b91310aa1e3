package structure

import (
	"maps"
	"math"
	"slices"
	"strconv"
	"testing"

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
	piece := func(of string) float64 {
		return b.number(of+"modulus_psi") * b.number(of+"width_in") * math.Pow(b.number(of+"depth_in"), 3) / 12
	}
	return piece("") + piece("sister_") + b.number("sheet_stiffness_lbf_in2_per_ft")
}

// by reckons a deflection, in inches, by an expression over the row: w the load
// on one joist in lb/in, q that on a panel in psf, P and a a point load
// and its place, L the span, o the overhang, EI the stiffness.
func by(expr string) func(bent) float64 {
	return func(b bent) float64 {
		s := &formula.Sheet{}
		put := func(name string, v float64) {
			s.Input(name, "", "", quantity.Number, quantity.Point(v), "")
		}
		put("w", b.number("load_psf")*b.number("spacing_in")/144)
		put("q", b.number("load_psf"))
		put("P", b.number("point_lb"))
		put("a", b.number("point_at_in"))
		put("L", b.number("span_in"))
		put("o", b.number("overhang_in"))
		put("EI", b.stiffness())
		return s.Let("sag", "", "in", quantity.Length, expr).Lo
	}
}

// bySheet is the sum of one joist on two supports.
func bySheet(b bent) float64 {
	j := point(b.number("width_in"), b.number("depth_in"), b.number("span_in"), b.number("spacing_in"), b.number("modulus_psi"), b.number("load_psf"), 0)
	sag, _ := j.Sheet("", LiveLoad).Line("sag")
	return sag.Value.Lo
}

// reckonings are the kinds of floors in the table, and how each is reckoned.
var reckonings = map[string]func(bent) float64{
	"simple, uniform":                          bySheet,
	"full-length sister":                       by("5 * w * L^4 / (384 * EI)"),
	"simple, point at mid span":                by("P * L^3 / (48 * EI)"),
	"simple, two points":                       by("P * a * (3 * L^2 - 4 * a^2) / (24 * EI)"),
	"two spans, both loaded":                   by("w * L^4 / (184.6 * EI)"),
	"two spans, one loaded":                    by("w * L^4 / (109.3 * EI)"),
	"three spans, all loaded":                  by("w * L^4 / (145.3 * EI)"),
	"three spans, outer two loaded":            by("w * L^4 / (100.8 * EI)"),
	"overhang loaded, tip":                     by("w * o^3 * (4 * L + 3 * o) / (24 * EI)"),
	"mid-span support added, one bay loaded":   by("w * (L / 2)^4 / (109.3 * EI)"),
	"mid-span support added, both bays loaded": by("w * (L / 2)^4 / (184.6 * EI)"),
	"panel, one span":                          by("q * L^4 / (921.6 * EI)"),
	"panel, two spans":                         by("q * L^4 / (2215.6 * EI)"),
	"panel, three spans":                       by("q * L^4 / (1743 * EI)"),
}

// withinShare is how far a deflection may lie from that of the solver.
const withinShare = 0.001

// TestAgainstFiniteElements holds the deflections to those of an independent
// finite-element solver; testdata/fe says which, and how each floor is modelled.
func TestAgainstFiniteElements(t *testing.T) {
	rows, count, most := tableRows(t, "testdata/fe/cases.csv"), map[string]int{}, map[string]float64{}
	for _, row := range rows {
		b := bent(row)
		reckon, known := reckonings[b["kind"]]
		if !known {
			t.Fatalf("%s: nothing reckons %q", b["id"], b["kind"])
		}
		got, want := reckon(b), b.number("deflection_in")
		off := math.Abs(got/want - 1)
		if !(off <= withinShare) {
			t.Errorf("%s %s: %v in, by finite elements %v", b["id"], b["kind"], got, want)
		}
		count[b["kind"]]++
		most[b["kind"]] = max(most[b["kind"]], off)
	}
	largest := 0.0
	for _, kind := range slices.Sorted(maps.Keys(reckonings)) {
		t.Logf("%-42s %3d floors, largest difference %.4f %%", kind, count[kind], 100*most[kind])
		largest = max(largest, most[kind])
		if count[kind] == 0 {
			t.Errorf("no floor of the kind %q", kind)
		}
	}
	t.Logf("%d floors, largest difference %.4f %%", len(rows), 100*largest)
	if len(rows) < 200 {
		t.Errorf("%d floors, at least 200 are wanted", len(rows))
	}
}
