package facts

import (
	"math"

	"underfoot/assess/logic"
	"underfoot/assess/quantity"
	"underfoot/assess/result"
	"underfoot/assess/schema"
)

// builtIn are the derivations of the program's own: ages from years, and the
// layers of a deck.
func builtIn() []result.Derivation {
	return []result.Derivation{layerAge, slabAge, woodLayers, woodSheets}
}

// always declares a fact that every thing of its scope has.
func always(d schema.Declaration) []schema.Declaration {
	d.Always = true
	return []schema.Declaration{d}
}

var (
	layerAge = ageFrom("layer.year", "layer.age_days", schema.ScopeLayer)
	slabAge  = ageFrom("slab.year", "slab.age_days", schema.ScopeZone)
)

// ageFrom supplies an age in days from a year: from the first day of the year
// after it to the last day before it, counted at the visit.
func ageFrom(year, age string, scope schema.Scope) result.Derivation {
	return result.Derivation{
		ID: age + " from " + year, Scope: scope, Reads: []string{year},
		Gives: []schema.Declaration{{ID: age, Scope: scope, Kind: schema.KindQuantity, Dimension: quantity.Days, Nature: schema.Found}},
		Make: func(t result.Thing) ([]schema.Fact, *result.Check) {
			const shortYear, longYear = 365, 366
			y := t.Fact(year)
			now := float64(t.Visited().Year())
			r := y.Set.Range
			if now == 0 || math.IsInf(r.Hi, 1) {
				return one(schema.Absent)
			}
			days := quantity.Range{Lo: math.Max(0, (now-r.Hi-1)*shortYear), Hi: (now - r.Lo + 1) * longYear}
			return one(schema.Fact{Presence: logic.Proven, Set: schema.Set{Range: days}, Deps: y.Deps})
		},
	}
}

// woodLayers and woodSheets count the deck and the good plywood laid on it.
var (
	woodLayers = sumOf("panel.layers", "deck.layers", "floor.plywood")
	woodSheets = sumOf("panel.panels", "deck.sheets", "floor.plywood")
)

func sumOf(id, a, b string) result.Derivation {
	return result.Derivation{
		ID: id, Scope: schema.ScopeZone, Reads: []string{a, b},
		Gives: always(schema.DerivedQuantity(id, schema.ScopeZone, quantity.Number, quantity.Everything)),
		Make: func(t result.Thing) ([]schema.Fact, *result.Check) {
			x, y := t.Fact(a), t.Fact(b)
			return one(number(x.Set.Range.Add(y.Set.Range), x.Deps.Union(y.Deps)))
		},
	}
}

func one(f schema.Fact) ([]schema.Fact, *result.Check) { return []schema.Fact{f}, nil }
