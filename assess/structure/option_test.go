package structure

import (
	"math"
	"slices"
	"strings"
	"testing"

	"underfoot/assess/quantity"
	"underfoot/assess/result"
)

func optionOf(t *testing.T, all []result.Option, id string) result.Option {
	i := slices.IndexFunc(all, func(o result.Option) bool { return o.ID == id })
	if i < 0 {
		t.Fatal("no option", id)
	}
	return all[i]
}

// TestOptionsOfTheKitchen: a full-length sister adds its E I (equal curvature);
// a beam at mid span, joists in one piece, one half loaded, takes the
// deflection down 22.8 times and the span to half, so the ratio rises 11.4
// times (theorem of three moments); joists between halve the load of each.
func TestOptionsOfTheKitchen(t *testing.T) {
	b := BoundFor("ceramic", us)
	m := kitchen("hem-fir")
	m.Grades = []string{"no3"} // 1.2 million psi; added lumber is No.2, 1.3 million (NDS Supplement 2018 Table 4A)
	all := Options(m, Loads{}, b, us)
	before := Analyze(m, Loads{}, b, us).Live.Lo
	for id, gain := range map[string]float64{
		"sister-same": 1 + 1.3/1.2, "sister-both-sides": 1 + 2*1.3/1.2, "sister-shallower": 1 + 1.3/1.2*math.Pow(5.5/7.25, 3),
		"sister-deeper": 1 + 1.3/1.2*math.Pow(9.25/7.25, 3), "joists-between": 2, "beam-at-mid-span": 5. / 384 * 109.283 * 8,
	} {
		if o := optionOf(t, all, id); !close9(o.Live.Lo/before, gain) {
			t.Errorf("%s: %v times, want %v", id, o.Live.Lo/before, gain)
		}
	}
	if gain := optionOf(t, all, "beam-at-mid-span").Live.Lo / before; math.Abs(2*gain-22.8) > 0.05 {
		t.Errorf("deflection falls %v times, want 22.8", 2*gain)
	}
	for _, o := range all {
		if want := map[bool]result.CheckOutcome{true: result.CheckHolds, false: result.CheckFails}[o.Live.Lo >= 360]; o.Outcome != want {
			t.Errorf("%s: %v at L/%v", o.ID, o.Outcome, o.Live.Lo)
		}
		if len(o.Needs) == 0 || len(o.Quantities) == 0 || o.Work == nil || o.Work.Result() != o.Live && o.ID != "joists-between" {
			t.Errorf("%s lacks something: %+v", o.ID, o)
		}
	}
	if !slices.IsSortedFunc(all, func(x, y result.Option) int { return rank(x.Outcome) - rank(y.Outcome) }) {
		t.Error("what holds does not come first")
	}
}

// TestSistersCountTheirWeight: 10.875 in2 at 35 lb/ft3 every 16 in is 1.98 psf,
// and the total-load ratio falls accordingly.
func TestSistersCountTheirWeight(t *testing.T) {
	o := optionOf(t, Options(kitchen("hem-fir"), Loads{}, BoundFor("ceramic", us), us), "sister-same")
	if math.Abs(o.Weight.Lo-1.982) > 0.001 || !close9(o.Live.Lo/o.Total.Lo, (50+o.Weight.Lo)/40) {
		t.Errorf("%v psf, %v beside %v", o.Weight, o.Live, o.Total)
	}
}

// TestBeamTakesFiveQuarters: 5/4 of half a span's load: 50 psf over 13 ft 6 in is 421.9 lb/ft.
func TestBeamTakesFiveQuarters(t *testing.T) {
	o := optionOf(t, Options(kitchen(), Loads{}, BoundFor("ceramic", us), us), "beam-at-mid-span")
	if math.Abs(o.Quantities[0].Value.Lo-421.875) > 1e-6 {
		t.Errorf("%+v", o.Quantities)
	}
}

// TestOptionsFollowTheFloor: no beam under joists that have one; C24 outside
// North America; a stiffer floor never makes an option worse.
func TestOptionsFollowTheFloor(t *testing.T) {
	m := kitchen("hem-fir")
	m.Continuity = "two-spans"
	if slices.ContainsFunc(Options(m, Loads{}, BoundFor("ceramic", us), us), func(o result.Option) bool { return o.ID == "beam-at-mid-span" }) {
		t.Error("a beam under joists that run over one")
	}
	m = kitchen()
	m.Span = quantity.Everything
	if got := Options(m, Loads{}, BoundFor("ceramic", us), us); got != nil {
		t.Errorf("options without a span: %v", got)
	}
}

// TestNoHelpSaysWhy: board, mat, bridging, thicker mortar, part sisters.
func TestNoHelpSaysWhy(t *testing.T) {
	all := strings.ToLower(spoken(NoHelp()))
	for _, word := range []string{"board", "mat", "bridging", "mortar", "stops short", "footing"} {
		if !strings.Contains(all, word) {
			t.Errorf("nothing on %s", word)
		}
	}
}
