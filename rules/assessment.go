package rules

import (
	"iter"
	"strings"

	"underfoot/assess"
	"underfoot/assess/facts"
	"underfoot/assess/logic"
	"underfoot/assess/result"
	"underfoot/rules/inquiry"
	"underfoot/rules/judge"
)

// An Assessment is a job judged once: its facts, and what the rules say of
// every zone. It never changes, and all that is told of the job reads it.
type Assessment struct {
	engine *Engine
	job    *assess.Job // normal
	day    assess.Day
	floor  *facts.Floor
	zones  [][]*judge.Evaluation // by area
}

// Evaluation is what the rules say of one zone, by the places of area and zone.
func (a *Assessment) Evaluation(area, zone int) *judge.Evaluation { return a.zones[area][zone] }

// A judged is one zone of an assessment, with where it stands.
type judged struct {
	area, zone int
	frame      *facts.Frame
	*judge.Evaluation
}

// all goes through the zones, area by area.
func (a *Assessment) all() iter.Seq[judged] {
	return func(yield func(judged) bool) {
		for i, zones := range a.zones {
			for z, e := range zones {
				if !yield(judged{i, z, a.floor.Zones[i][z], e}) {
					return
				}
			}
		}
	}
}

// several reports whether the area has more than one zone.
func (a *Assessment) several(area int) bool { return len(a.zones[area]) > 1 }

// Span is what the answers leave open.
func (a *Assessment) Span() result.Span {
	var span result.Span
	for z := range a.all() {
		span = span.Wider(z.Span)
	}
	return span
}

// Alarm is what to do at once, where a danger is proven: the sentences of every
// rule that calls for the emergency or utility service. Empty where none is.
func (a *Assessment) Alarm() string {
	var lines []string
	for z := range a.all() {
		for i := range z.Rulings {
			if r := &z.Rulings[i]; r.Rule.Calls == result.CallService && r.Outcome.Truth == logic.Yes {
				lines = append(lines, a.engine.describer.Text(r)+" "+r.Rule.Text.Remedy)
			}
		}
	}
	return strings.Join(lines, "\n")
}

// Pending are the questions that the job waits for, most pressing first, area
// by area. No answer is tried, so they stand in catalogue order within a stage.
func (a *Assessment) Pending() []inquiry.Candidate {
	var out []inquiry.Candidate
	for z := range a.all() {
		q := a.inquiry()
		q.Quick = true
		out = append(out, q.Zone(a.job, z.area, z.zone, z.Evaluation)...)
	}
	return out
}

// inquiry asks about one zone.
func (a *Assessment) inquiry() *inquiry.Inquiry {
	e := a.engine
	return &inquiry.Inquiry{Judge: e.judge, Facts: e.facts, Catalogue: e.Catalogue, Today: a.day}
}
