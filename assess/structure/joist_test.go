package structure

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"underfoot/assess/formula"
	"underfoot/assess/quantity"
)

const (
	psiPerPascal  = 1 / 6894.757293168  // NIST SP 811
	lbInPerNewton = 1 / 0.1751268369864 // lb/in in one N/mm: 0.45359237 x 9.80665 / 25.4
	mmPerInch     = 25.4
)

func point(width, depth, span, spacing, modulus, live, dead float64) Joist {
	p := quantity.Point
	return Joist{Width: p(width), Depth: p(depth), Span: p(span), Spacing: p(spacing), Modulus: p(modulus), Live: p(live), Dead: p(dead)}
}

func line(t *testing.T, s *formula.Sheet, name string) float64 {
	l, ok := s.Line(name)
	if !ok {
		t.Fatal("no line", name)
	}
	return l.Value.Lo
}

// TestWorkedExamples holds the sums to published ones.
func TestWorkedExamples(t *testing.T) {
	// HUD Residential Structural Design Guide, 2nd edition 2017, example 5.1:
	// hem-fir No.1 2x8 at 16 in, 30 psf live and 10 dead: S 13.14 in3, I 47.63
	// in4, Fb' 1345 psi, 14.865 ft by bending, 13.8 ft by L/360. The tolerances
	// are half of the last printed digit.
	strength, _ := BendingStrength("hem-fir", "no1", "2x8")
	hud := point(1.5, 7.25, 0, 16, 1.5e6, 30, 10)
	longest := hud.Longest(Bound{Ratio: 360}, quantity.Point(strength))
	// A calculation sheet for an EC5 floor joist, 2020: 80 x 240 mm C24, 6.3 m,
	// variable load 0.85 kN/m: I 92.16e6 mm4, final deflection of the variable
	// part 21.326 mm, which is 1 + 0.3 x 0.8 times that at once.
	ec5 := point(80/mmPerInch, 240/mmPerInch, 6300/mmPerInch, 144, 11000e6*psiPerPascal, 0.85*lbInPerNewton, 0).Sheet("", LiveLoad)
	// Regression value of an open finite-element library: 2x10, 16 ft, 77.3
	// lb/ft, E 9.7 GPa: 20.801 mm.
	beam := point(1.5, 9.25, 192, 12, 9.7e9*psiPerPascal, 77.3, 0).Sheet("", LiveLoad)
	for _, c := range []struct {
		what            string
		got, want, near float64
	}{
		{"HUD 5.1 Fb'", strength, 1345.5, 0.5},
		{"HUD 5.1 I", line(t, point(1.5, 7.25, 144, 16, 1.5e6, 30, 10).Sheet("", LiveLoad), "inertia"), 47.63, 0.006},
		{"HUD 5.1 bending span", longest.Bending.Lo / 12, 14.865, 0.01},
		{"HUD 5.1 deflection span", longest.Deflection.Lo / 12, 13.8, 0.05},
		{"EC5 sheet I", line(t, ec5, "inertia") * math.Pow(mmPerInch, 4), 92160000, 1},
		{"EC5 sheet variable part", line(t, ec5, "sag") * mmPerInch * 1.24, 21.326, 0.0005},
		{"2x10 beam", line(t, beam, "sag") * mmPerInch, 20.801, 0.005},
	} {
		if math.Abs(c.got-c.want) > c.near {
			t.Errorf("%s: %v, printed %v", c.what, c.got, c.want)
		}
	}
}

// TestRatioAgreesWithTheSag: the ratio is the span over the deflection.
func TestRatioAgreesWithTheSag(t *testing.T) {
	s := point(1.5, 9.25, 180, 16, 1.4e6, 40, 10).Sheet("", TotalLoad)
	if got, want := s.Result().Lo, 180/line(t, s, "sag"); math.Abs(got/want-1) > 1e-12 {
		t.Errorf("%v, want %v", got, want)
	}
}

// TestSpanScalesWithLimitAndLoad: where deflection governs the span goes with
// (load x limit)^(-1/3); the factors 0.909 for L/480 and 0.794 for L/720 follow.
func TestSpanScalesWithLimitAndLoad(t *testing.T) {
	j := point(1.5, 9.25, 0, 16, 1.4e6, 40, 10)
	at := func(limit float64) float64 { return j.Longest(Bound{Ratio: limit}, quantity.Point(1e6)).Deflection.Lo }
	for limit, want := range map[float64]float64{480: 0.909, 720: 0.794} {
		if got := at(limit) / at(360); math.Abs(got-want) > 0.0005 {
			t.Errorf("L/%v: %v, want %v", limit, got, want)
		}
	}
}

// TestWorseIsNeverStiffer: a longer span, a wider spacing, a smaller section,
// softer wood or more load never gives a better ratio.
func TestWorseIsNeverStiffer(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v := func(name string, lo, hi float64) float64 { return rapid.Float64Range(lo, hi).Draw(t, name) }
		worse := func(name string) float64 { return rapid.Float64Range(1, 2).Draw(t, name+" worse by") }
		a := [7]float64{v("width", 1, 4), v("depth", 3, 14), v("span", 48, 312), v("spacing", 8, 24), v("modulus", 5e5, 2e6), v("live", 20, 150), v("dead", 5, 100)}
		b := [7]float64{a[0] / worse("width"), a[1] / worse("depth"), a[2] * worse("span"), a[3] * worse("spacing"), a[4] / worse("modulus"), a[5] * worse("live"), a[6] * worse("dead")}
		for _, load := range []Load{LiveLoad, TotalLoad} {
			better, poorer := point(a[0], a[1], a[2], a[3], a[4], a[5], a[6]).Ratio(load), point(b[0], b[1], b[2], b[3], b[4], b[5], b[6]).Ratio(load)
			if poorer.Lo > better.Lo*(1+1e-12) {
				t.Fatalf("%v %v, %v %v", a, better, b, poorer)
			}
		}
	})
}

// TestNotKnownIsNotKnown: an input that nobody has said gives no ratio.
func TestNotKnownIsNotKnown(t *testing.T) {
	j := point(1.5, 9.25, 180, 16, 1.4e6, 40, 10)
	j.Span = quantity.Everything
	if got := j.Ratio(LiveLoad); got != quantity.Everything {
		t.Errorf("ratio %v", got)
	}
}

// TestModulusByWords: NDS Supplement 2018 Tables 4A and 4B, EN 338 Table 1 with
// a tenth for shear (guidance note of the Institution of Structural Engineers, 2013).
func TestModulusByWords(t *testing.T) {
	for _, c := range []struct {
		region, species, grade string
		want                   quantity.Range
		ok                     bool
	}{
		{"us", "hem-fir", "no2", quantity.Point(1.3e6), true},
		{"us", "hem-fir", "", quantity.Range{Lo: 1.2e6, Hi: 1.6e6}, true},
		{"us", "", "no2", quantity.Range{Lo: 1.0e6, Hi: 1.6e6}, true},
		{"us", "", "", quantity.Range{Lo: 0.9e6, Hi: 1.9e6}, true},
		{"us", "oak", "no2", quantity.Everything, false},
	} {
		got, softest, ok := ModulusOf(c.region, c.species, c.grade)
		if ok != c.ok || ok && (got != c.want || softest.Value != c.want.Lo) {
			t.Errorf("%q %q: %v %v", c.species, c.grade, got, ok)
		}
	}
	if got, _, ok := ModulusOf("uk", "hem-fir", ""); !ok || math.Abs(got.Lo*1.1/(7000e6*psiPerPascal)-1) > 1e-9 {
		t.Errorf("hem-fir where it may be sold as C14: %v", got)
	}
	if got, _, ok := ModulusOf("us", "", "c24"); !ok || math.Abs(got.Lo*1.1/(11000e6*psiPerPascal)-1) > 1e-9 {
		t.Errorf("c24: %v", got)
	}
}
