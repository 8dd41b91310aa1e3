// Package reports turns a result into a view that has no format yet: sections,
// parts, tables and cells in one language and one system of units. The text,
// the page and the workbook all print this view, so that owner, setter,
// inspector and bidder read the same floor.
package reports

import (
	"strings"

	"underfoot/assess"
	"underfoot/assess/formula"
	"underfoot/assess/message"
	"underfoot/assess/quantity"
)

// A View is a whole report, ready to print in any format. Every text in it is
// free of control characters but for line feeds.
type View struct {
	Title    string
	Subtitle string     // where it comes from and when
	Day      assess.Day // the day of the visit, or of the assessment
	Banners  []string   // what must be read before anything else: invented data, screening only
	Lead     []Para     // of the whole, before the contents
	Sections []Section
	Language *message.Language // of every sentence, also of those that a format says by itself
}

// The sections, in the order in which they are printed. An empty one is left out.
const (
	SummarySection      = "summary"
	RoomsSection        = "rooms"
	FindingsSection     = "findings"
	QuestionsSection    = "questions"
	PlanSection         = "plan"
	QuantitiesSection   = "quantities"
	HeightsSection      = "heights"
	CalculationsSection = "calculations"
	CautionsSection     = "cautions"
	AnswersSection      = "answers"
	UncheckedSection    = "unchecked"
	SourcesSection      = "sources"
	SignOffSection      = "sign-off"
)

// A Section is one subject of the report; the workbook gives each a sheet.
type Section struct {
	ID      string
	Heading string
	Sheet   string // a short heading, at most 31 characters, for a tab
	Lead    []Para
	Parts   []Part
	Detail  bool // left out of a short print
}

// A Part is what belongs together under one heading of a section.
type Part struct {
	ID          string // what links point to; may be empty
	Heading     string // may be empty
	Lead        []Para
	Table       *Table
	Calculation *Calculation // arithmetic that Table prints; the workbook writes it as formulas instead
	Build       *Build       // sums that Table prints; likewise
	Detail      bool         // left out of a short print
	Screen      bool         // not worth paper: a printed page leaves it out
}

// A Para is a sentence or two, with a label before it where it has one.
type Para struct {
	Label, Text string // Text is lines; a line set in by two spaces more belongs below the one before it
	Tone        Tone
	Links       []Link // what Text names line by line, where that stands in the view
}

// A Link points to a place inside the view: a section, a part or a cell.
type Link struct {
	Text, To string
	Note     string // behind it, such as how a source is known; may be empty
}

// String is the link for a format that has none.
func (l Link) String() string {
	if l.Note == "" {
		return l.Text
	}
	return l.Text + " (" + l.Note + ")"
}

// LinkPara is a list of links under a label.
func LinkPara(label string, links []Link) Para {
	return Para{Label: label, Text: joined(links, "\n"), Links: links}
}

func joined(links []Link, between string) string {
	texts := make([]string, len(links))
	for i, l := range links {
		texts[i] = l.String()
	}
	return strings.Join(texts, between)
}

// A Tone says how much a line asks of the reader. Formats may show it by weight,
// colour or line, always beside words that say the same.
type Tone uint8

// The tones. Urgent: trouble, or a hazard. Waiting: not known. Settled: in order.
const (
	Plain Tone = iota
	Urgent
	Waiting
	Settled
	Quiet
)

// A Calculation is one check's arithmetic with what came of it.
type Calculation struct {
	ID        string // unique in the view, lower snake case
	Sheet     *formula.Sheet
	Lines     []CalculationLine // what a reader is told of each line of Sheet
	Value     quantity.Range    // as the findings used it
	Limit     quantity.Range
	AtLeast   bool
	Dimension quantity.Dimension
}

// A CalculationLine is what a line of a calculation is, and where it comes from.
type CalculationLine struct{ What, Source string }

// A Build is what one base adds to a floor, from the top.
type Build struct {
	ID     string // unique in the view, lower snake case
	Layers []BuildLayer
	Height quantity.Range // in
	Weight quantity.Range // psf
}

// A BuildLayer is one layer of a Build.
type BuildLayer struct {
	Name, Source      string
	Thickness, Weight quantity.Range // in, psf
	Read              string         // both as the report prints them
}

// Section finds a section; nil where the view has none of that id.
func (v *View) Section(id string) *Section {
	for i := range v.Sections {
		if v.Sections[i].ID == id {
			return &v.Sections[i]
		}
	}
	return nil
}
