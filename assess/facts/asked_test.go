package facts_test

import (
	"testing"

	"underfoot/assess/quantity"
	"underfoot/assess/schema"
)

func TestAskedFacts(t *testing.T) {
	for _, tt := range []struct {
		fact, name string
		lines      []string
		want       string
	}{
		{"zone.base", "one value", []string{"zone.base = joists"}, "joists"},
		{"zone.base", "one of two", []string{"zone.base = joists, slab-on-ground"}, "joists, slab-on-ground <- zone.base"},
		{"zone.base", "nothing said", nil, "anything <- zone.base"},
		{"zone.base", "not sure", []string{"zone.base = not sure"}, "anything <- zone.base"},
		{"zone.base", "could not see", []string{"zone.base = could not see"}, "anything <- zone.base"},
		{"zone.base", "said not to apply, where it always does", []string{"zone.base = does not apply"}, "anything <- zone.base"},

		{"joist.span", "a point", []string{"zone.base = joists", "joist.span = 12 ft"}, "12 ft"},
		{"joist.span", "a range", []string{"zone.base = joists", "joist.span = 11 to 12 ft"}, "11 to 12 ft <- joist.span"},
		{"joist.span", "parked: kept in the record, no fact", []string{"zone.base = slab-on-ground", "joist.span = 12 ft"}, "absent"},
		{"joist.span", "may apply", []string{"joist.span = 12 ft"}, "maybe 12 ft <- zone.base"},
		{"joist.span", "may apply, nothing said", nil, "maybe anything <- zone.base, joist.span"},
		{"joist.span", "said not to apply, which settles what may", []string{"joist.span = does not apply"}, "absent"},
		{"joist.span", "said not to apply, where it does", []string{"zone.base = joists", "joist.span = does not apply"}, "anything <- joist.span"},
		{"joist.size", "a text", []string{"zone.base = joists", "joist.member = sawn-lumber", "joist.size = 2x10"}, "2x10"},

		{"tile.setting", "default of a choice of the owner", nil, "thin-bed"},
		{"tile.setting", "not sure is no default", []string{"tile.setting = not sure"}, "anything <- tile.setting"},
		{"joist.live_load", "default of a usual load", nil, "40 psf"},
		{"tile.kind", "chosen, without a default", nil, "anything <- tile.kind"},

		{"room.wet", "implied", []string{"room.use = bath"}, "wet-room"},
		{"room.wet", "an answer wins over what is implied", []string{"room.use = bath", "room.wet = dry"}, "dry"},
		{"room.wet", "not sure leaves what is implied", []string{"room.use = bath", "room.wet = not sure"}, "wet-room"},
		{"room.wet", "nothing implied", []string{"room.use = other"}, "anything <- room.wet"},
		{"room.wet", "implied both ways", []string{"room.use = bath, hall"}, "anything <- room.wet"},
		{"zone.grade", "implied one of two", []string{"zone.base = slab-on-ground"}, "below-ground, on-ground <- zone.grade"},
		{"joist.figure_from", "implied", []string{"zone.base = joists", "joist.member = sawn-lumber"}, "own-sum"},
	} {
		t.Run(tt.fact+"/"+tt.name, func(t *testing.T) {
			_, zone := theWorld().floor(t, tt.lines...)
			if got := theWorld().show(zone, tt.fact); got != tt.want {
				t.Errorf("%q\nwant %q", got, tt.want)
			}
		})
	}
}

// A parked answer stays in the record while its fact is absent.
func TestParkedAnswerIsKept(t *testing.T) {
	w := theWorld()
	j := w.job(t, "zone.base = slab-on-ground", "joist.span = 12 ft")
	w.plan.Fill(j, "2026-06-01")
	at, err := schema.ParseAddress("joist.span")
	if err == nil {
		at, err = j.Locate(at)
	}
	if a, ok := j.Answer(at); err != nil || !ok || a.Set.Range != quantity.Point(144) {
		t.Errorf("the answer is %+v, %v, %v", a, ok, err)
	}
}

// What a plan takes as done stands over answers and sums alike.
func TestAssumedValues(t *testing.T) {
	w := theWorld()
	j := w.job(t, "zone.base = joists", "water.leak = yes", "layer.l1.kind = linoleum", "layer.l1.wet = yes", "layer.complete = yes")
	zone := &j.Areas[0].Zones[0]
	zone.Assumed = map[string]schema.Set{"water.leak": schema.SetNo, "joist.ratio_live": {Range: quantity.Point(360)}}
	zone.Lists[schema.ScopeLayer][0].Assumed = map[string]schema.Set{"layer.wet": schema.SetNo}
	f := w.plan.Fill(j, "2026-06-01").Zones[0][0]
	for _, tt := range []struct {
		of interface {
			Fact(schema.FactID) schema.Fact
		}
		name, want string
	}{{f, "water.leak", "no"}, {f, "joist.ratio_live", "L/360"}, {item(t, f, schema.ScopeLayer, "l1"), "layer.wet", "no"}} {
		id, _ := w.catalogue.Schema().Lookup(tt.name)
		fact := tt.of.Fact(id)
		if got := w.catalogue.Write(w.catalogue.Schema().Decl(id), fact.Set, quantity.US); got != tt.want || len(fact.Deps) > 0 {
			t.Errorf("%s is %s, open on %v; want %s", tt.name, got, fact.Deps, tt.want)
		}
	}
}

// An address names its zone and area, a listed thing its id; nothing else.
func TestAddresses(t *testing.T) {
	w := theWorld()
	_, zone := w.floor(t, "layer.l1.kind = carpet")
	layer := item(t, zone, schema.ScopeLayer, "l1")
	for _, tt := range []struct {
		got  schema.Address
		want string
	}{
		{zone.Above(schema.ScopeJob).Address(w.catalogue.Schema().Find("site.year_built")), "site.year_built"},
		{zone.Above(schema.ScopeArea).Address(w.catalogue.Schema().Find("room.use")), "the-room.room.use"},
		{zone.Address(w.catalogue.Schema().Find("zone.base")), "the-room.main.zone.base"},
		{layer.Address(w.catalogue.Schema().Find("layer.kind")), "the-room.main.layer.l1.kind"},
	} {
		if tt.got.String() != tt.want {
			t.Errorf("%s, want %s", tt.got, tt.want)
		}
	}
}
