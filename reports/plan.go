package reports

import (
	"slices"
	"strconv"
	"strings"

	"underfoot/assess"
	"underfoot/assess/quantity"
)

// plan is what is done, in working order, zone by zone, and the quantities of it.
func (b *builder) plan() Section {
	s := b.section(PlanSection)
	steps := &Table{ID: "plan", Columns: []Column{
		b.column("place", Group, 12), b.column("step", Mark, 7), b.column("text", Title, 30),
		b.column("reason", Detail, 26), b.column("who", Detail, 11), b.column("if", Detail, 20), b.column("hold", Detail, 24),
		b.column("before", Detail, 26), b.column("cautions", Detail, 9), b.column("verify", Aside, 90),
		b.column("needs", Aside, 90), b.column("otherways", Aside, 40),
	}}
	amounts := &Table{ID: "quantities", Shape: Grid, Columns: []Column{
		b.column("place", Group, 16), b.column("step", Detail, 8), b.column("item", Title, 36),
		b.numbers("low", 10), b.numbers("high", 10), b.column("unit", Detail, 10), b.column("note", Detail, 40),
	}}
	b.eachZone(func(a *assess.AreaResult, z *assess.ZoneResult) {
		for i := range z.Plan {
			p := &z.Plan[i]
			n := strconv.Itoa(i + 1)
			steps.add(stepTone(p), place(a, z.ID), b.say("plan", "step", "n", n), b.stepText(p), p.Because, p.Who, p.If, p.Hold,
				b.names(append(slices.Clip(p.Ask), p.Before...)), b.warned(p.Cautions), strings.Join(p.Verify, "\n"),
				strings.Join(p.Needs, "\n"), b.paths(p.Alternatives))
			for _, q := range p.Quantities {
				amounts.Rows = append(amounts.Rows, b.amountRow(place(a, z.ID), n, q))
			}
		}
	})
	s.addTable("", steps)
	s.addTable(b.say("plan", "quantities"), amounts, Para{Text: b.say("plan", "quantities_lead")})
	if len(amounts.Rows) > 0 {
		s.Parts[len(s.Parts)-1].Detail = true
	}
	if len(s.Parts) > 0 {
		s.Lead = []Para{{Text: b.say("plan", "lead")}}
	}
	return s
}

// stepText is what is done. Where every base is struck out and nothing is left
// to take up, another finish is the answer; a step that comes a second time
// needs a new record.
func (b *builder) stepText(p *assess.PlanStep) string {
	switch {
	case p.Path == assess.NoPath:
		return b.say("plan", "other_finish")
	case p.Repeats:
		return p.Text + " " + b.say("plan", "repeats")
	}
	return p.Text
}

func (b *builder) paths(list []assess.PathID) string {
	out := make([]string, len(list))
	for i, p := range list {
		out[i] = b.path(p)
	}
	return b.lines(out)
}

func (b *builder) eachZone(visit func(*assess.AreaResult, *assess.ZoneResult)) {
	for i := range b.r.Areas {
		a := &b.r.Areas[i]
		for j := range a.Zones {
			visit(a, &a.Zones[j])
		}
	}
}

func stepTone(p *assess.PlanStep) Tone {
	switch p.Path.Asks() {
	case assess.Stop:
		return Urgent
	case assess.Repair:
		return Waiting
	}
	return Plain
}

// amountRow has the two ends of a quantity as numbers.
func (b *builder) amountRow(place, step string, q assess.Quantity) Row {
	row := Row{Cells: cells(place, step, q.Text, "", "", q.Unit, q.Note)}
	row.Cells[3], row.Cells[4] = b.number(q.Value.Lo), b.number(q.Value.Hi)
	return row
}

// number is a number with as many digits as a reader needs, or the words for an
// end that is not known.
func (b *builder) number(v float64) Cell {
	if !quantity.Point(v).Bounded() {
		return Cell{Text: b.say("view", "not_known")}
	}
	return Cell{Text: quantity.Write(quantity.Number, quantity.Point(v), quantity.US), Number: &v}
}
