package rules

import (
	"strings"

	"underfoot/assess"
	"underfoot/rules/inquiry"
)

// A Guide leads an interview with the engine's rules.
type Guide struct {
	Engine *Engine
	Today  assess.Day
}

// Wanted are the questions that the job waits for, most pressing first, area
// by area.
func (g Guide) Wanted(job *assess.Job) []inquiry.Candidate {
	e := g.Engine
	job = job.Normal()
	floor := e.facts.Fill(job, g.Today)
	var out []inquiry.Candidate
	for i := range job.Areas {
		for z, frame := range floor.Zones[i] {
			q := &inquiry.Inquiry{Judge: e.judge, Facts: e.facts, Catalogue: e.Catalogue, Today: g.Today, Quick: true}
			out = append(out, q.Zone(job, i, z, e.judge.Zone(frame, false))...)
		}
	}
	return out
}

// Alarm is what to do at once, where a danger is proven: the sentences of every
// rule that calls for the emergency or utility service.
func (g Guide) Alarm(job *assess.Job) string {
	e := g.Engine
	job = job.Normal()
	floor := e.facts.Fill(job, g.Today)
	var lines []string
	for i := range job.Areas {
		for _, frame := range floor.Zones[i] {
			look := e.judge.Zone(frame, false)
			for k := range look.Rulings {
				if r := &look.Rulings[k]; r.Rule.Calls == assess.CallService && r.Outcome.Truth == assess.Yes {
					lines = append(lines, e.teller.Text(r)+" "+r.Rule.Text.Remedy)
				}
			}
		}
	}
	return strings.Join(lines, "\n")
}

// Span is what the answers so far leave open.
func (g Guide) Span(job *assess.Job) assess.Span {
	e := g.Engine
	job = job.Normal()
	floor := e.facts.Fill(job, g.Today)
	var span assess.Span
	for i := range job.Areas {
		for _, frame := range floor.Zones[i] {
			span = span.Wider(e.judge.Zone(frame, false).Span)
		}
	}
	return span
}
