package condition_test

import (
	"math"
	"slices"
	"testing"

	"underfoot/assess"
	"underfoot/assess/condition"
	"underfoot/assess/figure"
	"underfoot/assess/message"
	"underfoot/assess/quantity"
)

// The facts of the tests: invented bounds, in the vocabulary of a floor.
var schema = assess.NewSchema([]assess.Declaration{
	{ID: "room.size", Scope: assess.ScopeArea, Kind: assess.KindQuantity, Dimension: quantity.Area, Always: true},
	{ID: "zone.base", Scope: assess.ScopeZone, Kind: assess.KindChoice, Choices: []string{"joists", "beam-and-deck", "slab-on-ground"}, Always: true},
	{ID: "danger.gas", Scope: assess.ScopeZone, Kind: assess.KindYesNo, Choices: assess.YesNoChoices, Always: true},
	{ID: "joist.span", Scope: assess.ScopeZone, Kind: assess.KindQuantity, Dimension: quantity.Length, Bounds: quantity.Range{Lo: 1, Hi: 480}},
	{ID: "joist.depth", Scope: assess.ScopeZone, Kind: assess.KindQuantity, Dimension: quantity.Length, Bounds: quantity.Range{Lo: 1, Hi: 24}},
	{ID: "joist.ratio", Scope: assess.ScopeZone, Kind: assess.KindQuantity, Dimension: quantity.Ratio},
	{ID: "joist.live_load", Scope: assess.ScopeZone, Kind: assess.KindQuantity, Dimension: quantity.Load, Bounds: quantity.Range{Lo: 1, Hi: 150}},
	{ID: "joist.size", Scope: assess.ScopeZone, Kind: assess.KindText},
	{ID: "edge.step_now", Scope: assess.ScopeEdge, Kind: assess.KindQuantity, Dimension: quantity.Length, Bounds: quantity.Range{Lo: -12, Hi: 12}},
	{ID: "slab.rh", Scope: assess.ScopeZone, Kind: assess.KindQuantity, Dimension: quantity.Percent, Bounds: quantity.Range{Lo: 0, Hi: 100}},
	{ID: "slab.rh_limit", Scope: assess.ScopeZone, Kind: assess.KindQuantity, Dimension: quantity.Percent, Bounds: quantity.Range{Lo: 1, Hi: 100}},
	{ID: "floor.cracks", Scope: assess.ScopeZone, Kind: assess.KindQuantity, Dimension: quantity.Number, Always: true},
	{ID: "floor.covers", Scope: assess.ScopeZone, Kind: assess.KindQuantity, Dimension: quantity.Number, Bounds: quantity.Range{Lo: 1, Hi: 50}, Always: true},
	{ID: "layer.kind", Scope: assess.ScopeLayer, Kind: assess.KindChoice, Choices: []string{"sheet-vinyl", "vinyl-tile", "linoleum", "plywood"}, Always: true},
	{ID: "layer.tight", Scope: assess.ScopeLayer, Kind: assess.KindYesNo, Choices: assess.YesNoChoices},
	{ID: "layer.cushioned", Scope: assess.ScopeLayer, Kind: assess.KindYesNo, Choices: assess.YesNoChoices},
	{ID: "layer.laid", Scope: assess.ScopeLayer, Kind: assess.KindQuantity, Dimension: quantity.Year, Always: true},
})

// shelf is the figures of the tests, invented too; the region lacks test_to.
type shelf struct{}

func (shelf) Figure(id string) (figure.Figure, bool) {
	f, ok := map[string]figure.Figure{
		"presumed_to":   {Value: 1980, Dimension: quantity.Year},
		"sag_limit":     {Value: 0.5, Dimension: quantity.Length},
		"cracks_max":    {Value: 2, Dimension: quantity.Number},
		"stone_limit":   {Value: 720, Dimension: quantity.Ratio},
		"hollow_share":  {Value: 10, Dimension: quantity.Percent},
		"weight_margin": {Value: 5, Dimension: quantity.Load},
	}[id]
	return f, ok
}

func (shelf) IDs() []string {
	return []string{"cracks_max", "hollow_share", "presumed_to", "sag_limit", "stone_limit", "test_to", "weight_margin"}
}

var names = condition.Names{Schema: schema, Figures: shelf{}}

// compile is a condition that must be right.
func compile(t testing.TB, src string) *condition.Condition {
	t.Helper()
	c, problems := condition.Compile(src, condition.Place{File: "rules.toml", Line: 7, Column: 9}, names)
	for _, p := range problems {
		t.Errorf("%s", p.Report(message.English()))
	}
	if len(problems) > 0 {
		t.FailNow()
	}
	return c
}

// id is the fact of a name.
func id(name string) assess.FactID {
	f, ok := schema.Lookup(name)
	if !ok {
		panic("no fact " + name)
	}
	return f
}

// facts is one state of the world by the facts' names. What is not said is
// present and may be anything; every unsettled fact depends on itself, and
// every open presence on a number of its own.
type facts map[string]assess.Fact

const presenceRef = 1000

func (f facts) Fact(id assess.FactID) assess.Fact {
	d := schema.Decl(id)
	fact, said := f[d.ID]
	if !said {
		fact = assess.Fact{Presence: assess.Proven, Set: d.Full()}
	}
	if fact.Presence.Truth == assess.Open {
		fact.Presence = assess.OpenOn(assess.DependOn(assess.Ref(presenceRef + id)))
	}
	if !fact.Set.Settled(d.Kind) && fact.Presence.Truth != assess.No {
		fact.Deps = assess.DependOn(assess.Ref(id))
	}
	return fact
}

// present is a fact that applies; may is one that perhaps does.
func present(s assess.Set) assess.Fact { return assess.Fact{Presence: assess.Proven, Set: s} }
func may(s assess.Set) assess.Fact     { return assess.Fact{Set: s} }

// words is the set of a choice's words.
func words(name string, choices ...string) assess.Set {
	d := schema.Find(name)
	var s assess.Set
	for _, w := range choices {
		bit, ok := d.ChoiceBit(w)
		if !ok {
			panic(name + " is never " + w)
		}
		s.Mask |= bit
	}
	return s
}

func between(lo, hi float64) assess.Set { return assess.Set{Range: quantity.Range{Lo: lo, Hi: hi}} }
func point(v float64) assess.Set        { return between(v, v) }

var infinite = math.Inf(1)

// dependsOn is a set of dependencies as names, '?' behind those of presence.
func dependsOn(d assess.Deps) []string {
	var out []string
	for _, r := range d {
		if r >= presenceRef {
			out = append(out, schema.Decl(assess.FactID(r-presenceRef)).ID+"?")
		} else {
			out = append(out, schema.Decl(assess.FactID(r)).ID)
		}
	}
	slices.Sort(out)
	return out
}
