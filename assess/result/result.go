package result

import (
	"cmp"

	"underfoot/assess"
	"underfoot/assess/message"
	"underfoot/assess/quantity"
	"underfoot/assess/schema"
)

// A Span is the pair of verdicts between which the answers leave a zone.
type Span struct{ Low, High Verdict }

// Verdict is the one word of the span.
func (s Span) Verdict() Verdict {
	switch {
	case s.Low == s.High:
		return s.Low
	case s.High <= Prepare:
		return Prepare
	}
	return Hold
}

// Wider is the larger of each end.
func (s Span) Wider(t Span) Span { return Span{max(s.Low, t.Low), max(s.High, t.High)} }

// A ZoneResult is what was found for one zone.
type ZoneResult struct {
	ID       string
	Span     Span
	Verdict  Verdict
	Path     PathID // leading path
	Blocked  PathID // a step already proven while find-out leads, or NoPath
	Sentence string // one sentence: why this path leads
	Paths    []PathStanding
	Plan     []PlanStep
	BuildUps []BuildUp
}

// A Question is a question worth asking, with the way to find out.
type Question struct {
	Address schema.Address
	Label   string // the question in a few words
	Text    string
	How     string
	Who     string
	Decides []string // path words or finding ids that the answer may settle
	Before  bool     // nothing waits for it: a look before the work
}

// A Caution is a warning that the findings or the plan attach.
type Caution struct {
	ID      string
	Text    string
	Sources []Source
}

// An AreaResult is what was found for one room.
type AreaResult struct {
	ID, Name  string
	Verdict   Verdict
	Span      Span
	Sentence  string // one sentence that a homeowner understands
	Now       string // what to do at once, where the verdict is stop
	Zones     []ZoneResult
	Leading   int       // index of the zone whose path leads
	Findings  []Finding // every one, worst first
	Checks    []Check
	Questions []Question // the deciding one first
	Cautions  []Caution
}

// A PackRef names a rule pack that took part.
type PackRef struct {
	ID      string
	Edition string
	Local   bool
	Relaxes []message.Message // what a local pack relaxes, each with its source
}

// Relaxed is what the pack relaxes in a language, English where it is nil.
func (p *PackRef) Relaxed(l *message.Language) []string {
	out := make([]string, len(p.Relaxes))
	for i, m := range p.Relaxes {
		out[i] = cmp.Or(l, message.English()).Say(m)
	}
	return out
}

// An AnswerRow is one answer as a report lists it.
type AnswerRow struct {
	Address schema.Address
	Label   string // the question in a few words
	Value   string // the value in the reader's units, or the reply
	Answer  assess.Answer
	Parked  bool // kept in the record but no longer relevant
	Default bool // nothing of the kind was said: the declared value
}

// A Result is the whole answer to one job.
type Result struct {
	File     string
	Job      *assess.Job
	Region   string
	Units    quantity.System
	Language *message.Language // in which it is told
	Today    assess.Day
	Verdict  Verdict
	Span     Span
	Areas    []AreaResult
	Answers  []AnswerRow       // every answer, in catalogue order
	Labels   map[string]string // of every question, by short name, a few words each
	Packs    []PackRef
}

// Area is the result of an area by its id; nil where there is none.
func (r *Result) Area(id string) *AreaResult {
	for i := range r.Areas {
		if r.Areas[i].ID == id {
			return &r.Areas[i]
		}
	}
	return nil
}

// Zone is the result of a zone by its id; nil where there is none.
func (a *AreaResult) Zone(id string) *ZoneResult {
	for i := range a.Zones {
		if a.Zones[i].ID == id {
			return &a.Zones[i]
		}
	}
	return nil
}
