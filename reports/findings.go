package reports

import (
	"strconv"
	"strings"

	"underfoot/assess"
	"underfoot/assess/quantity"
)

// findings are what the rules said, worst first; what holds stands in a part of
// its own. What does not apply, or is about a base that is out of the question,
// is left to the data.
func (b *builder) findings() Section {
	s := b.section(FindingsSection)
	open, rest := b.findingTable(), b.restTable()
	for i := range b.r.Areas {
		a := &b.r.Areas[i]
		var notes [][]*assess.Finding
		for _, alike := range gather(a.Findings) {
			f := alike[0]
			switch {
			case f.Outcome == assess.NotApplicable, idle(a, f.Zone, f.Subject):
				continue
			case f.Outcome == assess.NotSettled && unnamed(f):
				continue // one line stands for all of these
			case weighty(f):
				notes = append(notes, alike)
				continue
			case f.Outcome == assess.Holds:
				b.addRest(rest, a, f)
				continue
			}
			open.add(findingTone(f), b.finding(a, alike)...)
			open.Rows[len(open.Rows)-1].Detail = folded(f)
		}
		b.addUnnamed(open, a)
		for _, alike := range notes {
			open.add(Plain, b.finding(a, alike)...)
		}
	}
	s.addTable("", open)
	if len(open.Rows) == 0 {
		s.Lead = []Para{{Text: b.say("findings", "nothing")}}
	}
	s.addTable(b.say("findings", "rest"), rest)
	if len(rest.Rows) > 0 {
		s.Parts[len(s.Parts)-1].Detail, s.Parts[len(s.Parts)-1].Screen = true, true
	}
	return s
}

// weighty reports whether a finding asks for nothing by itself and still has to
// be read: a note on people's health or on what carries the floor.
func weighty(f *assess.Finding) bool {
	return noted(f) && (f.Protects == "people" || f.Protects == "structure")
}

// noted reports whether the rule only adds what it says.
func noted(f *assess.Finding) bool {
	return f.Outcome == assess.Holds && f.Calls == assess.NoPath && len(f.Bars) == 0 && len(f.Permits) == 0
}

// folded reports whether a short print leaves the finding out: it only asks
// for a look that the plan lists.
func folded(f *assess.Finding) bool {
	return f.Outcome == assess.NotSettled && (f.Policy == "verify" || f.Policy == "note")
}

func unnamed(f *assess.Finding) bool {
	return f.Subject == "rest" || strings.HasSuffix(f.Subject, ".rest")
}

// addUnnamed adds one line for the findings about things that nobody has
// named, with the answers that would close the lists.
func (b *builder) addUnnamed(t *Table, a *assess.AreaResult) {
	type open struct {
		rules   int
		missing []assess.Address
	}
	zones := map[string]*open{}
	for i := range a.Findings {
		f := &a.Findings[i]
		if f.Outcome != assess.NotSettled || !unnamed(f) || f.Policy != "hold" {
			continue
		}
		if zones[f.Zone] == nil {
			zones[f.Zone] = &open{}
		}
		zones[f.Zone].rules++
		zones[f.Zone].missing = append(zones[f.Zone].missing, f.Missing...)
	}
	for i := range a.Zones {
		if o := zones[a.Zones[i].ID]; o != nil {
			t.add(Waiting, place(a, a.Zones[i].ID), b.say("outcome", assess.NotSettled.String()),
				b.say("findings", "unnamed_row", "n", strconv.Itoa(o.rules)), "", "", "",
				b.say("findings", "unnamed_why"), "", b.names(o.missing), "", "", "", "", "")
		}
	}
}

// gather brings findings together that say the same of several things, in the
// order of the first of each.
func gather(findings []assess.Finding) [][]*assess.Finding {
	type key struct {
		zone, rule, text, limit string
		outcome                 assess.FindingOutcome
		presumed                bool
	}
	place := map[key]int{}
	var out [][]*assess.Finding
	for i := range findings {
		f := &findings[i]
		k := key{f.Zone, f.Rule, f.Text, f.Limit, f.Outcome, f.Presumed}
		n, known := place[k]
		if !known {
			n = len(out)
			place[k], out = n, append(out, nil)
		}
		out[n] = append(out[n], f)
	}
	return out
}

// idle reports a subject that is a base which is ruled out in the zone anyway.
func idle(a *assess.AreaResult, zone, subject string) bool {
	p, ok := assess.ParsePath(subject)
	return ok && ruledOut(a, zone, p)
}

func ruledOut(a *assess.AreaResult, zone string, p assess.PathID) bool {
	for i := range a.Zones {
		z := &a.Zones[i]
		if zone != "" && z.ID != zone {
			continue
		}
		for _, standing := range z.Paths {
			if standing.Path == p {
				return standing.State == assess.PathRuledOut
			}
		}
	}
	return false
}

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
		f.Why, b.remedy(a, f), b.names(missing), b.risk(f.Failure),
		b.or("protects", f.Protects), b.cite(f.Sources...), f.Rule, decided(alike),
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
// not said while a base is not settled, or while the floor is left alone.
func (b *builder) remedy(a *assess.AreaResult, f *assess.Finding) string {
	switch {
	case f.Remedy == "":
		return ""
	case len(f.Permits) > 0 && (f.Outcome == assess.NotSettled || stopped(a, f.Zone)):
		return ""
	case f.Outcome == assess.NotSettled:
		return b.say("findings", "if_so", "remedy", f.Remedy)
	}
	return f.Remedy
}

func stopped(a *assess.AreaResult, zone string) bool {
	for i := range a.Zones {
		if z := &a.Zones[i]; zone == "" || z.ID == zone {
			return z.Path.Asks() == assess.Stop
		}
	}
	return false
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

func (b *builder) restTable() *Table {
	return &Table{ID: "other_findings", Shape: Grid, Columns: []Column{
		b.column("place", Group, 15), b.column("stands", Mark, 12), b.column("finding", Title, 30),
		b.column("about", Detail, 14), b.column("found", Detail, 14), b.column("limit", Detail, 13),
		b.column("rule", Aside, 24), b.column("sources", Aside, 18),
	}}
}

// addRest adds a finding that asks nothing.
func (b *builder) addRest(t *Table, a *assess.AreaResult, f *assess.Finding) {
	t.add(findingTone(f), place(a, f.Zone), b.stands(f), f.Text, b.about(f), b.found(f), f.Limit, f.Rule, b.cite(f.Sources...))
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
	if unnamed(f) {
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
