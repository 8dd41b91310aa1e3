// Package plan goes on from a first evaluation: each step that is called for is
// taken as done, and the floor that it leaves is evaluated again, until a base
// can be laid or somebody else has the word.
package plan

import (
	"slices"

	"underfoot/assess"
	"underfoot/assess/facts"
	"underfoot/assess/logic"
	"underfoot/assess/result"
	"underfoot/assess/schema"
	"underfoot/rules/judge"
)

// maxRounds bounds a plan that does not come to an end by itself.
const maxRounds = 8

// A Planner makes plans with one set of rules.
type Planner struct {
	Judge     *judge.Judge
	Facts     *facts.Plan
	Describer *judge.Describer
	Today     assess.Day
}

// A Plan is a plan and the floor at its end: as the steps leave it, when the
// base is laid or somebody else has the word.
type Plan struct {
	Steps      []result.PlanStep
	Floor      *facts.Floor
	Evaluation *judge.Evaluation
}

// A stage is one floor of a plan: as it is, or as the steps so far leave it.
type stage struct {
	job        *assess.Job
	floor      *facts.Floor
	zone       *facts.Frame
	evaluation *judge.Evaluation
	favour     bool // a finding-out has been taken as done
	shared     bool // the room has other zones: its size is no more than a limit
	number     int
}

// Zone plans one zone of a normal job, from its first evaluation.
func (p *Planner) Zone(job *assess.Job, area, zone int, first *judge.Evaluation) Plan {
	s := stage{job: job.Only(area, zone), evaluation: first, number: 1, shared: len(job.Areas[area].Zones) > 1}
	p.fill(&s)
	steps := p.steps(&s)
	return Plan{Steps: steps, Floor: s.floor, Evaluation: s.evaluation}
}

// steps goes from round to round; s is the last of them afterwards.
func (p *Planner) steps(s *stage) []result.PlanStep {
	done := map[result.PathID]bool{}
	var steps []result.PlanStep
	for {
		ends := false
		for _, path := range s.paths() {
			if done[path] && path == s.evaluation.Lead {
				return append(steps, p.again(s, path))
			}
			if done[path] {
				continue
			}
			done[path] = true
			steps = append(steps, p.step(s, path))
			if p.ends(s, path) {
				return steps
			}
			ends = ends || path.IsAssembly()
			if path == result.FindOut && s.evaluation.Blocked != result.NoPath {
				break
			}
		}
		if s.evaluation.Lead == result.NoPath {
			return append(steps, p.otherFinish(s))
		}
		if ends || s.number == maxRounds || s.favour && s.evaluation.Lead == result.FindOut {
			return steps
		}
		*s = p.next(s)
	}
}

// ends reports whether the plan stops behind a step: it is somebody else's word,
// or a rule that calls for it is proven and says so. Asbestos that was found is
// for a qualified person, and no mild result is taken in its place; nor is the
// answer taken as known that says whether an engineer comes before a removal.
func (p *Planner) ends(s *stage, path result.PathID) bool {
	if p.Judge.Pack.Steps[path].Ends || path == result.FindOut && s.evaluation.EngineerPending {
		return true
	}
	return slices.ContainsFunc(s.evaluation.Rulings, func(r judge.Ruling) bool {
		return r.Rule.Ends && r.Rule.Calls == path && r.Outcome.Truth == logic.Yes
	})
}

// goes reports whether the owner takes up a layer that no rule removes.
func (s *stage) goes() bool {
	for _, l := range s.zone.Things(schema.ScopeLayer) {
		if !l.IsRest() && l.Stays().Truth == logic.No {
			return true
		}
	}
	return false
}

// paths are what one round leads to, in working order: every proven step, the
// leading path, and taking up what the owner does not want to keep.
func (s *stage) paths() []result.PathID {
	list := slices.Clone(s.evaluation.Steps)
	if s.evaluation.Lead != result.NoPath && !slices.Contains(list, s.evaluation.Lead) {
		list = append(list, s.evaluation.Lead)
	}
	if s.goes() && !s.evaluation.TestPending && !s.evaluation.EngineerPending && !slices.Contains(list, result.Remove) {
		list = append(list, result.Remove)
	}
	slices.SortFunc(list, func(a, b result.PathID) int { return int(place(a, s)) - int(place(b, s)) })
	return list
}

// place puts finding out before the steps that wait behind it.
func place(p result.PathID, s *stage) result.PathID {
	if p == result.FindOut && s.evaluation.Blocked != result.NoPath {
		return result.CallService
	}
	return p
}

// next takes the steps of a round as done and evaluates the floor they leave.
func (p *Planner) next(s *stage) stage {
	n := stage{job: s.job.Clone(), favour: s.favour, number: s.number + 1, shared: s.shared}
	zone := &n.job.Areas[0].Zones[0]
	for _, path := range s.paths() {
		p.take(s, zone, path)
		n.favour = n.favour || path == result.FindOut
		if path == result.FindOut && s.evaluation.Blocked != result.NoPath {
			break
		}
	}
	p.fill(&n)
	n.evaluation = p.Judge.Zone(n.zone, n.favour)
	return n
}

func (p *Planner) fill(s *stage) {
	s.floor = p.Facts.Fill(s.job, p.Today)
	s.zone = s.floor.Zones[0][0]
}
