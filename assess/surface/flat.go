// Package surface gives the limits that the face of a floor is held to.
package surface

import (
	"math"

	"underfoot/assess/figure"
	"underfoot/assess/logic"
	"underfoot/assess/quantity"
	"underfoot/assess/result"
	"underfoot/assess/schema"
)

// FlatLimit gives flat.limit: the greatest gap, in inches, under a 10 ft
// straight edge. A tile with any edge of large_tile_edge or more has
// flat_large, a smaller one flat_small; while the edges leave that open it is
// the range of both. A missing figure leaves it unknown.
func FlatLimit(t *figure.Table) result.Derivation {
	large, okLarge := t.Figure("flat_large")
	small, okSmall := t.Figure("flat_small")
	edge, okEdge := t.Figure("large_tile_edge")
	ok := okLarge && okSmall && okEdge
	return result.Derivation{ID: "flat.limit", Scope: schema.ScopeZone, Reads: []string{"tile.long_edge", "tile.short_edge"},
		Gives: []schema.Declaration{schema.DerivedQuantity("flat.limit", schema.ScopeZone, quantity.Length, quantity.AtLeast(0))},
		Make: func(zone result.Thing) ([]schema.Fact, *result.Check) {
			long, short := zone.Fact("tile.long_edge"), zone.Fact("tile.short_edge")
			f := schema.Fact{Presence: logic.Proven}
			switch {
			case !ok:
				f.Set.Range = quantity.Everything
			case math.Max(long.Set.Range.Lo, short.Set.Range.Lo) >= edge.Value:
				f.Set.Range = quantity.Point(large.Value)
			case long.Set.Range.Hi < edge.Value: // no edge is longer than the longest
				f.Set.Range = quantity.Point(small.Value)
			default:
				f.Set.Range, f.Deps = quantity.Point(large.Value).Hull(quantity.Point(small.Value)), long.Deps
			}
			return []schema.Fact{f}, nil
		}}
}
