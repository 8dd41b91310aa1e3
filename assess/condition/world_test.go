package condition_test

import (
	"math"
	"slices"
	"testing"

	"underfoot/assess/condition"
	"underfoot/assess/figure"
	"underfoot/assess/logic"
	"underfoot/assess/message"
	"underfoot/assess/quantity"
	"underfoot/assess/schema"
)

// The facts of the tests: invented bounds, in the vocabulary of a floor.
var declared = schema.NewSchema([]schema.Declaration{
	{ID: "room.size", Scope: schema.ScopeArea, Kind: schema.KindQuantity, Dimension: quantity.Area, Always: true},
	{ID: "zone.base", Scope: schema.ScopeZone, Kind: schema.KindChoice, Choices: []string{"joists", "beam-and-deck", "slab-on-ground"}, Always: true},
	{ID: "danger.gas", Scope: schema.ScopeZone, Kind: schema.KindYesNo, Choices: schema.YesNoChoices, Always: true},
	{ID: "joist.span", Scope: schema.ScopeZone, Kind: schema.KindQuantity, Dimension: quantity.Length, Bounds: quantity.Range{Lo: 1, Hi: 480}},
	{ID: "joist.depth", Scope: schema.ScopeZone, Kind: schema.KindQuantity, Dimension: quantity.Length, Bounds: quantity.Range{Lo: 1, Hi: 24}},
	{ID: "joist.ratio", Scope: schema.ScopeZone, Kind: schema.KindQuantity, Dimension: quantity.Ratio},
	{ID: "joist.live_load", Scope: schema.ScopeZone, Kind: schema.KindQuantity, Dimension: quantity.Load, Bounds: quantity.Range{Lo: 1, Hi: 150}},
	{ID: "joist.size", Scope: schema.ScopeZone, Kind: schema.KindText},
	{ID: "edge.step_now", Scope: schema.ScopeEdge, Kind: schema.KindQuantity, Dimension: quantity.Length, Bounds: quantity.Range{Lo: -12, Hi: 12}},
	{ID: "slab.rh", Scope: schema.ScopeZone, Kind: schema.KindQuantity, Dimension: quantity.Percent, Bounds: quantity.Range{Lo: 0, Hi: 100}},
	{ID: "slab.rh_limit", Scope: schema.ScopeZone, Kind: schema.KindQuantity, Dimension: quantity.Percent, Bounds: quantity.Range{Lo: 1, Hi: 100}},
	{ID: "floor.cracks", Scope: schema.ScopeZone, Kind: schema.KindQuantity, Dimension: quantity.Number, Always: true},
	{ID: "floor.covers", Scope: schema.ScopeZone, Kind: schema.KindQuantity, Dimension: quantity.Number, Bounds: quantity.Range{Lo: 1, Hi: 50}, Always: true},
	{ID: "layer.kind", Scope: schema.ScopeLayer, Kind: schema.KindChoice, Choices: []string{"sheet-vinyl", "vinyl-tile", "linoleum", "plywood"}, Always: true},
	{ID: "layer.tight", Scope: schema.ScopeLayer, Kind: schema.KindYesNo, Choices: schema.YesNoChoices},
	{ID: "layer.cushioned", Scope: schema.ScopeLayer, Kind: schema.KindYesNo, Choices: schema.YesNoChoices},
	{ID: "layer.laid", Scope: schema.ScopeLayer, Kind: schema.KindQuantity, Dimension: quantity.Year, Always: true},
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

var names = condition.Names{Schema: declared, Figures: shelf{}}

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
func id(name string) schema.FactID {
	f, ok := declared.Lookup(name)
	if !ok {
		panic("no fact " + name)
	}
	return f
}

// facts is one state of the world by the facts' names. What is not said is
// present and may be anything; every unsettled fact depends on itself, and
// every open presence on a number of its own.
type facts map[string]schema.Fact

const presenceRef = 1000

func (f facts) Fact(id schema.FactID) schema.Fact {
	d := declared.Decl(id)
	fact, said := f[d.ID]
	if !said {
		fact = schema.Fact{Presence: logic.Proven, Set: d.Full()}
	}
	if fact.Presence.Truth == logic.Open {
		fact.Presence = logic.OpenOn(logic.DependOn(logic.Ref(presenceRef + id)))
	}
	if !fact.Set.Settled(d.Kind) && fact.Presence.Truth != logic.No {
		fact.Deps = logic.DependOn(logic.Ref(id))
	}
	return fact
}

// present is a fact that applies; may is one that perhaps does.
func present(s schema.Set) schema.Fact { return schema.Fact{Presence: logic.Proven, Set: s} }
func may(s schema.Set) schema.Fact     { return schema.Fact{Set: s} }

// words is the set of a choice's words.
func words(name string, choices ...string) schema.Set {
	d := declared.Find(name)
	var s schema.Set
	for _, w := range choices {
		bit, ok := d.ChoiceBit(w)
		if !ok {
			panic(name + " is never " + w)
		}
		s.Mask |= bit
	}
	return s
}

func between(lo, hi float64) schema.Set { return schema.Set{Range: quantity.Range{Lo: lo, Hi: hi}} }
func point(v float64) schema.Set        { return between(v, v) }

var infinite = math.Inf(1)

// dependsOn is a set of dependencies as names, '?' behind those of presence.
func dependsOn(d logic.Deps) []string {
	var out []string
	for _, r := range d {
		if r >= presenceRef {
			out = append(out, declared.Decl(schema.FactID(r-presenceRef)).ID+"?")
		} else {
			out = append(out, declared.Decl(schema.FactID(r)).ID)
		}
	}
	slices.Sort(out)
	return out
}
