package reports

import (
	"fmt"
	"math"
	"strconv"

	"underfoot/assess/quantity"
	"underfoot/assess/result"
	"underfoot/reports/drawing"
)

// The sections of a view of one joist, beside calculations and sources.
const (
	JoistSection   = "joist"
	OptionsSection = "options"
)

// NewJoistView makes the view of what the sums say of one joist.
func NewJoistView(s *result.JoistSheet, o Options) *View {
	b := newBuilder(&result.Result{Language: s.Language}, o)
	v := &View{Title: b.say("report/joist.title"), Banners: []string{b.say("report/joist.screening")}, Language: b.language}
	for _, section := range []Section{b.joist(s), b.joistOptions(s), b.joistSums(s), b.sources()} {
		if len(section.Parts) > 0 || len(section.Lead) > 0 {
			v.Sections = append(v.Sections, section)
		}
	}
	v.Clean()
	return v
}

// joist is what was put in and what came out.
func (b *builder) joist(j *result.JoistSheet) Section {
	s := b.section(JoistSection)
	s.Lead = append(s.Lead, Para{Label: b.say("report/joist.outcome"), Text: b.say("report/joist." + j.Outcome.String()), Tone: checkTone(j.Outcome)})
	if !j.Refusal.IsZero() {
		s.Lead = append(s.Lead, Para{Text: b.text(j.Refusal), Tone: Urgent})
	}
	if !j.Deciding.IsZero() {
		s.Lead = append(s.Lead, Para{Label: b.say("report/joist.deciding"), Text: b.text(j.Deciding), Tone: Waiting})
	}
	s.addTable(b.say("report/joist.inputs"), b.joistInputs(j))
	if j.Outcome != result.CheckRefused {
		s.addTable(b.say("report/joist.results"), b.joistTable(j))
	}
	s.addList(b.say("report/joist.assumed"), b.tellAll(j.Assumed))
	s.addList(b.say("report/joist.notes"), b.tellAll(j.Notes))
	return s
}

// addList appends a part of sentences, unless there are none.
func (s *Section) addList(heading string, lines []string) {
	if len(lines) == 0 {
		return
	}
	p := Part{Heading: heading}
	for _, l := range lines {
		p.Lead = append(p.Lead, Para{Text: l})
	}
	s.Parts = append(s.Parts, p)
}

func (b *builder) joistInputs(j *result.JoistSheet) *Table {
	return TableOf[result.AnswerRow]{ID: "inputs", Shape: Grid, Columns: []ColumnOf[result.AnswerRow]{
		TextColumn("report/column.question", Title, 34, func(s result.AnswerRow) string { return s.Label }),
		TextColumn("report/column.answer", Detail, 40, func(s result.AnswerRow) string { return s.Value }),
	}}.Of(b.language, j.Inputs)
}

// A joistResult is one number that comes of the sums.
type joistResult struct{ what, value string }

func (b *builder) joistTable(j *result.JoistSheet) *Table {
	return TableOf[joistResult]{ID: "results", Shape: Grid, Columns: []ColumnOf[joistResult]{
		TextColumn("report/column.what", Title, 44, func(r joistResult) string { return r.what }),
		TextColumn("report/column.value", Detail, 40, func(r joistResult) string { return r.value }),
	}}.Of(b.language, b.joistResults(j))
}

func (b *builder) joistResults(j *result.JoistSheet) []joistResult {
	ratio := func(r quantity.Range) string { return b.amount(quantity.Ratio, r) }
	length := func(r quantity.Range) string { return b.amount(quantity.Length, b.whole(r)) }
	return []joistResult{
		{b.say("report/joist.live"), ratio(j.Live)},
		{b.say("report/joist.total"), ratio(j.Total)},
		{b.say("report/joist.limit"), b.say("report/joist.limit_value", "limit", ratio(j.Least), "load", b.say("report/joist."+"load_"+j.LimitLoad))},
		{b.say("report/joist.margin"), b.percent(j.Margin)},
		{b.say("report/joist.sag"), b.sag(j.Deflection)},
		{b.say("report/joist.long_term"), b.sag(j.LongTerm)},
		{b.say("report/joist.longest_deflection"), length(j.Longest.Deflection)},
		{b.say("report/joist.longest_bending"), length(j.Longest.Bending)},
		{b.say("report/joist.longest_governing"), length(j.Longest.Governing)},
		{b.say("report/joist.share"), b.percent(j.Share)},
		{b.say("report/joist.bending"), b.percent(j.Bending)},
		{b.say("report/joist.shear"), b.percent(j.Shear)},
	}
}

// sag writes a deflection with the digits that it needs: thousandths of an
// inch, tenths of a millimetre.
func (b *builder) sag(r quantity.Range) string {
	unit, scale, digits := "in", 1.0, 3
	if b.o.Units == quantity.Metric {
		unit, scale, digits = "mm", 25.4, 1
	}
	return b.span(r, scale, digits, " "+unit)
}

// whole takes a span down to the whole inch, or to the whole centimetre.
func (b *builder) whole(r quantity.Range) quantity.Range {
	step := 1.0
	if b.o.Units == quantity.Metric {
		step = 1 / 2.54
	}
	return quantity.Range{Lo: math.Floor(r.Lo/step) * step, Hi: math.Floor(r.Hi/step) * step}
}

// percent writes a part of one.
func (b *builder) percent(r quantity.Range) string { return b.span(r, 100, 0, "%") }

func (b *builder) span(r quantity.Range, scale float64, digits int, unit string) string {
	if !r.Bounded() {
		return b.say("report/view.not_known")
	}
	low, high := fmt.Sprintf("%.*f", digits, r.Lo*scale), fmt.Sprintf("%.*f", digits, r.Hi*scale)
	if low == high {
		return low + unit
	}
	return b.say("report/joist.range", "low", low, "high", high) + unit
}

// joistOptions are the changes that were computed, and what does not help.
func (b *builder) joistOptions(j *result.JoistSheet) Section {
	s := b.section(OptionsSection)
	t := b.optionTable(1, j.Options)
	s.addTable("", t)
	if len(t.Rows) > 0 {
		s.Lead = []Para{{Text: b.say("report/options.lead")}}
	}
	s.addList(b.say("report/options.no_help"), b.tellAll(j.NoHelp))
	s.addList(b.say("report/options.load_test"), b.tellAll(j.LoadTest))
	return s
}

// options are the changes that were computed for checks that do not hold, room
// by room.
func (b *builder) options() Section {
	s := b.section(OptionsSection)
	for i := range b.r.Areas {
		a := &b.r.Areas[i]
		for k := range a.Checks {
			c := &a.Checks[k]
			if c.Outcome != result.CheckHolds {
				s.addTable(b.say("report/calculations.part", "place", place(a, c.Zone), "title", b.checkTitle(c)), b.optionTable(len(s.Parts)+1, c.Options))
			}
		}
	}
	if len(s.Parts) > 0 {
		s.Lead = []Para{{Text: b.say("report/options.lead")}}
	}
	return s
}

// firstOptions is how many changes stand in a short print.
const firstOptions = 3

// optionTable is a row for each change, with what it gives and needs.
func (b *builder) optionTable(n int, options []result.Option) *Table {
	return TableOf[option]{
		ID:     "options_" + strconv.Itoa(n),
		Tone:   func(o option) Tone { return checkTone(o.Outcome) },
		Detail: func(o option) bool { return o.n >= firstOptions },
		Columns: []ColumnOf[option]{
			TextColumn("report/column.outcome", Mark, 14, func(o option) string { return b.say("report/check." + o.Outcome.String()) }),
			TextColumn("report/column.change", Title, 40, func(o option) string { return b.text(o.Text) }),
			TextColumn("report/column.live", Detail, 16, func(o option) string { return b.amount(quantity.Ratio, o.Live) }),
			TextColumn("report/column.total", Detail, 16, func(o option) string { return b.amount(quantity.Ratio, o.Total) }),
			TextColumn("report/column.height", Detail, 12, func(o option) string { return b.amount(quantity.Length, o.Height) }),
			TextColumn("report/column.weight", Detail, 12, func(o option) string { return b.amount(quantity.Load, o.Weight) }),
			TextColumn("report/column.material", Detail, 30, b.material),
			TextColumn("report/column.needs", Detail, 40, func(o option) string { return b.lines(b.tellAll(o.Needs)) }),
		},
	}.Of(b.language, ordered(options))
}

// An option is one of several changes, counted from 0.
type option struct {
	*result.Option
	n int
}

func ordered(options []result.Option) []option {
	var list []option
	for i := range options {
		list = append(list, option{&options[i], i})
	}
	return list
}

func (b *builder) material(o option) string {
	var list []string
	for _, q := range o.Quantities {
		list = append(list, b.text(q.Text)+": "+b.amount(quantity.Number, q.Value)+" "+b.text(q.Unit))
	}
	return b.lines(list)
}

// joistSums are the sheets, line by line.
func (b *builder) joistSums(j *result.JoistSheet) Section {
	s := b.section(CalculationsSection)
	s.Detail = true
	for i, sheet := range j.Sheets {
		c := &result.Check{Work: sheet, Sources: j.Sources}
		s.Parts = append(s.Parts, Part{Heading: b.text(sheet.Title), Table: b.sumTable(i+1).Of(b.language, b.sumLines(c))})
	}
	b.cite(j.Sources...)
	return s
}

// JoistDrawing is the bent joist in characters; empty where there is no number.
func JoistDrawing(j *result.JoistSheet, width int, sys quantity.System) string {
	if !j.Deflection.Bounded() || !j.Span.Bounded() || !j.Least.Bounded() || j.Least.Hi <= 0 {
		return ""
	}
	b := newBuilder(&result.Result{Language: j.Language}, Options{Units: sys})
	d := drawing.Joist{Span: j.Span.Hi, Low: j.Deflection.Lo, High: j.Deflection.Hi, Limit: j.Span.Hi / j.Least.Hi}
	picture, times := d.Text(width)
	if picture == "" {
		return ""
	}
	return picture + "  " + b.say("report/joist.scale", "span", b.amount(quantity.Length, quantity.Point(d.Span)), "times", strconv.Itoa(int(math.Round(times)))) +
		"\n  " + b.say("report/joist.marks", "limit", b.sag(quantity.Point(d.Limit)), "low", b.sag(quantity.Point(d.Low)), "high", b.sag(quantity.Point(d.High))) + "\n"
}
