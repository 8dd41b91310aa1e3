package reports

import (
	"strings"

	"underfoot/assess"
)

// findings are what the rules said, worst first; what holds or does not apply
// stands in a part of its own.
func (b *builder) findings() Section {
	s := b.section(FindingsSection)
	open, rest := b.findingTable("findings"), b.findingTable("other_findings")
	for i := range b.r.Areas {
		a := &b.r.Areas[i]
		for j := range a.Findings {
			f := &a.Findings[j]
			t := open
			if f.Outcome == assess.Holds || f.Outcome == assess.NotApplicable {
				t = rest
			}
			t.add(findingTone(f), b.finding(a, f)...)
		}
	}
	s.addTable("", open)
	if len(open.Rows) == 0 {
		s.Lead = []Para{{Text: b.say("findings", "nothing")}}
	}
	s.addTable(b.say("findings", "rest"), rest)
	if len(rest.Rows) > 0 {
		s.Parts[len(s.Parts)-1].Detail = true
	}
	return s
}

func (b *builder) findingTable(id string) *Table {
	return &Table{ID: id, Columns: []Column{
		b.column("place", Group, 15), b.column("stands", Mark, 12), b.column("finding", Title, 30),
		b.column("about", Detail, 10), b.column("found", Detail, 14), b.column("limit", Detail, 13),
		b.column("why", Detail, 30), b.column("todo", Detail, 30), b.column("missing", Detail, 22),
		b.column("risk", Aside, 34), b.column("protects", Aside, 14), b.column("sources", Aside, 18), b.column("rule", Aside, 24),
	}}
}

func (b *builder) finding(a *assess.AreaResult, f *assess.Finding) []string {
	return []string{
		place(a, f.Zone), b.stands(f), f.Text, b.about(f),
		b.marked(f.Value, f.Sources...), b.marked(f.Limit, f.Sources...),
		f.Why, f.Remedy, b.names(f.Missing), b.risk(f.Failure),
		b.or("protects", f.Protects), b.cite(f.Sources...), f.ID,
	}
}

// stands is the word for a finding's outcome. A rule that permits says
// 'possible' when it holds, a bare caution says 'noted'.
func (b *builder) stands(f *assess.Finding) string {
	key := f.Outcome.String()
	switch {
	case f.Presumed:
		key = "presumed"
	case f.Outcome == assess.Holds && len(f.Permits) > 0:
		key = "permits"
	case f.Outcome == assess.Holds && f.Calls == assess.NoPath && len(f.Bars) == 0:
		key = "noted"
	}
	return b.say("outcome", key)
}

func findingTone(f *assess.Finding) Tone {
	switch f.Outcome {
	case assess.Fails:
		return Urgent
	case assess.NotSettled, assess.NotComputed:
		if f.Presumed {
			return Urgent
		}
		return Waiting
	case assess.Holds:
		return Settled
	}
	return Quiet
}

// about is the thing that the finding is about, where that is a listed one.
func (b *builder) about(f *assess.Finding) string {
	if f.Subject == "rest" {
		return b.say("findings", "unnamed")
	}
	if p, ok := assess.ParsePath(f.Subject); ok {
		return b.path(p)
	}
	return strings.TrimPrefix(f.Subject, f.Zone+".")
}

func (b *builder) risk(f assess.Failure) string {
	if f.Mode == "" {
		return ""
	}
	return b.say("findings", "risk", "mode", f.Mode, "lb", f.LikelihoodBefore, "cb", f.ConsequenceBefore,
		"la", f.LikelihoodAfter, "ca", f.ConsequenceAfter)
}
