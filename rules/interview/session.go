// Package interview leads a person through the questions that matter for a
// floor: what to ask next, going back, and what is still open. It knows no
// terminal and no file.
package interview

import (
	"slices"

	"underfoot/assess"
	"underfoot/assess/message"
	"underfoot/assess/question"
	"underfoot/assess/result"
	"underfoot/assess/schema"
	"underfoot/rules/inquiry"
)

// A Judgment is what the answers so far come to; an assessment is one.
type Judgment interface {
	// Pending are the questions that the job waits for, most pressing first.
	Pending() []inquiry.Candidate
	// Span is what the answers leave open.
	Span() result.Span
	// Alarm is what to do at once, where the answers say that somebody is in
	// danger now; empty where they do not.
	Alarm() string
}

// A Rules judges what has been answered so far; the rules are one.
type Rules func(*assess.Job) Judgment

// An Alarm ends an interview: somebody is in danger now. Its text says what to
// do, before any further question.
type Alarm struct{ Text string }

// Error is what to do.
func (a *Alarm) Error() string { return a.Text }

// A Session is one interview about one job.
type Session struct {
	Job       *assess.Job // normal; changed by every answer
	Catalogue *question.Catalogue
	Language  *message.Language // in which the person is asked
	guide     Rules
	judged    Judgment // of the answers so far; nil where one has changed since
	history   []Prompt
	last      Prompt
}

// New starts or resumes an interview: what the job already answers is not
// asked again.
func New(job *assess.Job, c *question.Catalogue, l *message.Language, g Rules) *Session {
	return &Session{Job: job.Normal(), Catalogue: c, Language: l, guide: g}
}

// judgment judges the answers once, however much is asked of them.
func (s *Session) judgment() Judgment {
	if s.judged == nil {
		s.judged = s.guide(s.Job)
	}
	return s.judged
}

// Next is the next thing to ask; ok is false when nothing is left that the
// verdict or the work waits for.
func (s *Session) Next() (p Prompt, ok bool) {
	wanted := s.open(s.judgment().Pending())
	if len(wanted) == 0 {
		return Prompt{}, false
	}
	s.last = s.prompt(s.choose(wanted))
	return s.last, true
}

// open leaves out what has had a reply.
func (s *Session) open(wanted []inquiry.Candidate) []inquiry.Candidate {
	return slices.DeleteFunc(slices.Clone(wanted), func(c inquiry.Candidate) bool {
		a, said := s.Job.Answer(c.Address)
		if c.Address.Field == "complete" {
			return said && !(a.Reply == assess.Given && a.Set == schema.SetNo)
		}
		return said
	})
}

// choose stays with the thing that was asked about last as long as something
// of the same stage is wanted there; else it takes the most pressing question,
// and of its kind the first in catalogue order.
func (s *Session) choose(wanted []inquiry.Candidate) inquiry.Candidate {
	stage := wanted[0].Stage
	near := func(c inquiry.Candidate, a schema.Address) bool {
		return c.Stage == stage && c.Address.Area == a.Area && c.Address.Zone == a.Zone && c.Address.Topic == a.Topic && c.Address.Item == a.Item
	}
	anchor := wanted[0].Address
	if slices.ContainsFunc(wanted, func(c inquiry.Candidate) bool { return near(c, s.last.Address) && c.Address.Field != "complete" }) {
		anchor = s.last.Address
	}
	best, found := wanted[0], false
	for _, c := range wanted {
		if near(c, anchor) && (!found || s.order(c) < s.order(best)) {
			best, found = c, true
		}
	}
	return best
}

func (s *Session) order(c inquiry.Candidate) schema.FactID {
	id, _ := s.Catalogue.Schema().Lookup(c.Address.Short())
	return id
}

// Back is the prompt before the last answered one, to be answered anew; ok is
// false at the beginning. Nothing is forgotten: an answer that no longer
// applies is kept and feeds no rule.
func (s *Session) Back() (p Prompt, ok bool) {
	if len(s.history) == 0 {
		return Prompt{}, false
	}
	p = s.history[len(s.history)-1]
	s.history = s.history[:len(s.history)-1]
	p = s.refresh(p)
	s.last = p
	return p, true
}

// Progress is how many answers there are, how many questions the verdict still
// waits for, and how many are for later, before the work.
func (s *Session) Progress() (answered, waiting, later int) {
	for _, c := range s.open(s.judgment().Pending()) {
		if c.Stage == inquiry.Before {
			later++
		} else {
			waiting++
		}
	}
	return s.answered(), waiting, later
}

func (s *Session) answered() int {
	n := len(s.Job.Answers)
	for _, a := range s.Job.Areas {
		n += len(a.Answers)
		for _, z := range a.Zones {
			n += len(z.Answers)
			for _, list := range schema.ListScopes {
				for _, it := range z.Lists[list] {
					n += len(it.Answers)
				}
			}
		}
	}
	return n
}

// Span is what the answers so far leave open.
func (s *Session) Span() result.Span { return s.judgment().Span() }
