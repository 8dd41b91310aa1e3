package reports

import (
	"strconv"

	"underfoot/assess/quantity"
	"underfoot/assess/result"
)

// quantities are what the plan's steps take. They are a section of their own,
// since a sheet repeats the headings of its first table on every page.
func (b *builder) quantities() Section {
	s := b.section(QuantitiesSection)
	var amounts []stepAmount
	for _, p := range b.steps() {
		for _, q := range p.Quantities {
			amounts = append(amounts, stepAmount{p, q})
		}
	}
	s.addTable("", b.quantityTable().Of(b.language, amounts))
	s.Detail = true
	if len(s.Parts) > 0 {
		s.Lead = []Para{{Text: b.say("report/quantities.lead")}}
	}
	return s
}

// A stepAmount is one line of material or work of a step.
type stepAmount struct {
	step
	result.Quantity
}

// quantityTable has the two ends of a quantity as numbers.
func (b *builder) quantityTable() TableOf[stepAmount] {
	return TableOf[stepAmount]{ID: "quantities", Shape: Grid, Columns: []ColumnOf[stepAmount]{
		TextColumn("report/column.place", Group, 16, func(q stepAmount) string { return q.place }),
		TextColumn("report/column.step", Detail, 8, func(q stepAmount) string { return strconv.Itoa(q.n) }),
		TextColumn("report/column.item", Title, 36, func(q stepAmount) string { return b.text(q.Quantity.Text) }),
		numberColumn("report/column.low", 10, func(q stepAmount) Cell { return b.number(q.Value.Lo) }),
		numberColumn("report/column.high", 10, func(q stepAmount) Cell { return b.number(q.Value.Hi) }),
		TextColumn("report/column.unit", Detail, 10, func(q stepAmount) string { return b.text(q.Unit) }),
		TextColumn("report/column.note", Detail, 40, func(q stepAmount) string { return b.text(q.Note) }),
	}}
}

// number is a number with as many digits as a reader needs, or the words for an
// end that is not known.
func (b *builder) number(v float64) Cell {
	if !quantity.Point(v).Bounded() {
		return Cell{Text: b.say("report/view.not_known")}
	}
	return Cell{Text: quantity.Write(quantity.Number, quantity.Point(v), quantity.US), Number: &v}
}
