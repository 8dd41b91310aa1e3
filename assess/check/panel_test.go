package check

import (
	"testing"

	"underfoot/assess/logic"
	"underfoot/assess/quantity"
	"underfoot/assess/result"
	"underfoot/assess/schema"
)

// sheet is one deck layer of a test.
type sheet struct {
	kind  string // empty: not known
	thick float64
}

func decked(t testing.TB, region string, spacing quantity.Range, open bool, sheets ...sheet) *floor {
	f := newFloor(t, region)
	f.words("zone.base", "joists").set("joist.spacing", spacing)
	for i, s := range sheets {
		it := f.item(schema.ScopeDeck, string(rune('a'+i)))
		if s.kind != "" {
			it.words("deck.kind", s.kind)
		}
		if s.thick > 0 {
			it.set("deck.thickness", quantity.Point(s.thick))
		}
	}
	if open {
		f.open(schema.ScopeDeck)
	}
	return f
}

const (
	in1932, in2332, in1532 = 19.0 / 32, 23.0 / 32, 15.0 / 32
)

// TestPanel: the least panels are 19/32 in at 16 in (ANSI A108.11), 23/32 in
// under a mat and at 19.2 in, and 23/32 with 3/8 in at 24 in (TCNA Handbook,
// from memory; the methods are listed in TileLetter, Jul 2019, p. 90).
func TestPanel(t *testing.T) {
	at := quantity.Point
	for _, c := range []struct {
		name       string
		region     string
		spacing    quantity.Range
		open       bool
		sheets     []sheet
		board, mat string // yes, no, open or absent
	}{
		{"just enough", "us", at(16), false, []sheet{{"plywood", in1932}}, "no", "yes"},
		{"a little under", "us", at(16), false, []sheet{{"plywood", in1932 - 0.001}}, "yes", "yes"},
		{"just enough for the mat", "us", at(16), false, []sheet{{"osb", in2332}}, "no", "no"},
		{"two thin sheets", "us", at(16), false, []sheet{{"plywood", in1532}, {"plywood", in1532}}, "yes", "yes"},
		{"two sheets", "us", at(16), false, []sheet{{"plywood", in1932}, {"plywood", in1932}}, "no", "no"},
		{"a thin panel over boards", "us", at(16), false, []sheet{{"plywood", in1532}, {"boards", 0.75}}, "yes", "yes"},
		{"boards alone", "us", at(16), false, []sheet{{"boards", 0.75}}, "absent", "absent"},
		{"no deck at all", "us", at(16), false, nil, "yes", "yes"},
		{"nothing known", "us", at(16), true, nil, "open", "open"},
		{"thick enough whatever else lies there", "us", at(16), true, []sheet{{"plywood", in2332}}, "no", "no"},
		{"thin, but more may lie there", "us", at(16), true, []sheet{{"plywood", 0.5}}, "open", "open"},
		{"boards, but more may lie there", "us", at(16), true, []sheet{{"boards", 0.75}}, "open", "open"},
		{"thickness not known", "us", at(16), false, []sheet{{"plywood", 0}}, "open", "open"},
		{"kind not known", "us", at(16), false, []sheet{{"", in2332}}, "open", "open"},
		{"wider spacing, one sheet", "us", at(19.2), false, []sheet{{"plywood", in2332}}, "no", "no"},
		{"wider spacing, too thin", "us", at(19.2), false, []sheet{{"plywood", in1932}}, "yes", "yes"},
		{"24 in, one sheet", "us", at(24), false, []sheet{{"plywood", in2332}}, "yes", "yes"},
		{"24 in, two sheets", "us", at(24), false, []sheet{{"plywood", 0.375}, {"plywood", in2332}}, "no", "no"},
		{"24 in, one thick sheet", "us", at(24), false, []sheet{{"plywood", 0.875}}, "yes", "yes"},
		{"24 in, a second sheet not known", "us", at(24), false, []sheet{{"", 0.375}, {"plywood", in2332}}, "open", "open"},
		{"24 in, one very thick sheet", "us", at(24), false, []sheet{{"plywood", 1.125}}, "no", "no"},
		{"over 24 in", "us", at(32), true, []sheet{{"plywood", 1.125}}, "yes", "yes"},
		{"spacing not known, thin everywhere", "us", quantity.Everything, false, []sheet{{"plywood", 0.5}}, "yes", "yes"},
		{"spacing not known", "us", quantity.Everything, false, []sheet{{"plywood", 1.125}}, "open", "open"},
		{"spacing up to 16 in", "us", quantity.Range{Lo: 12, Hi: 16}, false, []sheet{{"plywood", in1932}}, "no", "yes"},
		{"spacing about 16 in", "us", quantity.Range{Lo: 15.5, Hi: 16.5}, false, []sheet{{"plywood", in1932}}, "open", "yes"},
		{"particleboard is no structural sheet", "us", at(16), false, []sheet{{"particleboard", 0.75}, {"plywood", 0.5}}, "yes", "yes"},
		{"particleboard is one elsewhere", "uk", at(16), false, []sheet{{"particleboard", 0.75}}, "no", "no"},
	} {
		f := decked(t, c.region, c.spacing, c.open, c.sheets...)
		f.run()
		for id, want := range map[string]string{"panel.short": c.board, "panel.short_for_mat": c.mat} {
			got := f.zone.facts[id]
			if said := words(got); said != want {
				t.Errorf("%s: %s is %s, want %s", c.name, id, said, want)
			}
			if open := words(got) == "open"; open != (len(got.Deps) > 0) {
				t.Errorf("%s: %s depends on %v", c.name, id, f.zone.Named(got.Deps))
			}
		}
	}
}

func words(f schema.Fact) string {
	switch {
	case f.Presence.Truth == logic.No:
		return "absent"
	case f.Presence.Truth == logic.Open, f.Set.Mask == 3:
		return "open"
	case f.Set == schema.SetYes:
		return "yes"
	}
	return "no"
}

// TestDeckWaitsOnTheAnswerThatMatters: a deck that is thick enough at every
// spacing with a method waits on the spacing alone.
func TestDeckWaitsOnTheAnswerThatMatters(t *testing.T) {
	f := decked(t, "us", quantity.Range{Lo: 16, Hi: 30}, true, sheet{"plywood", 1.25})
	f.run()
	got := f.zone.Named(f.zone.facts["panel.short"].Deps)
	if len(got) != 1 || got[0].Field != "joist.spacing" {
		t.Errorf("waits on %v", got)
	}
}

// TestPanelCheckShowsTheSum: two sheets of 19/32 in are as stiff as one of
// 0.748 in, the cube root of twice the cube.
func TestPanelCheckShowsTheSum(t *testing.T) {
	f := decked(t, "us", quantity.Point(16), false, sheet{"plywood", in1932}, sheet{"osb", in1932})
	f.run()
	c := f.checks["panel.short"]
	if c == nil || c.Outcome != result.CheckHolds || !near(c.Value.Lo, in1932*1.2599210498948732) || !near(c.Work.Result().Lo, c.Value.Lo) || c.Limit.Lo-in1932 > 1e-9 {
		t.Errorf("check %+v", c)
	}
}

// TestFlatLimit: ANSI A108.02, 1/4 in in 10 ft under 15 in, 1/8 in from there.
func TestFlatLimit(t *testing.T) {
	for _, c := range []struct {
		long, short, want quantity.Range
	}{
		{quantity.Point(12), quantity.Everything, quantity.Point(0.25)},
		{quantity.Point(15), quantity.Everything, quantity.Point(0.125)},
		{quantity.Everything, quantity.Point(24), quantity.Point(0.125)},
		{quantity.Everything, quantity.Point(12), quantity.Range{Lo: 0.125, Hi: 0.25}},
		{quantity.Range{Lo: 12, Hi: 15}, quantity.Everything, quantity.Range{Lo: 0.125, Hi: 0.25}},
		{quantity.Range{Lo: 12, Hi: 18}, quantity.Everything, quantity.Range{Lo: 0.125, Hi: 0.25}},
	} {
		f := newFloor(t, "us").set("tile.long_edge", c.long).set("tile.short_edge", c.short)
		f.run()
		got := f.zone.facts["flat.limit"]
		if got.Set.Range != c.want || got.Set.Range.IsPoint() != (got.Deps == nil) {
			t.Errorf("%v by %v: %+v", c.long, c.short, got)
		}
	}
}
