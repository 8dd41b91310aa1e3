package inquiry

import (
	"math"
	"slices"

	"underfoot/assess/quantity"
	"underfoot/assess/schema"
)

// cells are one answer for each stretch of values between which something may
// change: every word of a choice, and for a quantity a point below, at and
// above each constant that a rule compares it with.
func (q *Inquiry) cells(a schema.Address) []schema.Set {
	id, ok := q.Catalogue.Schema().Lookup(a.Short())
	if !ok {
		return nil
	}
	d := q.Catalogue.Schema().Decl(id)
	switch {
	case a.Field == "complete":
		return []schema.Set{schema.SetYes}
	case d.Kind == schema.KindQuantity:
		return points(d, q.constants(id))
	case d.Kind == schema.KindText:
		return nil
	}
	sets := make([]schema.Set, len(d.Choices))
	for i := range d.Choices {
		sets[i] = schema.Set{Mask: 1 << i}
	}
	return sets
}

// constants are the values that any rule compares the fact with.
func (q *Inquiry) constants(id schema.FactID) []float64 {
	var all []float64
	for _, r := range q.Judge.Pack.Rules {
		for _, c := range r.Conditions() {
			all = append(all, c.Constants(id)...)
		}
	}
	slices.Sort(all)
	return slices.Compact(all)
}

// points are a value in each stretch between the constants, and the constants
// themselves; of a quantity that only a sum uses, three values within bounds.
func points(d *schema.Declaration, constants []float64) []schema.Set {
	lo, hi := d.Bounds.Lo, d.Bounds.Hi
	if math.IsInf(lo, 0) || math.IsInf(hi, 0) {
		return nil
	}
	var values []float64
	if len(constants) == 0 {
		values = []float64{lo + (hi-lo)/4, (lo + hi) / 2, hi - (hi-lo)/4}
	}
	before := lo
	for _, c := range constants {
		if c >= lo && c <= hi {
			values = append(values, (before+c)/2, c)
			before = c
		}
	}
	if len(constants) > 0 {
		values = append(values, (before+hi)/2)
	}
	sets := make([]schema.Set, len(values))
	for i, v := range values {
		sets[i] = schema.Set{Range: quantity.Point(v)}
	}
	return sets
}
