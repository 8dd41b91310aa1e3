package structure

import (
	"underfoot/assess/figure"
	"underfoot/assess/logic"
	"underfoot/assess/quantity"
	"underfoot/assess/result"
	"underfoot/assess/schema"
)

// Limit gives joist.limit: the least span over deflection of joists under the
// tile that is planned, ceramic_limit or stone_limit; the range of both while
// the tile is not known. On a long span the cap under stone asks more of an own
// sum than the ratio (see Bound); a figure on paper is held to the ratio alone.
// A missing figure leaves it unknown.
func Limit(t *figure.Table) result.Derivation {
	ceramic, okCeramic := t.Figure("ceramic_limit")
	_, okStone := t.Figure("stone_limit")
	ofStone := BoundFor("natural-stone", t)
	return result.Derivation{ID: "joist.limit", Scope: schema.ScopeZone, Reads: []string{tileKind.ID, figureFrom.ID, "joist.span"}, Gives: ratio("joist.limit"),
		Make: func(zone result.Thing) ([]schema.Fact, *result.Check) {
			under := underStone(zone, ofStone)
			e := under.or(estimate{quantity.Point(ceramic.Value), zone.Fact(tileKind.ID).Deps})
			switch stone := is(zone, &tileKind, "natural-stone"); {
			case !okCeramic || !okStone:
				e = unknown
			case stone.Truth == logic.Yes:
				e = under
			case stone.Truth == logic.No:
				e.value = quantity.Point(ceramic.Value)
			}
			return []schema.Fact{e.fact(logic.Proven)}, nil
		}}
}

// underStone is the limit under stone, capped as far as the figure that counts
// may be the program's own.
func underStone(zone result.Thing, b Bound) estimate {
	from, span := zone.Fact(figureFrom.ID), zone.Fact("joist.span")
	plain, capped := quantity.Point(b.Ratio), b.Least(span.Set.Range)
	switch {
	case capped == plain || from.Set.Mask&fromOwn == 0:
		return estimate{value: plain}
	case from.Set.Mask == fromOwn:
		return estimate{capped, span.Deps}
	}
	return estimate{capped.Hull(plain), span.Deps.Union(from.Deps)}
}

// limitSources are where the limits were read, that of the cap only where it counts.
func limitSources(t *figure.Table, limit quantity.Range) []figure.Source {
	var all []figure.Source
	for _, id := range []string{"ceramic_limit", "stone_limit"} {
		if f, ok := t.Figure(id); ok {
			all = append(all, f.Source)
			if id == "stone_limit" && limit.Bounded() && limit.Hi > f.Value {
				all = append(all, figure.Method("stone-cap"))
			}
		}
	}
	return all
}
