package plan

import (
	"slices"

	"underfoot/assess/result"
	"underfoot/rules/judge"
)

// step is one line of the plan.
func (p *Planner) step(s *stage, path result.PathID) result.PlanStep {
	record := p.Judge.Pack.Steps[path]
	out := result.PlanStep{Path: path, Text: record.Text.Text, Who: record.Text.Who, Hold: record.Text.Hold, Round: s.number,
		Verify: slices.Clone(record.Text.Verify), Cautions: slices.Clone(record.Cautions), Quantities: p.amounts(s, path)}
	if s.number > 1 {
		out.If = record.Text.Uncovered
	}
	for i := range s.evaluation.Rulings {
		if r := &s.evaluation.Rulings[i]; r.Rule.Calls == path && r.Due() || r == s.evaluation.LeadRuling && path == s.evaluation.Lead {
			p.explain(&out, r)
			add(&out.Cautions, r.Rule.Cautions)
		} else if r.AttachesCautions() && !r.Rest() && slices.Contains(r.Rule.AtSteps, path) {
			add(&out.Cautions, r.Rule.Cautions)
		}
	}
	if path.IsAssembly() {
		p.base(s, &out)
	}
	if path == result.FindOut {
		p.findOut(s, &out)
	}
	return out
}

// explain gives a step a reason; the first one's sentence stands at the step.
func (p *Planner) explain(out *result.PlanStep, r *judge.Ruling) {
	if len(out.FindingIDs) == 0 {
		out.Sentence = p.Describer.Text(r)
	}
	out.FindingIDs = append(out.FindingIDs, r.FindingID())
}

// base adds what must be looked at before the tile is bought, what the base
// needs, and the other ways that stand open.
func (p *Planner) base(s *stage, out *result.PlanStep) {
	out.Needs = slices.Clone(p.Judge.Pack.Steps[out.Path].Text.Needs)
	var before judge.Missing
	for i := range s.evaluation.Rulings {
		r := &s.evaluation.Rulings[i]
		if r.Verifies() && (!r.Rule.BarsThis || r.Thing.ID() == out.Path.String()) {
			before.Add(r)
		}
	}
	out.Before = before.List()
	for _, st := range s.evaluation.Paths {
		if st.Path.IsAssembly() && st.State == result.PathOpen && st.Path != out.Path {
			out.Alternatives = append(out.Alternatives, st.Path)
		}
	}
	if s.evaluation.LeadRuling != nil {
		for _, alt := range s.evaluation.LeadRuling.Rule.Alternatives {
			if !slices.Contains(out.Alternatives, alt) {
				out.Alternatives = append(out.Alternatives, alt)
			}
		}
	}
}

// findOut adds the questions that the evaluation waits for, first of them what comes
// before a removal.
func (p *Planner) findOut(s *stage, out *result.PlanStep) {
	var ask judge.Missing
	if gate := s.evaluation.Gate(); gate != nil {
		p.explain(out, gate)
		ask.Add(gate)
	}
	for i := range s.evaluation.Rulings {
		if r := &s.evaluation.Rulings[i]; r.Waits() {
			ask.Add(r)
		}
	}
	out.Pending = ask.List()
	add(&out.Cautions, s.evaluation.Cautions())
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
	out := result.PlanStep{Path: result.NoPath, Round: s.number}
	for i := range s.evaluation.Rulings {
		if r := &s.evaluation.Rulings[i]; r.Proven() && (len(r.Rule.Bars) > 0 || r.Rule.BarsThis) {
			p.explain(&out, r)
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
