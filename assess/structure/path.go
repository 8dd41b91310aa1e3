package structure

import (
	"slices"

	"underfoot/assess/figure"
	"underfoot/assess/message"
	"underfoot/assess/result"
	"underfoot/assess/schema"
)

// PathRatio gives path.ratio_total: the total-load ratio with the weight that
// one base and its tile add to the dead load. It is there where the own sum
// decides.
func PathRatio(t *figure.Table) result.Derivation {
	d := ownDerivation(t, description{"path.ratio_total", message.New("structure/title.path"), message.New("structure/check.total"), TotalLoad}, ownDecides,
		func(path result.Thing, o ownSum) bool { return o.note.IsZero() && totalMatters(t, path) })
	ofZone := d.Make
	d.Scope, d.Reads, d.Gives[0].Scope = schema.ScopePath, reads("path.added_weight"), schema.ScopePath
	d.Make = func(path result.Thing) ([]schema.Fact, *result.Check) { return ofZone(loaded{path}) }
	return d
}

// loaded is a path whose dead load has the weight of the build added to it.
type loaded struct{ result.Thing }

// Fact adds path.added_weight to joist.dead_load and passes every other fact.
func (l loaded) Fact(name string) schema.Fact {
	f := l.Thing.Fact(name)
	if name != "joist.dead_load" {
		return f
	}
	added := l.Thing.Fact("path.added_weight")
	f.Set.Range = f.Set.Range.Add(added.Set.Range)
	f.Deps = slices.Clip(f.Deps).Union(added.Deps)
	return f
}
