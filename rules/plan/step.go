package plan

import (
	"slices"

	"underfoot/assess/result"
	"underfoot/rules/judge"
)

// step is one line of the plan.
func (p *Planner) step(s *stage, path result.PathID) result.PlanStep {
	record := p.Judge.Pack.Steps[path]
	out := result.PlanStep{Path: path, Text: record.Text.Text, Who: record.Text.Who, Hold: record.Text.Hold, Look: s.number,
		Verify: slices.Clone(record.Text.Verify), Cautions: slices.Clone(record.Cautions), Quantities: p.amounts(s, path)}
	if s.number > 1 {
		out.If = record.Text.Uncovered
	}
	for i := range s.look.Rulings {
		if r := &s.look.Rulings[i]; r.Rule.Calls == path && r.Due() || r == s.look.By && path == s.look.Lead {
			p.because(&out, r)
			add(&out.Cautions, r.Rule.Cautions)
		} else if r.Warns() && !r.Rest() && slices.Contains(r.Rule.AtSteps, path) {
			add(&out.Cautions, r.Rule.Cautions)
		}
	}
	if path.IsBase() {
		p.base(s, &out)
	}
	if path == result.FindOut {
		p.findOut(s, &out)
	}
	return out
}

// because gives a step a reason; the first one's sentence stands at the step.
func (p *Planner) because(out *result.PlanStep, r *judge.Ruling) {
	if len(out.Reasons) == 0 {
		out.Because = p.Describer.Text(r)
	}
	out.Reasons = append(out.Reasons, r.FindingID())
}

// base adds what must be looked at before the tile is bought, what the base
// needs, and the other ways that stand open.
func (p *Planner) base(s *stage, out *result.PlanStep) {
	out.Needs = slices.Clone(p.Judge.Pack.Steps[out.Path].Text.Needs)
	var before judge.Missing
	for i := range s.look.Rulings {
		r := &s.look.Rulings[i]
		if r.Verifies() && (!r.Rule.BarsThis || r.Thing.ID() == out.Path.String()) {
			before.Add(r)
		}
	}
	out.Before = before.List()
	for _, st := range s.look.Paths {
		if st.Path.IsBase() && st.State == result.PathOpen && st.Path != out.Path {
			out.Alternatives = append(out.Alternatives, st.Path)
		}
	}
	if s.look.By != nil {
		for _, alt := range s.look.By.Rule.Alternatives {
			if !slices.Contains(out.Alternatives, alt) {
				out.Alternatives = append(out.Alternatives, alt)
			}
		}
	}
}

// findOut adds the questions that the look waits for, first of them what comes
// before a removal.
func (p *Planner) findOut(s *stage, out *result.PlanStep) {
	var ask judge.Missing
	if gate := s.look.Gate(); gate != nil {
		p.because(out, gate)
		ask.Add(gate)
	}
	for i := range s.look.Rulings {
		if r := &s.look.Rulings[i]; r.Waits() {
			ask.Add(r)
		}
	}
	out.Ask = ask.List()
	add(&out.Cautions, s.look.Cautions())
}

// again says that a step has been taken and is called for once more: the plan
// goes no further without a new record.
func (p *Planner) again(s *stage, path result.PathID) result.PlanStep {
	out := p.step(s, path)
	out.Repeats = true
	return out
}

// otherFinish is the end of a plan in which every base is struck out and
// nothing is left to take up.
func (p *Planner) otherFinish(s *stage) result.PlanStep {
	out := result.PlanStep{Path: result.NoPath, Look: s.number}
	for i := range s.look.Rulings {
		if r := &s.look.Rulings[i]; r.Proven() && (len(r.Rule.Bars) > 0 || r.Rule.BarsThis) {
			p.because(&out, r)
		}
	}
	return out
}

func add(list *[]string, more []string) {
	for _, m := range more {
		if !slices.Contains(*list, m) {
			*list = append(*list, m)
		}
	}
}
