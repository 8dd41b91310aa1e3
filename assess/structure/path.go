package structure

import (
	"slices"

	"underfoot/assess"
	"underfoot/assess/figure"
	"underfoot/assess/quantity"
)

// PathRatio gives path.ratio_total: the total-load ratio with the weight that
// one base and its tile add to the dead load. It is there where the own sum
// decides.
func PathRatio(t *figure.Table) assess.Derivation {
	return assess.Derivation{ID: "path.ratio_total", Scope: assess.ScopePath, Reads: reads("path.added_weight"),
		Gives: []assess.Declaration{{ID: "path.ratio_total", Scope: assess.ScopePath, Kind: assess.KindQuantity,
			Dimension: quantity.Ratio, Bounds: quantity.AtLeast(0), Nature: assess.Derived}},
		Make: func(path assess.Thing) ([]assess.Fact, *assess.Check) {
			own := computeOwn(loaded{path}, titlePath, TotalLoad)
			fact := own.fact(ownDecides(path))
			if !totalMatters(t, path) || fact.Presence.Truth != assess.Yes || own.note != "" {
				return []assess.Fact{fact}, nil
			}
			return []assess.Fact{fact}, own.check(t, path, "path.ratio_total", titlePath, noteTotal, fact)
		}}
}

// loaded is a path whose dead load has the weight of the build added to it.
type loaded struct{ assess.Thing }

// Fact adds path.added_weight to joist.dead_load and passes every other fact.
func (l loaded) Fact(name string) assess.Fact {
	f := l.Thing.Fact(name)
	if name != "joist.dead_load" {
		return f
	}
	added := l.Thing.Fact("path.added_weight")
	f.Set.Range = f.Set.Range.Add(added.Set.Range)
	f.Deps = slices.Clip(f.Deps).Union(added.Deps)
	return f
}
