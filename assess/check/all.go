// Package check puts every computed check in the order of what it needs.
package check

import (
	"underfoot/assess/buildup"
	"underfoot/assess/figure"
	"underfoot/assess/result"
	"underfoot/assess/structure"
	"underfoot/assess/surface"
)

// All are the derivations of the computed checks, each after those whose
// facts it reads. The figures are those of one region; sums are made in
// base units.
func All(t *figure.Table) []result.Derivation {
	return []result.Derivation{
		structure.Limit(t),
		structure.LiveRatio(t),
		structure.OwnRatio(t),
		structure.TotalRatio(t),
		structure.Panel(t),
		surface.FlatLimit(t),
		buildup.IsAssembly(),
		buildup.Weight(t),
		buildup.Height(t),
		structure.PathRatio(t),
	}
}

// BuildUp is what a path adds to the floor, for a reader.
func BuildUp(t *figure.Table, path result.Thing) result.BuildUp { return buildup.Of(t, path) }

// Advise adds to a check of a zone what a reader wants to know beyond the
// number; see structure.Advise.
func Advise(t *figure.Table, zone result.Thing, c *result.Check) { structure.Advise(t, zone, c) }
