package check

import (
	"math"
	"strings"
	"testing"

	"underfoot/assess/figure"
	"underfoot/assess/logic"
	"underfoot/assess/quantity"
	"underfoot/assess/result"
	"underfoot/assess/schema"
)

// sound is a floor of whole 2x10 joists whose own sum decides.
func sound(t testing.TB) *floor {
	f := newFloor(t, "us")
	f.words("zone.base", "joists").words("joist.member", "sawn-lumber").words("joist.figure_from", "own-sum")
	f.words("joist.species", "spruce-pine-fir").words("joist.grade", "no2").words("tile.kind", "ceramic")
	f.set("joist.spacing", quantity.Point(16)).set("joist.span", quantity.Point(180))
	f.zone.text("joist.size", "2x10")
	f.words("joist.notched", "none")
	for _, name := range []string{"joist.cut", "joist.insects", "joist.short_bearing", "joist.loose_posts", "joist.support_removed", "water.rot"} {
		f.words(name, "no")
	}
	return f
}

// ratioByHand is 384 E I / (5 w L^3) (Wood Handbook Table 9-1).
func ratioByHand(e, width, depth, spacing, span, psf float64) float64 {
	return 384 * e * width * depth * depth * depth / 12 / (5 * psf * spacing / 144 * span * span * span)
}

func near(a, b float64) bool { return math.Abs(a/b-1) < 1e-9 }

func TestOwnSumOfAJoist(t *testing.T) {
	f := sound(t)
	f.run()
	live, total := f.zone.facts["joist.ratio_live"], f.zone.facts["joist.ratio_total"]
	// SPF No.2: E 1.4 million psi, NDS Supplement 2018 Table 4A.
	if want := ratioByHand(1.4e6, 1.5, 9.25, 16, 180, 40); !near(live.Set.Range.Lo, want) || !live.Set.Range.IsPoint() || live.Deps != nil {
		t.Errorf("live %+v, want %v", live, want)
	}
	if want := ratioByHand(1.4e6, 1.5, 9.25, 16, 180, 50); !near(total.Set.Range.Lo, want) {
		t.Errorf("total %+v, want %v", total, want)
	}
	c := f.checks["joist.ratio_live"]
	if c == nil || c.Outcome != result.CheckHolds || c.Work == nil || c.Work.Result() != c.Value || len(c.Sources) < 2 {
		t.Errorf("check %+v", c)
	}
}

// TestSpanTableSpanMeetsItsLimit: IRC 2018 Table R502.3.1(2) allows SPF select
// structural 2x8 at 16 in a span of 12-7 at 40 psf live and L/360; the printed
// span is rounded to the nearest inch, so the ratio is L/360 within an inch of span.
func TestSpanTableSpanMeetsItsLimit(t *testing.T) {
	f := sound(t)
	f.words("joist.grade", "select-structural").set("joist.span", quantity.Point(151))
	f.zone.text("joist.size", "2x8")
	f.run()
	got := f.zone.facts["joist.ratio_live"].Set.Range.Lo
	if math.Abs(got-360) > 360*3*0.5/151 {
		t.Errorf("L/%v at the printed span", got)
	}
}

func TestUnknownGradeIsARange(t *testing.T) {
	f := sound(t)
	f.words("joist.grade", "select-structural", "no1", "no2", "no3")
	f.run()
	live := f.zone.facts["joist.ratio_live"]
	// SPF: No.3 1.2 and select structural 1.5 million psi, NDS Supplement 2018 Table 4A.
	if !near(live.Set.Range.Lo, ratioByHand(1.2e6, 1.5, 9.25, 16, 180, 40)) || !near(live.Set.Range.Hi, ratioByHand(1.5e6, 1.5, 9.25, 16, 180, 40)) {
		t.Errorf("live %v", live.Set.Range)
	}
	if got := f.zone.Named(live.Deps); len(got) != 1 || got[0].Field != "joist.grade" {
		t.Errorf("depends on %v", got)
	}
}

// TestUnknownWoodIsTheLowEstimate: with neither species nor grade the low end
// is No.3 of the softest groups, 0.9 million psi.
func TestUnknownWoodIsTheLowEstimate(t *testing.T) {
	f := sound(t)
	delete(f.zone.facts, "joist.species")
	delete(f.zone.facts, "joist.grade")
	f.run()
	live := f.zone.facts["joist.ratio_live"].Set.Range
	if !near(live.Lo, ratioByHand(0.9e6, 1.5, 9.25, 16, 180, 40)) || !near(live.Hi, ratioByHand(1.9e6, 1.5, 9.25, 16, 180, 40)) {
		t.Errorf("live %v", live)
	}
	origin := ""
	for _, l := range f.checks["joist.ratio_live"].Work.Lines {
		if l.Name == "modulus" {
			origin = l.Source.String()
		}
	}
	if !strings.Contains(origin, "no3") {
		t.Errorf("the low end is said to come from %q", origin)
	}
}

func TestMeasuredDepthGoesBeforeTheName(t *testing.T) {
	f := sound(t)
	f.set("joist.depth", quantity.Point(9.75)) // full-sawn stock called 2x10
	f.run()
	want := ratioByHand(1.4e6, 1.5, 9.75, 16, 180, 40)
	if got := f.zone.facts["joist.ratio_live"].Set.Range; !near(got.Lo, want) || !near(got.Hi, want) {
		t.Errorf("%v, want %v", got, want)
	}
}

// TestNoNumberForARefusedMember walks every refusal: no path leads to a number.
func TestNoNumberForARefusedMember(t *testing.T) {
	for name, spoil := range map[string]func(*floor){
		"i-joist": func(f *floor) { f.words("joist.member", "i-joist") }, "truss": func(f *floor) { f.words("joist.member", "open-web-truss") },
		"lvl": func(f *floor) { f.words("joist.member", "lvl") }, "glulam": func(f *floor) { f.words("joist.member", "glulam") },
		"steel":           func(f *floor) { f.words("joist.member", "steel-joist") },
		"cut":             func(f *floor) { f.words("joist.cut", "yes") },
		"notched":         func(f *floor) { f.words("joist.notched", "beyond-limits") },
		"insects":         func(f *floor) { f.words("joist.insects", "yes") },
		"short bearing":   func(f *floor) { f.words("joist.short_bearing", "yes") },
		"loose posts":     func(f *floor) { f.words("joist.loose_posts", "yes") },
		"support removed": func(f *floor) { f.words("joist.support_removed", "yes") },
		"rot":             func(f *floor) { f.words("water.rot", "yes") },
		"over 26 ft":      func(f *floor) { f.set("joist.span", quantity.Point(26*12+1)) },
		"over 24 in":      func(f *floor) { f.set("joist.spacing", quantity.Point(24.5)) },
	} {
		t.Run(name, func(t *testing.T) {
			f := sound(t)
			spoil(f)
			f.run()
			for _, id := range []string{"joist.ratio_live", "joist.own_ratio", "joist.ratio_total"} {
				if fact := f.zone.facts[id]; fact.Presence.Truth != logic.No && fact.Set.Range != quantity.Everything || fact.Deps != nil {
					t.Errorf("%s is %+v", id, fact)
				}
			}
			if fact := f.path.facts["path.ratio_total"]; fact.Set.Range != quantity.Everything {
				t.Errorf("path.ratio_total is %+v", fact)
			}
			c := f.checks["joist.ratio_live"]
			if c == nil || c.Outcome != result.CheckRefused || c.Value != quantity.Everything || c.Work != nil || c.Note.IsZero() {
				t.Errorf("check %+v", c)
			}
			for id, c := range f.checks {
				if !strings.HasPrefix(id, "joist") {
					continue
				}
				Advise(figure.For("us", quantity.US), f.zone, c)
				if c.Value.Bounded() || c.Notes != nil || c.Options != nil {
					t.Errorf("%s shows %v, tells %q, offers %v", id, c.Value, c.Notes, c.Options)
				}
			}
		})
	}
}

func TestDamageNotLookedForLeavesTheSumOpen(t *testing.T) {
	f := sound(t)
	delete(f.zone.facts, "joist.cut")
	f.run()
	live, c := f.zone.facts["joist.ratio_live"], f.checks["joist.ratio_live"]
	if live.Set.Range != quantity.Everything || c.Outcome != result.CheckOpen || !c.Value.IsPoint() {
		t.Errorf("fact %+v, check %+v", live, c)
	}
	if got := f.zone.Named(live.Deps); len(got) != 1 || got[0].Field != "joist.cut" {
		t.Errorf("waits on %v", got)
	}
}

func TestKnownFigureGoesBeforeTheSum(t *testing.T) {
	for _, c := range []struct {
		from, member string
		counts       bool
	}{
		{"document", "sawn-lumber", true}, {"maker", "i-joist", true}, {"engineer", "open-web-truss", true}, {"load-test", "sawn-lumber", true},
		{"load-test", "i-joist", false}, {"own-sum", "glulam", false},
	} {
		f := sound(t)
		f.words("joist.figure_from", c.from).words("joist.member", c.member).words("joist.known_load", "live").set("joist.known_ratio", quantity.Point(410))
		f.run()
		got := f.zone.facts["joist.ratio_live"].Set.Range
		if counts := got == quantity.Point(410); counts != c.counts || !counts && got != quantity.Everything {
			t.Errorf("%s %s: %v", c.from, c.member, got)
		}
		if beside := f.checks["joist.own_ratio"]; (beside != nil) != (c.member == "sawn-lumber") {
			t.Errorf("%s %s: own sum beside it %v", c.from, c.member, beside)
		}
		if c.counts && f.checks["joist.ratio_live"].Outcome != result.CheckHolds {
			t.Errorf("%s %s: check %+v", c.from, c.member, f.checks["joist.ratio_live"])
		}
	}
}

// TestPaperNeedsNoMember: a document's figure counts for whatever member it is.
func TestPaperNeedsNoMember(t *testing.T) {
	f := newFloor(t, "us")
	f.words("zone.base", "joists").words("joist.figure_from", "document").set("joist.known_ratio", quantity.Point(480))
	f.run()
	if got := f.zone.facts["joist.ratio_live"]; got.Set.Range != quantity.Point(480) || got.Deps != nil {
		t.Errorf("%+v", got)
	}
	if got := f.zone.facts["joist.ratio_total"]; got.Presence.Truth != logic.No {
		t.Errorf("a stated figure was converted: %+v", got)
	}
}

func TestLimitFollowsTheTile(t *testing.T) {
	for kind, want := range map[string]float64{"ceramic": 360, "porcelain-panel": 360, "natural-stone": 720} {
		f := sound(t)
		f.words("tile.kind", kind).set("joist.span", quantity.Point(168))
		f.run()
		if got := f.zone.facts["joist.limit"]; got.Set.Range != quantity.Point(want) {
			t.Errorf("%s: %+v", kind, got)
		}
	}
	// Over 14 ft a joist maker's note of 2003 caps the deflection under stone at
	// 7/32 in: 180 in / (7/32 in) is L/823. A figure on paper is not capped.
	for from, want := range map[string]float64{"own-sum": 180 / (7. / 32), "document": 720} {
		f := sound(t)
		f.words("tile.kind", "natural-stone").words("joist.figure_from", from)
		f.run()
		if got := f.zone.facts["joist.limit"]; got.Set.Range != quantity.Point(want) {
			t.Errorf("%s: %+v", from, got)
		}
	}
	f := sound(t)
	f.set("joist.span", quantity.Point(168))
	delete(f.zone.facts, "tile.kind")
	f.run()
	if got := f.zone.facts["joist.limit"]; got.Set.Range != (quantity.Range{Lo: 360, Hi: 720}) || len(got.Deps) != 1 {
		t.Errorf("tile not known: %+v", got)
	}
}

func TestStoneShowsTheTotalLoad(t *testing.T) {
	f := sound(t)
	f.words("tile.kind", "natural-stone").set("joist.span", quantity.Point(168))
	f.run()
	total, live := f.checks["joist.ratio_total"], f.checks["joist.ratio_live"]
	if total == nil || total.Value.Hi >= live.Value.Lo || total.Limit != quantity.Point(720) {
		t.Errorf("total %+v beside live %+v", total, live)
	}
	path := f.checks["path.ratio_total"]
	if path == nil || path.Value.Hi > total.Value.Lo {
		t.Errorf("with the new floor on it: %+v", path)
	}
}

func TestNoJoistsNoJoistFacts(t *testing.T) {
	f := sound(t)
	f.words("zone.base", "slab-on-ground")
	f.run()
	for _, id := range []string{"joist.ratio_live", "joist.ratio_total", "joist.own_ratio", "panel.short", "panel.short_for_mat"} {
		if got := f.zone.facts[id]; got.Presence.Truth != logic.No {
			t.Errorf("%s: %+v", id, got)
		}
	}
	if f.checks["joist.ratio_live"] != nil {
		t.Error("a check of joists that are not there")
	}
}

// TestFigureThatIsNotThere: a region without a figure leaves what needs it
// unknown, and no answer is asked for to settle it.
func TestFigureThatIsNotThere(t *testing.T) {
	f := sound(t)
	p := f.runWith(&figure.Table{})
	for id, fact := range map[string]schema.Fact{"joist.limit": f.zone.facts["joist.limit"], "flat.limit": f.zone.facts["flat.limit"],
		"path.added_weight": p.facts["path.added_weight"], "path.height_left": p.facts["path.height_left"]} {
		if fact.Set.Range != quantity.Everything || fact.Deps != nil {
			t.Errorf("%s: %+v", id, fact)
		}
	}
	for id, fact := range map[string]schema.Fact{"panel.short": f.zone.facts["panel.short"], "path.height_short": p.facts["path.height_short"]} {
		if words(fact) != "open" || fact.Deps != nil {
			t.Errorf("%s: %+v", id, fact)
		}
	}
}

// TestJustAtTheLimitIsSaid: exactly at the limit holds, with a warning.
func TestJustAtTheLimitIsSaid(t *testing.T) {
	for ratio, warned := range map[float64]bool{360: true, 480: false} {
		f := sound(t)
		f.words("joist.figure_from", "document").set("joist.known_ratio", quantity.Point(ratio))
		f.run()
		c := f.checks["joist.ratio_live"]
		if c.Outcome != result.CheckHolds || strings.Contains(c.Note.String(), "just at the limit") != warned {
			t.Errorf("L/%v: %v, %s", ratio, c.Outcome, c.Note)
		}
	}
}

// TestEndsOfTheTables: 26 ft and 24 in are still computed (IRC 2018 tables).
func TestEndsOfTheTables(t *testing.T) {
	f := sound(t)
	f.set("joist.span", quantity.Point(312)).set("joist.spacing", quantity.Point(24))
	f.run()
	if got := f.zone.facts["joist.ratio_live"].Set.Range; !near(got.Lo, ratioByHand(1.4e6, 1.5, 9.25, 24, 312, 40)) {
		t.Errorf("%v", got)
	}
}

// TestRangeThatReachesTheLimitIsOpen: its best end is enough, the rest is not.
func TestRangeThatReachesTheLimitIsOpen(t *testing.T) {
	for hi, want := range map[float64]result.CheckOutcome{360: result.CheckOpen, 359: result.CheckFails} {
		f := sound(t)
		f.words("joist.figure_from", "document").set("joist.known_ratio", quantity.Range{Lo: 300, Hi: hi})
		f.run()
		if c := f.checks["joist.ratio_live"]; c.Outcome != want || len(c.Missing) != 1 {
			t.Errorf("L/300 to L/%v: %v, missing %v", hi, c.Outcome, c.Missing)
		}
	}
}
