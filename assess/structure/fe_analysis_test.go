package structure

import (
	"testing"

	"underfoot/assess/figure"
	"underfoot/assess/quantity"
)

// analyzedKinds are the kinds that the `joist` command can be told of, with the
// words for how the joist runs on.
var analyzedKinds = map[string]string{
	"simple, uniform":               "one-span",
	"two spans, one loaded":         "two-spans",
	"three spans, outer two loaded": "three-spans",
	"overhang loaded, tip":          "one-span",
}

// TestAnalysisAgainstFiniteElements holds what a reader is told, from a species
// and a grade, to the deflections of the solver.
func TestAnalysisAgainstFiniteElements(t *testing.T) {
	region, floors := figure.For("us", quantity.US), 0
	for _, row := range tableRows(t, "testdata/fe/cases.csv") {
		b := bent(row)
		continuity, analyzed := analyzedKinds[b["kind"]]
		if !analyzed {
			continue
		}
		a := Analyze(b.member(t, continuity), Loads{Live: quantity.Point(b.number("load_psf"))}, BoundFor("ceramic", region), region)
		ratio, length := a.Live, b.number("span_in")
		if b["overhang_in"] != "" {
			ratio, length = a.Tip, 2*b.number("overhang_in")
		}
		if off := length/ratio.Lo/b.number("deflection_in") - 1; !a.Refusal.IsZero() || !ratio.IsPoint() || !nearBent.Contains(off) {
			t.Errorf("%s %s: L/%v %s, by finite elements %v in", b["id"], b["kind"], ratio, a.Refusal, b["deflection_in"])
		}
		floors++
	}
	if floors != 100 {
		t.Errorf("%d floors, want 100", floors)
	}
}

// member is the row of joists as the command reads it.
func (b bent) member(t *testing.T, continuity string) Member {
	p := quantity.Point
	species, grade := woodOf(t, b.number("modulus_psi"))
	return Member{Width: p(b.number("width_in")), Depth: p(b.number("depth_in")), Species: []string{species}, Grades: []string{grade},
		Span: p(b.number("span_in")), Spacing: p(b.number("spacing_in")), Continuity: continuity, Overhang: p(b.number("overhang_in"))}
}

// woodOf is a species and grade whose published modulus is the one wanted.
func woodOf(t *testing.T, psi float64) (species, grade string) {
	for _, species := range figure.Species() {
		for _, grade := range figure.Grades(species) {
			if e, _, ok := modulusOf("us", species, grade); ok && e == quantity.Point(psi) {
				return species, grade
			}
		}
	}
	t.Fatalf("no wood of %v psi", psi)
	return "", ""
}
