package reports

import (
	"slices"
	"strconv"

	"underfoot/assess/formula"
	"underfoot/assess/quantity"
	"underfoot/assess/result"
)

// calculations are the computed values against their limits, each with its sum.
func (b *builder) calculations() Section {
	s := b.section(CalculationsSection)
	s.Detail = true
	for i := range b.r.Areas {
		a := &b.r.Areas[i]
		for j := range a.Checks {
			if ruledOut(a, a.Checks[j].Zone, a.Checks[j].Path) {
				continue
			}
			s.Parts = append(s.Parts, b.calculation(a, &a.Checks[j], len(s.Parts)+1))
		}
	}
	if len(s.Parts) > 0 {
		s.Lead = []Para{{Text: b.say("report/calculations.lead")}}
	}
	return s
}

func (b *builder) calculation(a *result.AreaResult, c *result.Check, n int) Part {
	p := Part{
		Heading: b.say("report/calculations.part", "place", place(a, c.Zone), "title", b.checkTitle(c)),
		Lead:    b.checked(c),
	}
	if c.Work != nil && len(c.Work.Lines) > 0 {
		lines := b.sumLines(c)
		p.Table = b.sumTable(n).Of(b.language, lines)
		p.Calculation = &Calculation{
			ID: sumID(n), Sheet: c.Work, Lines: b.calculationLines(lines),
			Value: c.Value, Limit: c.Limit, AtLeast: c.AtLeast, Dimension: c.Dimension,
		}
	}
	return p
}

// checkTitle is the check's title, with the base that it belongs to.
func (b *builder) checkTitle(c *result.Check) string {
	if c.Path == result.NoPath {
		return b.text(c.Title)
	}
	return b.text(c.Title) + " (" + b.path(c.Path) + ")"
}

// checked is how the check came out, in a few lines.
func (b *builder) checked(c *result.Check) []Para {
	out := []Para{{Label: b.say("report/check." + c.Outcome.String()), Text: b.result(c), Tone: checkTone(c.Outcome)}}
	if !c.Note.IsZero() {
		out = append(out, Para{Label: b.say("report/calculations.note"), Text: b.text(c.Note)})
	}
	for _, n := range c.Notes {
		out = append(out, Para{Text: b.text(n)})
	}
	if missing := b.names(c.Missing); missing != "" {
		out = append(out, Para{Label: b.say("report/calculations.missing"), Text: missing, Tone: Waiting})
	}
	if sources := b.cite(c.Sources...); sources != "" {
		out = append(out, Para{Label: b.say("report/column.sources"), Text: sources})
	}
	if firm := b.firmness(c.Sources...); firm != "" {
		out = append(out, Para{Label: b.say("report/column.firm"), Text: firm})
	}
	return out
}

func checkTone(o result.CheckOutcome) Tone {
	switch o {
	case result.CheckFails:
		return Urgent
	case result.CheckHolds:
		return Settled
	}
	return Waiting
}

// result is the value beside its limit; a refusal has neither.
func (b *builder) result(c *result.Check) string {
	if c.Outcome == result.CheckRefused {
		return ""
	}
	key := "at_most"
	if c.AtLeast {
		key = "at_least"
	}
	limit := b.say("report/check."+key, "limit", b.amount(c.Dimension, c.Limit))
	return b.say("report/check.result", "value", b.amount(c.Dimension, c.Value), "limit", limit)
}

// A sumLine is a line of a check's arithmetic, with its source.
type sumLine struct {
	formula.Line
	sheet  *formula.Sheet
	source string
}

func (b *builder) sumLines(c *result.Check) []sumLine {
	var lines []sumLine
	for _, l := range c.Work.Lines {
		lines = append(lines, sumLine{l, c.Work, b.lineSource(c, b.text(l.Source))})
	}
	return lines
}

func (b *builder) calculationLines(lines []sumLine) []CalculationLine {
	var out []CalculationLine
	for _, l := range lines {
		out = append(out, CalculationLine{What: b.text(l.What), Source: l.source})
	}
	return out
}

// sumID is the name of the nth calculation of a view.
func sumID(n int) string { return "sum_" + strconv.Itoa(n) }

// sumTable is arithmetic line by line, with the numbers filled in.
func (b *builder) sumTable(n int) TableOf[sumLine] {
	return TableOf[sumLine]{ID: sumID(n), Shape: Grid, Columns: []ColumnOf[sumLine]{
		TextColumn("report/column.what", Title, 34, func(l sumLine) string { return b.text(l.What) }),
		TextColumn("report/column.sum", Detail, 60, func(l sumLine) string { return arithmetic(l.sheet, l.Name, l.Expr) }),
		amountColumn("report/column.value", 24, func(l sumLine) string { return b.lineValue(l.Dimension, l.Unit, l.Value) }),
		TextColumn("report/column.source", Detail, 24, func(l sumLine) string { return l.source }),
	}}
}

// arithmetic is a line's name, and for a sum the expression in names and in
// numbers.
func arithmetic(s *formula.Sheet, name, expr string) string {
	if expr == "" {
		return name
	}
	return name + " = " + expr + "\n= " + s.Numbers(name)
}

// lineValue prints a line's value in the reader's units where its dimension has
// any, and with the unit of the sum where it is a number between others.
func (b *builder) lineValue(d quantity.Dimension, unit string, r quantity.Range) string {
	text := b.amount(d, r)
	if d == quantity.Number && unit != "" {
		text += " " + unit
	}
	return text
}

// lineSource cites the check's source that a line names by id or title, so that
// a figure from memory is marked where it enters the sum.
func (b *builder) lineSource(c *result.Check, name string) string {
	if name == "" {
		return ""
	}
	i := slices.IndexFunc(c.Sources, func(s result.Source) bool { return s.ID == name || s.Title == name })
	if i < 0 {
		return name
	}
	return b.cite(c.Sources[i])
}
