package facts

import (
	"math"

	"underfoot/assess"
	"underfoot/assess/quantity"
)

// builtIn are the derivations of the program's own: ages from years, and the
// layers of a deck.
func builtIn() []assess.Derivation {
	return []assess.Derivation{layerAge, slabAge, woodLayers, woodSheets}
}

// always declares a fact that every thing of its scope has.
func always(d assess.Declaration) []assess.Declaration {
	d.Always = true
	return []assess.Declaration{d}
}

var (
	layerAge = ageFrom("layer.year", "layer.age_days", assess.ScopeLayer)
	slabAge  = ageFrom("slab.year", "slab.age_days", assess.ScopeZone)
)

// ageFrom supplies an age in days from a year: from the first day of the year
// after it to the last day before it, counted at the visit.
func ageFrom(year, age string, scope assess.Scope) assess.Derivation {
	return assess.Derivation{
		ID: age + " from " + year, Scope: scope, Reads: []string{year},
		Gives: []assess.Declaration{{ID: age, Scope: scope, Kind: assess.KindQuantity, Dimension: quantity.Days, Nature: assess.Found}},
		Make: func(t assess.Thing) ([]assess.Fact, *assess.Check) {
			const shortYear, longYear = 365, 366
			y := t.Fact(year)
			now := float64(t.Visited().Year())
			r := y.Set.Range
			if now == 0 || math.IsInf(r.Hi, 1) {
				return one(assess.Absent)
			}
			days := quantity.Range{Lo: math.Max(0, (now-r.Hi-1)*shortYear), Hi: (now - r.Lo + 1) * longYear}
			return one(assess.Fact{Presence: assess.Proven, Set: assess.Set{Range: days}, Deps: y.Deps})
		},
	}
}

// woodLayers and woodSheets count the deck and the good plywood laid on it.
var (
	woodLayers = sumOf("panel.layers", "deck.layers", "floor.plywood")
	woodSheets = sumOf("panel.panels", "deck.sheets", "floor.plywood")
)

func sumOf(id, a, b string) assess.Derivation {
	return assess.Derivation{
		ID: id, Scope: assess.ScopeZone, Reads: []string{a, b},
		Gives: always(assess.DerivedQuantity(id, assess.ScopeZone, quantity.Number, quantity.Everything)),
		Make: func(t assess.Thing) ([]assess.Fact, *assess.Check) {
			x, y := t.Fact(a), t.Fact(b)
			return one(number(x.Set.Range.Add(y.Set.Range), x.Deps.Union(y.Deps)))
		},
	}
}

func one(f assess.Fact) ([]assess.Fact, *assess.Check) { return []assess.Fact{f}, nil }
