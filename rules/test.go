package rules

import (
	"underfoot/assess"
	"underfoot/assess/quantity"
	"underfoot/rules/pack"
)

// Test runs the cases that stand beside the rules of the engine's region.
func (e *Engine) Test() (failures []pack.Failure, ran int) {
	return e.Pack.Test(e.Catalogue.Schema(), func(d *assess.Declaration, text string) (assess.Set, error) {
		return e.Catalogue.Read(d, text, quantity.US)
	})
}
