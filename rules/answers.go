package rules

import (
	"cmp"
	"slices"

	"underfoot/assess"
	"underfoot/assess/facts"
	"underfoot/assess/logic"
	"underfoot/assess/question"
	"underfoot/assess/result"
	"underfoot/assess/schema"
	"underfoot/rules/inquiry"
)

// questions are what is worth asking about a room, the deciding one first.
func (a *Assessment) questions(area int) []result.Question {
	var out []result.Question
	seen := map[schema.Address]bool{}
	for z, evaluation := range a.zones[area] {
		for _, c := range a.inquiry().Zone(a.job, area, z, evaluation) {
			if !seen[c.Address] {
				seen[c.Address] = true
				out = append(out, a.engine.ask(c))
			}
		}
	}
	return out
}

func (e *Engine) ask(c inquiry.Candidate) result.Question {
	ask := result.Question{Address: c.Address, Decides: c.Decides, Before: c.Stage == inquiry.Before}
	if q := e.Catalogue.Find(c.Address.Short()); q != nil {
		ask.Label, ask.Text, ask.How, ask.Who = q.Text.Label, q.Text.Ask, q.Text.How, q.Text.Who
	}
	return ask
}

// labels are what every question is called in a few words.
func (e *Engine) labels() map[string]string {
	out := make(map[string]string, len(e.Catalogue.Questions))
	for i := range e.Catalogue.Questions {
		out[e.Catalogue.Questions[i].Decl.ID] = e.Catalogue.Questions[i].Text.Label
	}
	return out
}

// answers lists every answer in catalogue order, with those that are parked.
func (e *Engine) answers(floor *facts.Floor, job *assess.Job) []result.AnswerRow {
	var out []result.AnswerRow
	list := func(f *facts.Frame, answers assess.Answers) {
		start := len(out)
		for name, a := range answers {
			if q := e.Catalogue.Find(name); q != nil {
				out = append(out, e.saidOne(f, q, a))
			}
		}
		slices.SortFunc(out[start:], func(a, b result.AnswerRow) int {
			return cmp.Compare(e.place(a.Address), e.place(b.Address))
		})
	}
	list(floor.Job, job.Answers)
	for i := range job.Areas {
		list(floor.Areas[i], job.Areas[i].Answers)
		for z := range job.Areas[i].Zones {
			zone, frame := &job.Areas[i].Zones[z], floor.Zones[i][z]
			list(frame, zone.Answers)
			for _, scope := range schema.ListScopes {
				for n := range frame.Things(scope) {
					if n < len(zone.Lists[scope]) {
						list(frame.Things(scope)[n], zone.Lists[scope][n].Answers)
					}
				}
			}
		}
	}
	return out
}

func (e *Engine) place(a schema.Address) schema.FactID {
	id, _ := e.Catalogue.Schema().Lookup(a.Short())
	return id
}

func (e *Engine) saidOne(f *facts.Frame, q *question.Question, a assess.Answer) result.AnswerRow {
	s := result.AnswerRow{Address: f.Address(q.Decl), Label: cmp.Or(q.Text.Label, q.Decl.ID), Answer: a, Value: a.Reply.String()}
	if a.Reply == assess.Given {
		s.Value = e.Catalogue.Show(q.ID, a.Set, e.System)
	}
	s.Parked = f.Fact(q.ID).Presence.Truth == logic.No
	return s
}
