package reports

import (
	"strings"

	"underfoot/assess"
	"underfoot/assess/quantity"
)

func (b *builder) findingTable() *Table {
	return &Table{ID: "findings", Columns: []Column{
		b.column("place", Group, 15), b.column("stands", Mark, 12), b.column("finding", Title, 30),
		b.column("about", Detail, 11), b.column("found", Detail, 12), b.column("limit", Detail, 14),
		b.column("why", Detail, 28), b.column("todo", Detail, 28), b.column("missing", Detail, 24),
		b.column("risk", Aside, 60), b.column("protects", Aside, 14), b.column("sources", Aside, 18), b.column("rule", Aside, 24),
		b.column("decided", Fold, 40),
	}}
}

// finding is one row for findings that are alike.
func (b *builder) finding(a *assess.AreaResult, alike []*assess.Finding) []string {
	f := alike[0]
	about, found := b.about(f), b.found(f)
	missing := f.Missing
	if len(alike) > 1 {
		about, found = b.aboutEach(alike), ""
		for _, other := range alike[1:] {
			missing = append(missing[:len(missing):len(missing)], other.Missing...)
		}
	}
	limit := f.Limit
	if firm := b.firmness(f.Basis...); limit != "" && firm != "" {
		limit += " (" + firm + ")"
	}
	return []string{
		place(a, f.Zone), b.stands(f), f.Text, about, found, limit,
		f.Why, b.remedy(f), b.names(missing), b.risk(f.Failure),
		b.or("report/protects."+f.Protects, f.Protects), b.cite(f.Sources...), f.Rule, decided(alike),
	}
}

// decided is what decided each of the findings.
func decided(alike []*assess.Finding) string {
	var parts []string
	for _, f := range alike {
		parts = append(parts, f.Decided)
	}
	return strings.Join(distinct(parts), "\n")
}

// remedy is what follows; of what is not settled it says so. How to lay tile is
// the plan's to say, and no instruction while the base is not settled.
func (b *builder) remedy(f *assess.Finding) string {
	switch {
	case f.Remedy == "" || len(f.Permits) > 0:
		return ""
	case f.Outcome == assess.NotSettled, f.Outcome == assess.NotComputed:
		return b.say("report/findings.if_so", "remedy", f.Remedy)
	}
	return f.Remedy
}

// aboutEach lists the things that findings alike are about, each with its value.
func (b *builder) aboutEach(alike []*assess.Finding) string {
	var out []string
	for _, f := range alike {
		line := b.about(f)
		if found := b.found(f); found != "" {
			line += ": " + found
		}
		out = append(out, line)
	}
	return b.lines(out)
}

// found is the value, left out where it says no more than the mark.
func (b *builder) found(f *assess.Finding) string {
	if f.Value == b.amount(quantity.Number, quantity.Everything) {
		return ""
	}
	return f.Value
}

// restTable has the columns of the findings, so that on paper the headings which
// a sheet repeats are those of both.
func (b *builder) restTable() *Table {
	t := b.findingTable()
	t.ID, t.Shape = "other_findings", Grid
	return t
}

// addRest adds a finding that asks nothing.
func (b *builder) addRest(t *Table, a *assess.AreaResult, f *assess.Finding) {
	t.add(findingTone(f), place(a, f.Zone), b.stands(f), f.Text, b.about(f), b.found(f), f.Limit,
		"", "", "", "", "", b.cite(f.Sources...), f.Rule, "")
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
	case noted(f):
		key = "noted"
	}
	return b.say("report/outcome." + key)
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
	if unnamed(f) {
		return b.say("report/findings.unnamed")
	}
	if p, ok := base(f); ok {
		return b.path(p)
	}
	return subject(f)
}

// base is the way to lay tile that the finding is about, where it is about one.
func base(f *assess.Finding) (assess.PathID, bool) { return assess.ParsePath(subject(f)) }

// subject is without the zone that stands before it in a room of several.
func subject(f *assess.Finding) string { return strings.TrimPrefix(f.Subject, f.Zone+".") }

func (b *builder) risk(f assess.Failure) string {
	if f.Mode == "" {
		return ""
	}
	return b.say("report/findings.risk", "mode", f.Mode, "lb", f.LikelihoodBefore, "cb", f.ConsequenceBefore,
		"la", f.LikelihoodAfter, "ca", f.ConsequenceAfter)
}
