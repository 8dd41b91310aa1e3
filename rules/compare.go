package rules

import (
	"cmp"
	"slices"
	"strings"

	"underfoot/assess"
	"underfoot/assess/condition"
	"underfoot/assess/facts"
	"underfoot/assess/logic"
	"underfoot/assess/result"
	"underfoot/assess/schema"
	"underfoot/rules/judge"
)

// Compare says what has changed since an earlier visit. Areas, zones and listed
// items are the same where they have the same id.
func (a *Assessment) Compare(old *Assessment) *result.Comparison {
	c := &result.Comparison{Old: old.Result(), New: a.Result()}
	for i := range c.New.Areas {
		area := &c.New.Areas[i]
		if was := c.Old.Area(area.ID); was != nil {
			c.Areas = append(c.Areas, a.compareArea(i, was, area))
		} else {
			c.Added = append(c.Added, area.ID)
		}
	}
	for i := range c.Old.Areas {
		if id := c.Old.Areas[i].ID; c.New.Area(id) == nil {
			c.Missing = append(c.Missing, id)
		}
	}
	c.Answers = answerChanges(c.Old.Answers, c.New.Answers)
	return c
}

func (a *Assessment) compareArea(place int, old, now *result.AreaResult) result.AreaComparison {
	out := result.AreaComparison{ID: now.ID, Name: now.Name, Old: old, New: now, Zones: zones(old, now)}
	out.Findings = a.engine.changes(old, now)
	rulings := a.rulings(place)
	for _, f := range out.Findings {
		out.Accept = append(out.Accept, result.Acceptance{FindingChange: f, Inspections: a.inspections(f, rulings)})
	}
	return out
}

// zones are those of the later visit, then those that it no longer has.
func zones(old, now *result.AreaResult) []result.ZoneComparison {
	var out []result.ZoneComparison
	for i := range now.Zones {
		z := &now.Zones[i]
		out = append(out, result.ZoneComparison{ID: z.ID, Old: old.Zone(z.ID), New: z})
	}
	for i := range old.Zones {
		if z := &old.Zones[i]; now.Zone(z.ID) == nil {
			out = append(out, result.ZoneComparison{ID: z.ID, Old: z})
		}
	}
	return out
}

// A subject names a finding in both visits: the zone is left out where the rule
// is about the whole room or house.
type subject struct{ rule, zone, item string }

func (e *Engine) subject(rule, zone, item string) subject {
	if r := e.Pack.Rule(rule); r != nil && r.Scope < schema.ScopeZone {
		zone = ""
	}
	return subject{rule, zone, item}
}

// of is the subject of a finding; the zone may stand before its item or not.
func (e *Engine) of(f *result.Finding) subject {
	item := strings.TrimPrefix(f.Subject, f.Zone+".")
	if item == f.Zone {
		item = ""
	}
	return e.subject(f.Rule, f.Zone, item)
}

// changes pairs the findings of two visits. What only permits is no trouble and
// shows in the ways that stand open.
func (e *Engine) changes(old, now *result.AreaResult) []result.FindingChange {
	was, is := e.bySubject(old), e.bySubject(now)
	var out []result.FindingChange
	seen := map[subject]bool{}
	for _, a := range []*result.AreaResult{now, old} {
		for i := range a.Findings {
			s := e.of(&a.Findings[i])
			f := result.FindingChange{Zone: s.zone, Old: was[s], New: is[s]}
			if seen[s] || f.Old.Compared() == 0 && f.New.Compared() == 0 {
				continue
			}
			seen[s] = true
			f.Change = result.ChangeOf(f.Old, f.New)
			out = append(out, f)
		}
	}
	slices.SortStableFunc(out, func(a, b result.FindingChange) int {
		return cmp.Or(cmp.Compare(a.Change, b.Change), cmp.Compare(b.Latest().Compared(), a.Latest().Compared()))
	})
	return out
}

// bySubject are the findings that state a trouble.
func (e *Engine) bySubject(a *result.AreaResult) map[subject]*result.Finding {
	out := map[subject]*result.Finding{}
	for i := range a.Findings {
		f := &a.Findings[i]
		if len(f.Permits) == 0 || f.Calls != result.NoPath {
			out[e.of(f)] = f
		}
	}
	return out
}

// rulings are those of one area by subject.
func (a *Assessment) rulings(area int) map[subject]*judge.Ruling {
	out := map[subject]*judge.Ruling{}
	for z, evaluation := range a.zones[area] {
		for n := range evaluation.Rulings {
			r := &evaluation.Rulings[n]
			out[a.engine.subject(r.Rule.ID, a.floor.Zones[area][z].ID(), r.Subject())] = r
		}
	}
	return out
}

// inspections are what decides a finding at the later visit: what it waits for, or
// else the facts that settled it.
func (a *Assessment) inspections(c result.FindingChange, rulings map[subject]*judge.Ruling) []result.Inspection {
	e := a.engine
	r := rulings[e.of(c.Latest())]
	if r == nil {
		return nil
	}
	var out []result.Inspection
	if c.New != nil && len(c.New.Missing) > 0 {
		for _, at := range c.New.Missing {
			out = append(out, e.missingInspection(at))
		}
		return out
	}
	seen := map[schema.FactID]bool{}
	for _, x := range e.describer.Why(r) {
		for _, f := range factsOf(x) {
			for _, asked := range e.facts.Asked(f) {
				if !seen[asked] {
					seen[asked] = true
					out = append(out, e.decidingInspections(a.job, r.Thing, asked)...)
				}
			}
		}
	}
	return out
}

// factsOf are the facts that the leaves of an explanation name.
func factsOf(x condition.Explanation) []schema.FactID {
	out := slices.Clone(x.Facts)
	for _, p := range x.Parts {
		out = append(out, factsOf(p)...)
	}
	return out
}

func (e *Engine) missingInspection(a schema.Address) result.Inspection {
	l := result.Inspection{Address: a, Label: a.Short(), Missing: true}
	if q := e.Catalogue.Find(a.Short()); q != nil {
		l.Label, l.How = cmp.Or(q.Text.Label, l.Label), q.Text.How
	}
	return l
}

// decidingInspections are the answers that the later record has to a question that
// decided a finding: of the thing or what encloses it, or else of each item of
// the list in its zone. The owner's own choices need no look.
func (e *Engine) decidingInspections(job *assess.Job, thing *facts.Frame, f schema.FactID) []result.Inspection {
	q := e.Catalogue.Question(f)
	if q.Decl.Nature == schema.Chosen {
		return nil
	}
	var things []*facts.Frame
	switch s := q.Decl.Scope; {
	case s == thing.Scope():
		things = []*facts.Frame{thing}
	case s <= schema.ScopeZone && s < thing.Scope():
		things = []*facts.Frame{thing.Above(s)}
	case thing.Zone() != nil:
		things = thing.Zone().Things(s)
	}
	var out []result.Inspection
	for _, t := range things {
		at := t.Address(q.Decl)
		if a, said := job.Answer(at); said && t.Fact(f).Presence.Truth != logic.No {
			l := result.Inspection{Address: at, Label: q.Text.Label, How: q.Text.How, Basis: a.Basis}
			l.Value, _ = e.describer.Show(f, t.Fact(f))
			out = append(out, l)
		}
	}
	return out
}

// answerChanges are the answers that differ, in the later record's order; then
// those that it no longer has.
func answerChanges(old, now []result.AnswerRow) []result.AnswerChange {
	was := map[schema.Address]*result.AnswerRow{}
	for i := range old {
		was[old[i].Address] = &old[i]
	}
	var out []result.AnswerChange
	still := map[schema.Address]bool{}
	for i := range now {
		n := &now[i]
		still[n.Address] = true
		if o := was[n.Address]; o == nil || o.Value != n.Value {
			out = append(out, result.AnswerChange{Address: n.Address, Label: n.Label, Old: o, New: n})
		}
	}
	for i := range old {
		if o := &old[i]; !still[o.Address] {
			out = append(out, result.AnswerChange{Address: o.Address, Label: o.Label, Old: o})
		}
	}
	return out
}
