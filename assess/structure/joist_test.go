package structure

import (
	"math"
	"testing"

	"underfoot/assess/figure"
	"underfoot/assess/formula"
	"underfoot/assess/quantity"
	"underfoot/assess/schema"
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
	ec5 := point(80/mmPerInch, 240/mmPerInch, 6300/mmPerInch, 144, 11000e6*psiPerPascal, 0.85*lbInPerNewton, 0).Sheet(LiveLoad)
	// The same sheet, 1.55 kN/m for strength: 7.69 kNm and 10.01 N/mm2.
	ultimate := &formula.Sheet{}
	strong := point(80/mmPerInch, 240/mmPerInch, 6300/mmPerInch, 144, 1, 1.55*lbInPerNewton, 0)
	strong.size(ultimate)
	strong.forces(ultimate)
	// Regression value of an open finite-element library: 2x10, 16 ft, 77.3
	// lb/ft, E 9.7 GPa: 20.801 mm.
	beam := point(1.5, 9.25, 192, 12, 9.7e9*psiPerPascal, 77.3, 0).Sheet(LiveLoad)
	for _, c := range []struct {
		what            string
		got, want, near float64
	}{
		{"HUD 5.1 Fb'", strength, 1345.5, 0.5},
		{"HUD 5.1 I", line(t, point(1.5, 7.25, 144, 16, 1.5e6, 30, 10).Sheet(LiveLoad), "inertia"), 47.63, 0.006},
		{"HUD 5.1 bending span", longest.Bending.Lo / 12, 14.865, 0.01},
		{"HUD 5.1 deflection span", longest.Deflection.Lo / 12, 13.8, 0.05},
		{"HUD 5.1 vibration span, L/360 at 40 psf", point(1.5, 7.25, 0, 16, 1.5e6, 40, 10).Longest(Bound{Ratio: 360}, quantity.Point(strength)).Deflection.Lo / 12, 12.5, 0.1},
		{"EC5 sheet moment, kNm", line(t, ultimate, "moment") / lbInPerNewton * mmPerInch * mmPerInch / 1e6, 7.69, 0.005},
		{"EC5 sheet stress, N/mm2", line(t, ultimate, "moment") / lbInPerNewton * mmPerInch * mmPerInch / (80 * 240 * 240 / 6), 10.01, 0.01},
		{"EC5 sheet I", line(t, ec5, "inertia") * math.Pow(mmPerInch, 4), 92160000, 1},
		{"EC5 sheet variable part", line(t, ec5, "sag") * mmPerInch * 1.24, 21.326, 0.0005},
		{"2x10 beam", line(t, beam, "sag") * mmPerInch, 20.801, 0.005},
	} {
		if math.Abs(c.got-c.want) > c.near {
			t.Errorf("%s: %v, printed %v", c.what, c.got, c.want)
		}
	}
}

// TestWorkedLoads holds loads, moments and beam formulas to published examples
// of members that this package refuses: nothing else of them is computed.
func TestWorkedLoads(t *testing.T) {
	forces := func(j Joist) *formula.Sheet {
		s := &formula.Sheet{}
		j.size(s)
		j.forces(s)
		return s
	}
	// American Wood Council, ASD wood I-joist guideline 1999, chapter 5: 18 ft 10
	// in, 40 + 10 psf, 1.33 ft apart: 66.5 lb/ft, 2948.4 lb ft, 626.2 lb. The
	// tolerances are half of the last printed digit and what it makes of a product.
	ijoist := forces(point(1, 1, 18.8333333*12, 1.33*12, 1, 40, 10))
	// A building design guide on special floor loading, steps 1 to 4: floor truss,
	// 22 ft, 24 in apart, 20 + 40 psf and 200 lb at mid span, E I 1003.3 million lb
	// in2 (worked back, it is not printed): 0.707 in in all; L/360 is 0.733 in,
	// L/720 0.367 in.
	truss := point(12, 10, 22*12, 24, 1003.3e6/1000, 40, 20)
	truss.Point = quantity.Point(200)
	// A timber framing teaching page: 9500 lb spread over 19 ft: 22562.5 lb ft, and
	// 235.4 in3 at 1150 psi.
	header := forces(point(1, 1, 19*12, 12, 1, 9500/19., 0))
	for _, c := range []struct {
		what            string
		got, want, near float64
	}{
		{"I-joist load", line(t, ijoist, "line_load") * 12, 66.5, 0.05},
		{"I-joist moment", line(t, ijoist, "moment") / 12, 2948.4, 0.5},
		{"I-joist shear", line(t, ijoist, "force"), 626.2, 0.2},
		{"truss", line(t, truss.Sheet(TotalLoad), "sag"), 0.707, 0.002},
		{"truss L/360", 264 / Bound{Ratio: 360}.Least(truss.Span).Lo, 0.733, 0.001},
		{"truss L/720", 264 / Bound{Ratio: 720}.Least(truss.Span).Lo, 0.367, 0.001},
		{"header moment", line(t, header, "moment") / 12, 22562.5, 0.5},
		{"header section", line(t, header, "moment") / 1150, 235.4, 0.1},
		{"12 ft at L/360, a joist maker's article", 144 / Bound{Ratio: 360}.Least(quantity.Point(144)).Lo, 0.4, 0.0005},
		{"12 ft at L/240, the same", 144 / Bound{Ratio: 240}.Least(quantity.Point(144)).Lo, 0.6, 0.0005},
	} {
		if math.Abs(c.got-c.want) > c.near {
			t.Errorf("%s: %v, printed %v", c.what, c.got, c.want)
		}
	}
	// No check: a text of the 19th century on building prints 0.548 in for 1000 lb
	// at the middle of 192 in, E 800,000 psi, I 333 in4; P L^3 / (48 E I) is 0.5535.
	// Of the calculation sheet of 2020 in TestWorkedExamples the permanent part is
	// wrong in print: it leaves out most of the load that it lists (3.278 mm
	// printed; 0.328 kN/m gives 11.95 mm).
}

// TestRatioAgreesWithTheSag: the ratio is the span over the deflection.
func TestRatioAgreesWithTheSag(t *testing.T) {
	s := point(1.5, 9.25, 180, 16, 1.4e6, 40, 10).Sheet(TotalLoad)
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
		got, softest, ok := modulusOf(c.region, c.species, c.grade)
		if ok != c.ok || ok && (got != c.want || softest.Value != c.want.Lo) {
			t.Errorf("%q %q: %v %v", c.species, c.grade, got, ok)
		}
	}
	if got, _, ok := modulusOf("uk", "hem-fir", ""); !ok || math.Abs(got.Lo*1.1/(7000e6*psiPerPascal)-1) > 1e-9 {
		t.Errorf("hem-fir where it may be sold as C14: %v", got)
	}
	if got, _, ok := modulusOf("us", "", "c24"); !ok || math.Abs(got.Lo*1.1/(11000e6*psiPerPascal)-1) > 1e-9 {
		t.Errorf("c24: %v", got)
	}
}

// modulusOf is Modulus for one species and grade by their words; an empty word
// is one that is not known. A word that no table has gives ok false.
func modulusOf(region, speciesWord, gradeWord string) (psi quantity.Range, softest figure.Figure, ok bool) {
	fact := func(d *schema.Declaration, word string) (schema.Fact, bool) {
		if word == "" {
			return schema.Fact{Set: d.Full()}, true
		}
		bit, known := d.ChoiceBit(word)
		return schema.Fact{Set: schema.Set{Mask: bit}}, known
	}
	s, okSpecies := fact(&species, speciesWord)
	g, okGrade := fact(&grade, gradeWord)
	psi, softest = Modulus(region, s, g)
	return psi, softest, okSpecies && okGrade && softest.ID != ""
}
