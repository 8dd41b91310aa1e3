package structure

import (
	"math"
	"strings"
	"testing"

	"underfoot/assess/quantity"
	"underfoot/assess/result"
)

// dropOf is the drop under a weight at mid span, P L^3 / (48 E I) (Wood
// Handbook FPL-GTR-190, Table 9-1).
func dropOf(weight, span, ei float64) quantity.Range {
	return quantity.Point(weight * span * span * span / 48 / ei)
}

func TestLoadTest(t *testing.T) {
	m := Member{Size: "2x10", Species: []string{"hem-fir"}, Span: quantity.Point(168), Spacing: quantity.Point(16)}
	inertia := 1.5 * 9.25 * 9.25 * 9.25 / 12
	for _, c := range []struct {
		what   string
		e      float64 // of the joist that is tested; hem-fir is 1.2 to 1.6 million (NDS Supplement 2018 Table 4A)
		alike  int
		with   string
		used   bool
		says   string
		refuse string
	}{
		{"agrees", 1.4e6, 5, "dial-gauge", true, "agrees with the tables", ""},
		{"agrees, alone", 1.4e6, 1, "dial-gauge", false, "shared by the neighbours", ""},
		{"softer", 0.8e6, 5, "dial-gauge", true, "the softer figure is used", ""},
		{"softer, alone", 0.8e6, 1, "dial-gauge", true, "the softer figure is used", ""},
		{"stiffer", 2.4e6, 5, "dial-gauge", false, "The tables are used", ""},
		{"string", 1.4e6, 5, "string", false, "", "less than five times"},
		{"no instrument", 1.4e6, 5, "", false, "", "measured with"},
	} {
		got := Measure(m, Loads{}, LoadTest{Weight: quantity.Point(200), Drop: dropOf(200, 168, c.e*inertia), With: c.with, Alike: c.alike}, us)
		if got.Used != c.used || !strings.Contains(got.Text.String(), c.says) || !got.Refusal.IsZero() != (c.refuse != "") || !strings.Contains(got.Refusal.String(), c.refuse) {
			t.Errorf("%s: %+v", c.what, got)
		}
		if c.refuse == "" && !got.Stiffness.Contains(c.e*inertia) {
			t.Errorf("%s: %v does not hold %v", c.what, got.Stiffness, c.e*inertia)
		}
		tables := Analyze(m, Loads{}, BoundFor("ceramic", us), us).Live
		if want := map[bool]quantity.Range{true: got.Live, false: tables}[c.used]; got.Decides != want {
			t.Errorf("%s: decides %v, want %v", c.what, got.Decides, want)
		}
		again := Analyze(got.Of(m), Loads{}, BoundFor("ceramic", us), us)
		if math.Abs(again.Live.Lo/got.Decides.Lo-1) > 1e-9 || math.Abs(again.Live.Hi/got.Decides.Hi-1) > 1e-9 {
			t.Errorf("%s: with what is used it is %v, want %v", c.what, again.Live, got.Decides)
		}
	}
}

// TestSofterTestTurnsTheResult: a floor that may hold by the tables fails by a
// test that finds it softer, and its options start from what was measured.
func TestSofterTestTurnsTheResult(t *testing.T) {
	m, b := kitchen("hem-fir"), BoundFor("ceramic", us)
	m.Span = quantity.Point(144)
	got := Measure(m, Loads{}, LoadTest{Weight: quantity.Point(200), Drop: quantity.Point(0.3), With: "dial-gauge"}, us)
	before, after := Analyze(m, Loads{}, b, us), Analyze(got.Of(m), Loads{}, b, us)
	if before.Outcome != result.CheckOpen || after.Outcome != result.CheckFails {
		t.Errorf("%v, then %v", before.Outcome, after.Outcome)
	}
	if old, now := Options(m, Loads{}, b, us), Options(got.Of(m), Loads{}, b, us); optionOf(t, now, "sister-same").Live.Lo >= optionOf(t, old, "sister-same").Live.Lo {
		t.Error("the options forget the test")
	}
}

// TestPlaceOfTheWeight: a weight at a quarter of the span bends the middle
// 11/16 as far as one at mid span (a (3 L^2 - 4 a^2) / L^3 at a = L/4).
func TestPlaceOfTheWeight(t *testing.T) {
	j := Joist{Span: quantity.Point(160), Spacing: quantity.Point(16), Live: quantity.Point(40)}
	test := LoadTest{Weight: quantity.Point(100), Drop: quantity.Point(0.1), Uncertainty: 1e-9}
	middle := value(test.sheet(j), "stiffness").Lo
	test.Place = quantity.Point(40)
	if got := value(test.sheet(j), "stiffness").Lo / middle; math.Abs(got-11./16) > 1e-9 {
		t.Errorf("%v", got)
	}
}

// TestRefusedMemberHasNoTest: a load test leads no refused member to a number.
func TestRefusedMemberHasNoTest(t *testing.T) {
	got := Measure(Member{Kind: "i-joist", Span: quantity.Point(168)}, Loads{}, LoadTest{Weight: quantity.Point(200), Drop: quantity.Point(0.1), With: "dial-gauge", Alike: 5}, us)
	if got.Refusal.IsZero() || got.Live != quantity.Everything || got.Decides != quantity.Everything || got.Sheet != nil {
		t.Errorf("%+v", got)
	}
}
