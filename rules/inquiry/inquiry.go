// Package inquiry finds out what is worth asking next: the questions that
// paths wait for, in the order in which a careful person would ask them, and
// what each may decide.
package inquiry

import (
	"cmp"
	"math"
	"slices"

	"underfoot/assess"
	"underfoot/assess/facts"
	"underfoot/assess/logic"
	"underfoot/assess/question"
	"underfoot/assess/result"
	"underfoot/assess/schema"
	"underfoot/rules/judge"
)

// An Inquiry asks with one set of rules.
type Inquiry struct {
	Judge     *judge.Judge
	Facts     *facts.Plan
	Catalogue *question.Catalogue
	Today     assess.Day
	Quick     bool // keep catalogue order: try no answers
	weighed   int  // rulings made while answers were tried, to bound the work
}

// maxWeighed bounds the rulings that one inquiry makes while it tries answers.
// Each try evaluates the whole zone, so a bound on the number of tries alone
// would let the time grow by the square of the layers. The fullest floor of the
// published cases needs 135,000; what is over the bound is asked last of its stage.
const maxWeighed = 150_000

// A Candidate is a question that something waits for.
type Candidate struct {
	Address schema.Address
	Stage   Stage
	open    float64 // mean number of paths still waiting once it is answered
	order   int     // place in the catalogue
	Decides []string
}

// A Stage is when a question is asked.
type Stage int

// The stages: dangers, then what may be suspect, then what the verdict waits
// for, then what is only looked at before the work.
const (
	Danger Stage = iota
	Suspect
	Deciding
	Before
)

// Zone lists what is worth asking of a zone, the deciding question first.
func (q *Inquiry) Zone(job *assess.Job, area, zone int, evaluation *judge.Evaluation) []Candidate {
	list := q.candidates(evaluation)
	alone := job.Only(area, zone)
	for i := range list {
		switch {
		case q.Quick || list[i].Stage != Deciding:
		case q.weighed < maxWeighed:
			q.try(alone, &list[i])
		default:
			list[i].open = math.Inf(1)
		}
	}
	slices.SortStableFunc(list, func(a, b Candidate) int {
		return cmp.Or(cmp.Compare(a.Stage, b.Stage), cmp.Compare(a.open, b.open), cmp.Compare(a.order, b.order))
	})
	return list
}

// candidates are the missing facts of every ruling that is not settled, each
// once, at the earliest stage at which something wants it. What a question that
// is not known to apply hangs on is asked first.
func (q *Inquiry) candidates(evaluation *judge.Evaluation) []Candidate {
	place := map[logic.Ref]int{} // in the list; -1 of a question that is not known to apply
	var list []Candidate
	for i := range evaluation.Rulings {
		r := &evaluation.Rulings[i]
		s, ok := stageOf(r)
		if !ok {
			continue
		}
		for n, ref := range r.Outcome.Deps {
			at, seen := place[ref]
			if !seen {
				at = -1
				if a := r.Thing.Named(r.Outcome.Deps[n : n+1])[0]; r.Thing.Applies(a) {
					at = len(list)
					list = append(list, Candidate{Address: a, Stage: s, order: q.order(a)})
				}
				place[ref] = at
			}
			if at >= 0 {
				list[at].Stage = min(list[at].Stage, s)
			}
		}
	}
	return list
}

func stageOf(r *judge.Ruling) (stage Stage, ok bool) {
	switch {
	case r.Verifies():
		return Before, true
	case !r.Waits() && !r.Presumed():
		return 0, false
	case r.Rule.Calls == result.CallService:
		return Danger, true
	case r.Rule.Calls == result.TestOrAbate:
		return Suspect, true
	}
	return Deciding, true
}

func (q *Inquiry) order(a schema.Address) int {
	id, _ := q.Catalogue.Schema().Lookup(a.Short())
	return int(id)
}

// try answers the question in each way that may matter and counts what still
// waits afterwards, on a floor of the one zone alone.
func (q *Inquiry) try(alone *assess.Job, c *Candidate) {
	cells := q.cells(c.Address)
	for _, set := range cells {
		tried := alone.Clone()
		if !tried.Put(c.Address, assess.Answer{Set: set, Basis: assess.Document}) {
			return
		}
		evaluation := q.Judge.Zone(q.Facts.Fill(tried, q.Today).Zones[0][0], false)
		q.weighed += len(evaluation.Rulings)
		for _, p := range evaluation.Paths {
			if p.State == result.PathWaiting {
				c.open += 1 / float64(len(cells))
			}
		}
		if w := evaluation.Lead.String(); evaluation.Lead != result.FindOut && !slices.Contains(c.Decides, w) {
			c.Decides = append(c.Decides, w)
		}
	}
}
