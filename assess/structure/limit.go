package structure

import (
	"underfoot/assess"
	"underfoot/assess/figure"
	"underfoot/assess/quantity"
)

// Limit gives joist.limit: the least span over deflection of joists under the
// tile that is planned, ceramic_limit or stone_limit; the range of both while
// the tile is not known. A missing figure leaves it unknown.
func Limit(t *figure.Table) assess.Derivation {
	ceramic, okCeramic := t.Figure("ceramic_limit")
	stone, okStone := t.Figure("stone_limit")
	both := quantity.Point(ceramic.Value).Hull(quantity.Point(stone.Value))
	return assess.Derivation{ID: "joist.limit", Scope: assess.ScopeZone, Reads: []string{tileKind.ID}, Gives: ratio("joist.limit"),
		Make: func(zone assess.Thing) ([]assess.Fact, *assess.Check) {
			e := estimate{both, zone.Fact(tileKind.ID).Deps}
			switch ofStone := is(zone, &tileKind, "natural-stone"); {
			case !okCeramic || !okStone:
				e = unknown
			case ofStone.Truth == assess.Yes:
				e.value = quantity.Point(stone.Value)
			case ofStone.Truth == assess.No:
				e.value = quantity.Point(ceramic.Value)
			}
			return []assess.Fact{e.fact(assess.Proven)}, nil
		}}
}

// limitSources are where the limits were read.
func limitSources(t *figure.Table) []figure.Source {
	var all []figure.Source
	for _, id := range []string{"ceramic_limit", "stone_limit"} {
		if f, ok := t.Figure(id); ok {
			all = append(all, f.Source)
		}
	}
	return all
}
