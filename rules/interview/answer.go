package interview

import (
	"fmt"

	"underfoot/assess"
)

// A Change is one answer that an interview has made, to be saved.
type Change struct {
	Address assess.Address
	Answer  assess.Answer
}

// Answer takes one answer to a prompt of the form One or List.
func (s *Session) Answer(p Prompt, a assess.Answer) []Change {
	return s.take(p, Change{p.Address, a})
}

// AnswerFamily says of each member of a family whether it is so: the replies
// stand in the order of Members. A member that is not mentioned is not settled.
func (s *Session) AnswerFamily(p Prompt, replies []assess.Answer) []Change {
	changes := make([]Change, 0, len(p.Members))
	for i, q := range p.Members {
		changes = append(changes, Change{at(p.Address, q), replies[i]})
	}
	return s.take(p, changes...)
}

// Add puts one more thing into a list; its questions come next. The list stays
// open until it is said to be complete.
func (s *Session) Add(p Prompt) []Change {
	scope, _ := assess.ParseScope(p.Address.Topic)
	item := p.Address
	item.Item, item.Field = s.freeID(scope, p.Address), "kind"
	s.Job.AddItem(item)
	changes := s.take(p, Change{p.Address, assess.Answer{Set: assess.SetNo}})
	s.last.Address = item
	return changes
}

// freeID is the next id of a list: l1, l2 ..., by the list's first letter.
func (s *Session) freeID(scope assess.Scope, a assess.Address) string {
	taken := map[string]bool{}
	for _, it := range s.zone(a).Lists[scope] {
		taken[it.ID] = true
	}
	for n := 1; ; n++ {
		if id := fmt.Sprintf("%c%d", scope.String()[0], n); !taken[id] {
			return id
		}
	}
}

func (s *Session) take(p Prompt, changes ...Change) []Change {
	for _, c := range changes {
		s.Job.Put(c.Address, c.Answer)
	}
	s.history = append(s.history, p)
	return changes
}
