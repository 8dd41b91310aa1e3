package rules

import (
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
