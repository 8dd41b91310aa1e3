package facts

import (
	"slices"

	"underfoot/assess/logic"
)

// Leaving is the layer as it would be if it came up, as far as that is settled.
// What lies above and below it is left as it is.
func (f *Frame) Leaving(up logic.Outcome) *Frame {
	out := *f
	out.facts = slices.Clone(f.facts)
	for _, name := range []string{"layer.stays", "layer.top"} {
		id, _ := f.floor.plan.schema.Lookup(name)
		s := f.floor.plan.slots[id]
		out.facts[s.slot] = yesNo(f.facts[s.slot].IsYes().And(up.Not()))
	}
	return &out
}

// Top is whether a layer is the highest that stays.
func (f *Frame) Top() logic.Outcome { return f.named("layer.top").IsYes() }

// AtLeast is whether a quantity is no less than a limit, by name.
func (f *Frame) AtLeast(name string, limit float64) logic.Outcome {
	return f.named(name).AtLeast(limit)
}
