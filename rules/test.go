package rules

import (
	"underfoot/assess"
	"underfoot/assess/condition"
	"underfoot/assess/quantity"
	"underfoot/rules/pack"
)

// Test runs the cases that stand beside the rules of the engine's region.
func (e *Engine) Test() (failures []pack.Failure, ran int) {
	names := condition.Names{Schema: e.Catalogue.Schema(), Figures: e.Figures}
	return e.Pack.Test(names, func(d *assess.Declaration, text string) (assess.Set, error) {
		return e.Catalogue.Read(d, text, quantity.US)
	})
}
