package facts_test

import (
	"slices"
	"testing"

	"underfoot/assess/facts"
	"underfoot/assess/schema"
)

// Three layers, the middle one coming out: what lies above it goes with it.
var three = []string{"layer.l1.kind = carpet", "layer.l2.kind = linoleum", "layer.l2.coming_out = yes", "layer.l3.kind = plywood-underlayment"}

func TestBuiltInFactsOfLayers(t *testing.T) {
	const built = "site.year_built = 1958 document"
	done := "layer.complete = yes"
	for _, tt := range []struct {
		name, item, fact string
		lines            []string
		want             string
	}{
		{"first", "l1", "layer.place", three, "1"},
		{"third", "l3", "layer.place", three, "3"},
		{"below all that are named", facts.RestID, "layer.place", three, "at least 4 <- layer.complete"},

		{"nothing above the top", "l1", "layer.above", three, "none"},
		{"the next one up", "l3", "layer.above", three, "linoleum"},
		{"one of two", "l2", "layer.above", []string{"layer.l1.kind = carpet, cork", "layer.l2.kind = linoleum"}, "cork, carpet <- layer.l1.kind"},
		{"above the rest", facts.RestID, "layer.above", three, "anything <- layer.complete"},

		{"the next one down", "l1", "layer.below", three, "linoleum"},
		{"nothing below the last of a whole list", "l3", "layer.below", append(slices.Clone(three), done), "none"},
		{"below the last of an open list", "l3", "layer.below", three, "anything <- layer.complete"},

		{"comes out", "l2", "layer.stays", three, "no"},
		{"lies on what comes out", "l1", "layer.stays", three, "no"},
		{"lies below what comes out", "l3", "layer.stays", three, "yes"},
		{"below may come out", "l1", "layer.stays", []string{"layer.l1.kind = carpet", "layer.l2.coming_out = not sure", done}, "anything <- layer.l2.coming_out"},
		{"the rest stays unless said", facts.RestID, "layer.stays", three, "yes"},

		{"top of those that stay", "l3", "layer.top", three, "yes"},
		{"gone", "l1", "layer.top", three, "no"},
		{"second of two that stay", "l2", "layer.top", []string{"layer.l1.kind = carpet", "layer.l2.kind = linoleum", done}, "no"},
		{"top if the one above goes", "l2", "layer.top", []string{"layer.l1.coming_out = not sure", "layer.l2.kind = linoleum", done}, "anything <- layer.l1.coming_out"},

		{"a paper dates the layer", "l1", "layer.laid", []string{built, "layer.l1.year = 1998 document"}, "1998"},
		{"a marking dates the layer", "l1", "layer.laid", []string{built, "layer.l1.year = 1998 seen"}, "1998"},
		{"a seller's word does not", "l1", "layer.laid", []string{built, "layer.l1.year = 1998 told"}, "1958 to 2026 <- layer.l1.year"},
		{"a year without a basis does not", "l1", "layer.laid", []string{built, "layer.l1.year = 1998"}, "1958 to 2026 <- layer.l1.year"},
		{"no later than the visit", "l1", "layer.laid", []string{"layer.l1.year = 1998 or later document"}, "1998 to 2026 <- layer.l1.year"},
		{"age of the house", "l1", "layer.laid", []string{"site.year_built = 1960s", "layer.l1.kind = carpet"}, "1960 to 2026 <- layer.l1.year, site.year_built"},
		{"nothing known", "l1", "layer.laid", []string{"layer.l1.kind = carpet"}, "2026 or earlier <- layer.l1.year, site.year_built"},
		{"of the rest", facts.RestID, "layer.laid", []string{built}, "1958 to 2026 <- layer.complete"},
		{"a house of this year", "l1", "layer.laid", []string{"site.year_built = 2026", "layer.l1.kind = carpet"}, "2026"},

		{"laboratory reports all clear", "l1", "layer.lab_clear", []string{"layer.l1.lab_result = none-found", "layer.l1.lab_complete = yes"}, "yes"},
		{"glue not in the report", "l1", "layer.lab_clear", []string{"layer.l1.lab_result = none-found", "layer.l1.lab_complete = no"}, "no"},
		{"not said what was tested", "l1", "layer.lab_clear", []string{"layer.l1.lab_result = none-found"}, "anything <- layer.l1.lab_complete"},
		{"a trace is not clear", "l1", "layer.lab_clear", []string{"layer.l1.lab_result = trace", "layer.l1.lab_complete = yes"}, "no"},
		{"not tested", "l1", "layer.lab_clear", []string{"layer.l1.kind = carpet"}, "no"},
		{"not sure whether tested", "l1", "layer.lab_clear", []string{"layer.l1.lab_result = not sure", "layer.l1.lab_complete = yes"}, "anything <- layer.l1.lab_result"},
		{"the rest is not tested", facts.RestID, "layer.lab_clear", nil, "no"},

		// a year counts from its first day to its last: 365 days a year short, 366 long
		{"age from the year", "l1", "layer.age_days", []string{"layer.l1.kind = cement-screed", "layer.l1.year = 2024"}, "365 to 1098 days <- layer.l1.age_days"},
		{"age said", "l1", "layer.age_days", []string{"layer.l1.kind = cement-screed", "layer.l1.year = 2024", "layer.l1.age_days = 400 days"}, "400 days"},
		{"no year, no age", "l1", "layer.age_days", []string{"layer.l1.kind = cement-screed"}, "anything <- layer.l1.age_days"},
		{"no age of carpet", "l1", "layer.age_days", []string{"layer.l1.kind = carpet", "layer.l1.year = 2024"}, "absent"},
	} {
		t.Run(tt.fact+"/"+tt.name, func(t *testing.T) {
			_, zone := theWorld().floor(t, tt.lines...)
			if got := theWorld().show(item(t, zone, schema.ScopeLayer, tt.item), tt.fact); got != tt.want {
				t.Errorf("%q\nwant %q", got, tt.want)
			}
		})
	}
}

// Deck and good plywood laid on it are counted together.
func TestWoodLayers(t *testing.T) {
	deck := []string{"zone.base = joists", "deck.d1.kind = osb", "deck.complete = yes"}
	for _, tt := range []struct {
		name          string
		lines         []string
		layers, sheet string
	}{
		{"one sheet", append(deck[:3:3], "layer.complete = yes"), "1", "1"},
		{"boards are no sheets", append(deck[:3:3], "deck.d2.kind = boards", "layer.complete = yes"), "2", "1"},
		{"plywood laid over counts", append(deck[:3:3], "layer.l1.kind = plywood-underlayment", "layer.l1.exterior_glue = yes",
			"layer.l1.thickness = 1/2 in", "layer.complete = yes"), "2", "2"},
		{"thin plywood does not", append(deck[:3:3], "layer.l1.kind = plywood-underlayment", "layer.l1.exterior_glue = yes",
			"layer.l1.thickness = 1/4 in", "layer.complete = yes"), "1", "1"}, // least 11/32 in: common practice
		{"glue not known", append(deck[:3:3], "layer.l1.kind = plywood-underlayment", "layer.l1.thickness = 1/2 in", "layer.complete = yes"),
			"1 to 2 <- layer.l1.exterior_glue", "1 to 2 <- layer.l1.exterior_glue"},
		{"an open deck", []string{"zone.base = joists", "deck.d1.kind = osb", "layer.complete = yes"}, "at least 1 <- deck.complete", "at least 1 <- deck.complete"},
		{"a slab has none", []string{"zone.base = slab-on-ground", "deck.d1.kind = osb", "layer.complete = yes"}, "0", "0"},
	} {
		t.Run(tt.name, func(t *testing.T) {
			_, zone := theWorld().floor(t, tt.lines...)
			if got := theWorld().show(zone, "panel.layers"); got != tt.layers {
				t.Errorf("panel.layers: %q, want %q", got, tt.layers)
			}
			if got := theWorld().show(zone, "panel.panels"); got != tt.sheet {
				t.Errorf("panel.panels: %q, want %q", got, tt.sheet)
			}
		})
	}
}
