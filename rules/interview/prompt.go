package interview

import (
	"fmt"

	"underfoot/assess"
	"underfoot/assess/message"
	"underfoot/assess/quantity"
	"underfoot/assess/question"
	"underfoot/assess/schema"
	"underfoot/rules/inquiry"
)

// A Form is how a prompt is asked.
type Form uint8

// The forms: one answer; several of a family of troubles; whether a list is
// complete or one more thing is to be added.
const (
	One Form = iota
	Family
	List
)

// A Prompt is one thing to ask.
type Prompt struct {
	Form     Form
	Address  schema.Address // of the answer, or of the first member of a family
	Question *question.Question
	Members  []*question.Question // of a family
	Items    []string             // of a list: what stands in it already, in a few words
	Stage    inquiry.Stage
	Before   assess.Answer   // the answer that stands, where Answered
	Stood    []assess.Answer // of a family: the answers of its members that stand, in their order
	Answered bool
	language *message.Language
}

// prompt turns a wanted address into what is asked: a whole family at once, a
// list as a list.
func (s *Session) prompt(c inquiry.Candidate) Prompt {
	p := Prompt{Address: c.Address, Question: s.Catalogue.Find(c.Address.Short()), Stage: c.Stage, language: s.Language}
	switch {
	case c.Address.Field == "complete":
		p.Form = List
	case p.Question.Decl.Family != "" && p.Question.Decl.Kind == schema.KindYesNo && s.untouched(c.Address, p.Question.Decl.Family):
		p.Form = Family
		p.Members = s.members(p.Question.Decl.Family)
		p.Question = p.Members[0]
		p.Address = c.Address.Sibling(p.Question.Decl.ID)
	}
	return s.refresh(p)
}

// refresh fills in what stands in the record now.
func (s *Session) refresh(p Prompt) Prompt {
	p.Before, p.Answered = s.Job.Answer(p.Address)
	switch p.Form {
	case List:
		p.Items = s.items(p.Address)
	case Family:
		p.Stood, p.Answered = nil, false
		for _, q := range p.Members {
			a, said := s.Job.Answer(p.Address.Sibling(q.Decl.ID))
			p.Stood, p.Answered = append(p.Stood, a), p.Answered || said
		}
	}
	return p
}

// untouched reports whether nobody has answered any member of the family.
func (s *Session) untouched(a schema.Address, family string) bool {
	for _, q := range s.members(family) {
		if _, said := s.Job.Answer(a.Sibling(q.Decl.ID)); said {
			return false
		}
	}
	return true
}

// members are the yes/no questions of a family: one with more words than two
// is asked by itself.
func (s *Session) members(family string) []*question.Question {
	var list []*question.Question
	for i := range s.Catalogue.Questions {
		if q := &s.Catalogue.Questions[i]; q.Decl.Family == family && q.Decl.Kind == schema.KindYesNo {
			list = append(list, q)
		}
	}
	return list
}

// items names what stands in a list: `1. Sheet vinyl`.
func (s *Session) items(a schema.Address) []string {
	scope, _ := schema.ParseScope(a.Topic)
	var names []string
	for i, it := range s.Job.Area(a.Area).Zone(a.Zone).Lists[scope] {
		kind := s.Language.Text("interview/list.no_kind")
		id := a.Topic + ".kind"
		if ans, ok := it.Answers[id]; ok {
			kind = ans.Reply.String()
			if f, known := s.Catalogue.Schema().Lookup(id); known && ans.Reply == assess.Given {
				kind = s.Catalogue.Show(f, ans.Set, quantity.US)
			}
		}
		names = append(names, fmt.Sprintf("%d. %s", i+1, kind))
	}
	return names
}
