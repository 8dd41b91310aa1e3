package rules

import (
	"cmp"
	"slices"
	"strings"

	"underfoot/assess"
	"underfoot/assess/condition"
	"underfoot/assess/facts"
	"underfoot/rules/judge"
)

// A Visit is one record with the day to which ages are counted.
type Visit struct {
	Job *assess.Job
	Day assess.Day
}

// Compare judges two visits by the engine's rules and says what has changed.
// Areas, zones and listed items are the same where they have the same id.
func (e *Engine) Compare(old, now Visit) *assess.Comparison {
	c := &assess.Comparison{Old: e.Assess(old.Job, old.Day), New: e.Assess(now.Job, now.Day)}
	floor := e.facts.Fill(c.New.Job, now.Day)
	for i := range c.New.Areas {
		area := &c.New.Areas[i]
		if was := areaOf(c.Old, area.ID); was != nil {
			c.Areas = append(c.Areas, e.compareArea(was, area, c.New.Job, floor.Zones[i]))
		} else {
			c.Added = append(c.Added, area.ID)
		}
	}
	for i := range c.Old.Areas {
		if id := c.Old.Areas[i].ID; areaOf(c.New, id) == nil {
			c.Missing = append(c.Missing, id)
		}
	}
	c.Answers = answerChanges(c.Old.Said, c.New.Said)
	return c
}

func areaOf(r *assess.Result, id string) *assess.AreaResult {
	for i := range r.Areas {
		if r.Areas[i].ID == id {
			return &r.Areas[i]
		}
	}
	return nil
}

func (e *Engine) compareArea(old, now *assess.AreaResult, job *assess.Job, frames []*facts.Frame) assess.AreaComparison {
	a := assess.AreaComparison{ID: now.ID, Name: now.Name, Old: old, New: now, Zones: zones(old, now)}
	a.Findings = e.changes(old, now)
	rulings := e.rulings(frames)
	for _, f := range a.Findings {
		a.Accept = append(a.Accept, assess.Acceptance{FindingChange: f, Looks: e.looks(f, job, rulings)})
	}
	return a
}

// zones are those of the later visit, then those that it no longer has.
func zones(old, now *assess.AreaResult) []assess.ZoneComparison {
	var out []assess.ZoneComparison
	find := func(a *assess.AreaResult, id string) *assess.ZoneResult {
		for i := range a.Zones {
			if a.Zones[i].ID == id {
				return &a.Zones[i]
			}
		}
		return nil
	}
	for i := range now.Zones {
		z := &now.Zones[i]
		out = append(out, assess.ZoneComparison{ID: z.ID, Old: find(old, z.ID), New: z})
	}
	for i := range old.Zones {
		if z := &old.Zones[i]; find(now, z.ID) == nil {
			out = append(out, assess.ZoneComparison{ID: z.ID, Old: z})
		}
	}
	return out
}

// A subject names a finding in both visits: the zone is left out where the rule
// is about the whole room or house.
type subject struct{ rule, zone, item string }

func (e *Engine) subject(rule, zone, item string) subject {
	if r := e.Pack.Rule(rule); r != nil && r.Scope < assess.ScopeZone {
		zone = ""
	}
	return subject{rule, zone, item}
}

// of is the subject of a finding; the zone may stand before its item or not.
func (e *Engine) of(f *assess.Finding) subject {
	item := strings.TrimPrefix(f.Subject, f.Zone+".")
	if item == f.Zone {
		item = ""
	}
	return e.subject(f.Rule, f.Zone, item)
}

// changes pairs the findings of two visits. What only permits is no trouble and
// shows in the ways that stand open.
func (e *Engine) changes(old, now *assess.AreaResult) []assess.FindingChange {
	was, is := e.bySubject(old), e.bySubject(now)
	var out []assess.FindingChange
	seen := map[subject]bool{}
	for _, a := range []*assess.AreaResult{now, old} {
		for i := range a.Findings {
			s := e.of(&a.Findings[i])
			f := assess.FindingChange{Zone: s.zone, Old: was[s], New: is[s]}
			if seen[s] || f.Old.Compared() == 0 && f.New.Compared() == 0 {
				continue
			}
			seen[s] = true
			f.Change = assess.ChangeOf(f.Old, f.New)
			out = append(out, f)
		}
	}
	slices.SortStableFunc(out, func(a, b assess.FindingChange) int {
		return cmp.Or(cmp.Compare(a.Change, b.Change), cmp.Compare(b.Latest().Compared(), a.Latest().Compared()))
	})
	return out
}

// bySubject are the findings that state a trouble.
func (e *Engine) bySubject(a *assess.AreaResult) map[subject]*assess.Finding {
	out := map[subject]*assess.Finding{}
	for i := range a.Findings {
		f := &a.Findings[i]
		if len(f.Permits) == 0 || f.Calls != assess.NoPath {
			out[e.of(f)] = f
		}
	}
	return out
}

// rulings are those of the later visit by subject.
func (e *Engine) rulings(frames []*facts.Frame) map[subject]*judge.Ruling {
	out := map[subject]*judge.Ruling{}
	for _, frame := range frames {
		look := e.judge.Zone(frame, false)
		for n := range look.Rulings {
			r := &look.Rulings[n]
			out[e.subject(r.Rule.ID, frame.ID(), r.Subject())] = r
		}
	}
	return out
}

// looks are what decides a finding at the later visit: what it waits for, or
// else the facts that settled it.
func (e *Engine) looks(c assess.FindingChange, job *assess.Job, rulings map[subject]*judge.Ruling) []assess.Look {
	r := rulings[e.of(c.Latest())]
	if r == nil {
		return nil
	}
	var out []assess.Look
	if c.New != nil && len(c.New.Missing) > 0 {
		for _, a := range c.New.Missing {
			out = append(out, e.missingLook(a))
		}
		return out
	}
	seen := map[assess.FactID]bool{}
	for _, x := range e.teller.Why(r) {
		for _, f := range factsOf(x) {
			for _, asked := range e.facts.Asked(f) {
				if !seen[asked] {
					seen[asked] = true
					out = append(out, e.decidingLooks(job, r.Thing, asked)...)
				}
			}
		}
	}
	return out
}

// factsOf are the facts that the leaves of an explanation name.
func factsOf(x condition.Explanation) []assess.FactID {
	out := slices.Clone(x.Facts)
	for _, p := range x.Parts {
		out = append(out, factsOf(p)...)
	}
	return out
}

func (e *Engine) missingLook(a assess.Address) assess.Look {
	l := assess.Look{Address: a, Label: a.Short(), Missing: true}
	if q := e.Catalogue.Find(a.Short()); q != nil {
		l.Label, l.How = cmp.Or(q.Text.Label, l.Label), q.Text.How
	}
	return l
}

// decidingLooks are the answers that the later record has to a question that
// decided a finding: of the thing or what encloses it, or else of each item of
// the list in its zone. The owner's own choices need no look.
func (e *Engine) decidingLooks(job *assess.Job, thing *facts.Frame, f assess.FactID) []assess.Look {
	q := e.Catalogue.Question(f)
	if q.Decl.Nature == assess.Chosen {
		return nil
	}
	var things []*facts.Frame
	switch s := q.Decl.Scope; {
	case s == thing.Scope():
		things = []*facts.Frame{thing}
	case s <= assess.ScopeZone && s < thing.Scope():
		things = []*facts.Frame{thing.Above(s)}
	case thing.Zone() != nil:
		things = thing.Zone().Things(s)
	}
	var out []assess.Look
	for _, t := range things {
		at := t.Address(q.Decl)
		if a, said := job.Answer(at); said && t.Fact(f).Presence.Truth != assess.No {
			l := assess.Look{Address: at, Label: q.Text.Label, How: q.Text.How, Basis: a.Basis}
			l.Value, _ = e.teller.Show(f, t.Fact(f))
			out = append(out, l)
		}
	}
	return out
}

// answerChanges are the answers that differ, in the later record's order; then
// those that it no longer has.
func answerChanges(old, now []assess.Said) []assess.AnswerChange {
	was := map[assess.Address]*assess.Said{}
	for i := range old {
		was[old[i].Address] = &old[i]
	}
	var out []assess.AnswerChange
	still := map[assess.Address]bool{}
	for i := range now {
		n := &now[i]
		still[n.Address] = true
		if o := was[n.Address]; o == nil || o.Value != n.Value {
			out = append(out, assess.AnswerChange{Address: n.Address, Label: n.Label, Old: o, New: n})
		}
	}
	for i := range old {
		if o := &old[i]; !still[o.Address] {
			out = append(out, assess.AnswerChange{Address: o.Address, Label: o.Label, Old: o})
		}
	}
	return out
}
