package reports

import (
	"slices"

	"underfoot/assess"
)

// findings are what the rules said, worst first, then what they only note; what
// holds stands in a part of its own. What does not apply, or is about a base that
// is out of the question, is left to the data.
func (b *builder) findings() Section {
	s := b.section(FindingsSection)
	open, rest := b.findingTable(), b.restTable()
	for i := range b.r.Areas {
		b.addFindings(open, rest, &b.r.Areas[i])
	}
	s.addTable("", open)
	if nothing := b.nothing(open); nothing != "" {
		s.Lead = []Para{{Text: nothing}}
	}
	s.addTable(b.say("report/findings.rest"), rest)
	if len(rest.Rows) > 0 {
		s.Parts[len(s.Parts)-1].Detail, s.Parts[len(s.Parts)-1].Screen = true, true
	}
	return s
}

func (b *builder) addFindings(open, rest *Table, a *assess.AreaResult) {
	var notes [][]*assess.Finding
	for _, alike := range gather(printed(a)) {
		f := alike[0]
		switch {
		case noted(f):
			notes = append(notes, alike)
		case f.Outcome == assess.Holds:
			b.addRest(rest, a, f)
		default:
			open.add(findingTone(f), b.finding(a, alike)...)
			open.Rows[len(open.Rows)-1].Detail = folded(f)
		}
	}
	b.addUnnamed(open, a)
	for _, alike := range notes {
		open.add(Plain, b.finding(a, alike)...)
	}
}

// printed are the findings that a report tells one by one.
func printed(a *assess.AreaResult) []*assess.Finding {
	var out []*assess.Finding
	for i := range a.Findings {
		f := &a.Findings[i]
		switch {
		case f.Outcome == assess.NotApplicable, idle(a, f):
		case f.Outcome == assess.NotSettled && unnamed(f): // one line stands for all of these
		default:
			out = append(out, f)
		}
	}
	return out
}

// nothing says that a list is empty, or that a short print leaves all of it out.
func (b *builder) nothing(open *Table) string {
	switch {
	case len(open.Rows) == 0:
		return b.say("report/findings.nothing")
	case !slices.ContainsFunc(open.Rows, func(r Row) bool { return !r.Detail }):
		return b.say("report/findings.looks")
	}
	return ""
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

// gather brings findings together that say the same of several things, in the
// order of the first of each.
func gather(findings []*assess.Finding) [][]*assess.Finding {
	type key struct {
		zone, rule, text, limit string
		outcome                 assess.FindingOutcome
		presumed                bool
	}
	place := map[key]int{}
	var out [][]*assess.Finding
	for _, f := range findings {
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

// idle reports a finding about a base that is ruled out in the zone anyway, and a
// note on how to lay tile on a floor that is to be left alone.
func idle(a *assess.AreaResult, f *assess.Finding) bool {
	p, ok := base(f)
	return ok && (ruledOut(a, f.Zone, p) || noted(f) && stopped(a, f.Zone))
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

func stopped(a *assess.AreaResult, zone string) bool {
	for i := range a.Zones {
		if z := &a.Zones[i]; zone == "" || z.ID == zone {
			return z.Path.Asks() == assess.Stop
		}
	}
	return false
}
