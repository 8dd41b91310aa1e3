package interview

import (
	"fmt"
	"slices"

	"underfoot/assess"
	"underfoot/assess/logic"
	"underfoot/assess/schema"
)

// A Change is one answer that an interview has made, or one thing that it has
// taken off a list, to be saved.
type Change struct {
	Address schema.Address
	Answer  assess.Answer
	Drop    bool // the item goes, with all that was said of it
}

// Answer takes one answer to a prompt of the form One or List.
func (s *Session) Answer(p Prompt, a assess.Answer) []Change {
	return s.take(p, Change{Address: p.Address, Answer: a})
}

// AnswerFamily says of each member of a family whether it is so: the replies
// stand in the order of Members. A member that is not mentioned is not settled.
func (s *Session) AnswerFamily(p Prompt, replies []assess.Answer) []Change {
	changes := make([]Change, 0, len(p.Members))
	for i, q := range p.Members {
		changes = append(changes, Change{Address: p.Address.Sibling(q.Decl.ID), Answer: replies[i]})
	}
	return s.take(p, changes...)
}

// MemberAnswers are the answers of a family, member by member: so, not so, or
// not sure.
func (p *Prompt) MemberAnswers(so func(i int) logic.Truth) []assess.Answer {
	out := make([]assess.Answer, len(p.Members))
	for i := range p.Members {
		switch so(i) {
		case logic.Yes:
			out[i] = assess.Answer{Set: schema.SetYes, Text: "yes"}
		case logic.No:
			out[i] = assess.Answer{Set: schema.SetNo, Text: "no"}
		default:
			out[i] = assess.Answer{Reply: assess.NotSure}
		}
	}
	return out
}

// Drop takes the nth thing off a list, counted from 0, with all that was said
// of it.
func (s *Session) Drop(p Prompt, n int) []Change {
	scope, _ := schema.ParseScope(p.Address.Topic)
	zone := s.Job.Area(p.Address.Area).Zone(p.Address.Zone)
	item := p.Address
	item.Item, item.Field = zone.Lists[scope][n].ID, "kind"
	s.judged = nil
	zone.Lists[scope] = slices.Delete(zone.Lists[scope], n, n+1)
	s.history = slices.DeleteFunc(s.history, func(h Prompt) bool {
		return h.Address.Topic == item.Topic && h.Address.Item == item.Item && h.Address.Zone == item.Zone && h.Address.Area == item.Area
	})
	return []Change{{Address: item, Drop: true}}
}

// Add puts one more thing into a list; its questions come next. The list stays
// open until it is said to be complete.
func (s *Session) Add(p Prompt) []Change {
	scope, _ := schema.ParseScope(p.Address.Topic)
	item := p.Address
	item.Item, item.Field = s.freeID(scope, p.Address), "kind"
	s.Job.AddItem(item)
	changes := s.take(p, Change{Address: p.Address, Answer: assess.Answer{Set: schema.SetNo, Text: "no"}})
	s.last.Address = item
	return changes
}

// freeID is the next id of a list: l1, l2 ..., by the list's first letter.
func (s *Session) freeID(scope schema.Scope, a schema.Address) string {
	taken := map[string]bool{}
	for _, it := range s.Job.Area(a.Area).Zone(a.Zone).Lists[scope] {
		taken[it.ID] = true
	}
	for n := 1; ; n++ {
		if id := fmt.Sprintf("%c%d", scope.String()[0], n); !taken[id] {
			return id
		}
	}
}

// Alarm is an error that ends the interview, where the answers just taken say
// that somebody is in danger now; else nil.
func (s *Session) Alarm(changes []Change) error {
	for _, c := range changes {
		if c.Address.Topic != "danger" {
			return nil
		}
	}
	if text := s.judgment().Alarm(); text != "" {
		return &Alarm{text}
	}
	return nil
}

func (s *Session) take(p Prompt, changes ...Change) []Change {
	s.judged = nil
	for _, c := range changes {
		s.Job.Put(c.Address, c.Answer)
	}
	s.history = append(s.history, p)
	return changes
}
