package facts_test

import (
	"slices"
	"testing"

	"underfoot/assess"
	"underfoot/assess/facts"
	"underfoot/assess/logic"
	"underfoot/assess/result"
	"underfoot/assess/schema"
)

// Which things a list has once it is closed, open, or found not to apply.
func TestListsCloseByTheirAnswer(t *testing.T) {
	const slab, crack = "zone.base = slab-on-ground", "crack.c1.kind = crack"
	for _, tt := range []struct {
		name  string
		list  schema.Scope
		lines []string
		want  []string
	}{
		{"complete", schema.ScopeCrack, []string{slab, crack, "crack.complete = yes"}, []string{"c1"}},
		{"complete and empty", schema.ScopeCrack, []string{slab, "crack.complete = yes"}, nil},
		{"not said", schema.ScopeCrack, []string{slab, crack}, []string{"c1", facts.RestID}},
		{"not complete", schema.ScopeCrack, []string{slab, crack, "crack.complete = no"}, []string{"c1", facts.RestID}},
		{"not sure", schema.ScopeCrack, []string{slab, crack, "crack.complete = not sure"}, []string{"c1", facts.RestID}},
		{"may apply", schema.ScopeCrack, []string{crack}, []string{"c1", facts.RestID}},
		{"complete if it applies", schema.ScopeCrack, []string{crack, "crack.complete = yes"}, []string{"c1"}},
		{"does not apply", schema.ScopeCrack, []string{"zone.base = joists", "layer.complete = yes", crack}, nil},
		{"said not to apply, where it may, with nothing named", schema.ScopeCrack, []string{"crack.complete = does not apply"}, nil},
		{"said not to apply, where it may, of a list that names a crack", schema.ScopeCrack, []string{crack, "crack.complete = does not apply"}, []string{"c1", facts.RestID}},
		{"said not to apply, where it does", schema.ScopeCrack, []string{slab, crack, "crack.complete = does not apply"}, []string{"c1", facts.RestID}},
		{"a screed over wood has cracks too", schema.ScopeCrack,
			[]string{"zone.base = joists", "layer.l1.kind = cement-screed", "layer.complete = yes", crack}, []string{"c1", facts.RestID}},
		{"loads left out are none", schema.ScopeLoad, nil, nil},
		{"loads not sure", schema.ScopeLoad, []string{"load.complete = not sure"}, []string{facts.RestID}},
		{"deck of a slab", schema.ScopeDeck, []string{slab, "deck.d1.kind = osb"}, nil},
	} {
		t.Run(tt.name, func(t *testing.T) {
			_, zone := theWorld().floor(t, tt.lines...)
			var ids []string
			for _, f := range zone.Things(tt.list) {
				ids = append(ids, f.ID())
			}
			if !slices.Equal(ids, tt.want) {
				t.Errorf("%v, want %v", ids, tt.want)
			}
		})
	}
}

// Every fact of the rest may be anything and may not be there at all; what is
// known of the zone is known of it too.
func TestRest(t *testing.T) {
	w := theWorld()
	_, zone := w.floor(t, "zone.base = slab-on-ground", "room.use = bath")
	rest := item(t, zone, schema.ScopeCrack, facts.RestID)
	if !rest.IsRest() || rest.Scope() != schema.ScopeCrack || zone.IsRest() || rest.Zone() != zone {
		t.Fatal("the rest is not the rest of its zone's list")
	}
	for name, want := range map[string]string{
		"crack.kind":  "maybe anything <- crack.complete",
		"crack.step":  "maybe anything <- crack.complete",
		"crack.count": "maybe 1 <- crack.complete",
		"zone.base":   "slab-on-ground",
		"room.wet":    "wet-room",
	} {
		if got := w.show(rest, name); got != want {
			t.Errorf("%s: %q, want %q", name, got, want)
		}
	}
	if got := rest.Named(rest.RestDeps()); len(got) != 1 || got[0].Local() != "crack.complete" {
		t.Errorf("the rest waits for %v", got)
	}
}

// Each base has a frame of its own, in which the zone's facts can be read.
func TestPaths(t *testing.T) {
	w := theWorld()
	_, zone := w.floor(t, "zone.base = joists")
	paths := zone.Things(schema.ScopePath)
	if len(paths) != len(result.Assemblies()) {
		t.Fatalf("%d paths, want %d", len(paths), len(result.Assemblies()))
	}
	for i, p := range paths {
		if p.ID() != result.Assemblies()[i].String() || w.show(p, "path.is_base") != "yes" || w.show(p, "zone.base") != "joists" {
			t.Errorf("path %s: is_base %s, base %s", p.ID(), w.show(p, "path.is_base"), w.show(p, "zone.base"))
		}
	}
}

func TestAll(t *testing.T) {
	_, zone := theWorld().floor(t, "layer.l1.kind = carpet", "layer.l2.kind = cork", "layer.complete = yes")
	for scope, want := range map[schema.Scope]int{schema.ScopeJob: 1, schema.ScopeArea: 1, schema.ScopeZone: 1, schema.ScopeLayer: 2, schema.ScopePath: len(result.Assemblies())} {
		if got := len(zone.All(scope)); got != want {
			t.Errorf("%v: %d things, want %d", scope, got, want)
		}
	}
}

func TestFrameWords(t *testing.T) {
	_, zone := theWorld().floor(t, "zone.base = joists, beam-and-deck", "layer.l1.kind = carpet", "layer.l1.coming_out = yes", "layer.complete = yes")
	if got := zone.Words("zone.base"); !slices.Equal(got, []string{"joists", "beam-and-deck"}) {
		t.Errorf("words %v", got)
	}
	if !zone.HasChoice("zone.base", "joists", "beam-and-deck", "slab-on-ground") || zone.HasChoice("zone.base", "joists") {
		t.Error("a choice is proven by the words that hold all of what it may be, and by no others")
	}
	if got := item(t, zone, schema.ScopeLayer, "l1").Stays().Truth; got != logic.No {
		t.Errorf("a layer that comes out stays: %v", got)
	}
}

// Ages count up to the visit, or to today where the record does not name one.
func TestVisitedDay(t *testing.T) {
	w := theWorld()
	j := w.job(t, "layer.l1.kind = carpet")
	for _, tt := range []struct{ visited, today, want assess.Day }{{"2026-05-04", "2030-01-01", "2026-05-04"}, {"", "2030-01-01", "2030-01-01"}} {
		j.Visited = tt.visited
		if got := w.plan.Fill(j, tt.today).Visited; got != tt.want {
			t.Errorf("visited %q, today %q: %q, want %q", tt.visited, tt.today, got, tt.want)
		}
	}
	j.Visited = ""
	zone := w.plan.Fill(j, "").Zones[0][0]
	if got := w.show(item(t, zone, schema.ScopeLayer, "l1"), "layer.laid"); got != "anything <- layer.l1.year, site.year_built" {
		t.Errorf("laid in a record of no day: %q", got)
	}
}

// Each area has the checks of its own zones alone.
func TestChecksStandByArea(t *testing.T) {
	w := theWorld()
	j := &assess.Job{Visited: "2026-05-04", Areas: []assess.Area{{ID: "bath"}, {ID: "kitchen"}}}
	j = j.Normal()
	for a, base := range []string{"joists", "slab-on-ground"} {
		at, err := schema.ParseAddress(j.Areas[a].ID + ".main.zone.base")
		if err != nil {
			t.Fatal(err)
		}
		j.Put(at, w.answer(t, "zone.base", base))
	}
	fl := w.plan.Fill(j, "2026-06-01")
	has := func(area int) (joists bool) {
		for _, c := range fl.Checks(area) {
			joists = joists || c.ID == "joist.ratio_live"
			if c.Zone != "main" {
				t.Errorf("check %s of zone %q", c.ID, c.Zone)
			}
		}
		return joists
	}
	if !has(0) || has(1) {
		t.Errorf("joists are computed in the bath: %v, in the kitchen on a slab: %v", has(0), has(1))
	}
}
