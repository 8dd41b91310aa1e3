package reports

import (
	"underfoot/assess"
	"underfoot/assess/quantity"
)

// quantities are what the plan's steps take. They are a section of their own,
// since a sheet repeats the headings of its first table on every page.
func (b *builder) quantities() Section {
	s := b.section(QuantitiesSection)
	amounts := &Table{ID: "quantities", Shape: Grid, Columns: []Column{
		b.column("place", Group, 16), b.column("step", Detail, 8), b.column("item", Title, 36),
		b.numbers("low", 10), b.numbers("high", 10), b.column("unit", Detail, 10), b.column("note", Detail, 40),
	}}
	b.eachStep(func(place, n string, p *assess.PlanStep) {
		for _, q := range p.Quantities {
			amounts.Rows = append(amounts.Rows, b.amountRow(place, n, q))
		}
	})
	s.addTable("", amounts)
	s.Detail = true
	if len(s.Parts) > 0 {
		s.Lead = []Para{{Text: b.say("report/quantities.lead")}}
	}
	return s
}

// amountRow has the two ends of a quantity as numbers.
func (b *builder) amountRow(place, step string, q assess.Quantity) Row {
	row := Row{Cells: cells(place, step, b.tell(q.Text), "", "", b.tell(q.Unit), b.tell(q.Note))}
	row.Cells[3], row.Cells[4] = b.number(q.Value.Lo), b.number(q.Value.Hi)
	return row
}

// number is a number with as many digits as a reader needs, or the words for an
// end that is not known.
func (b *builder) number(v float64) Cell {
	if !quantity.Point(v).Bounded() {
		return Cell{Text: b.say("report/view.not_known")}
	}
	return Cell{Text: quantity.Write(quantity.Number, quantity.Point(v), quantity.US), Number: &v}
}
