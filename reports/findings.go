package reports

import (
	"slices"

	"underfoot/assess/result"
)

// findings are what the rules said, worst first, then what they only note; what
// holds stands in a part of its own. What does not apply, or is about a base that
// is out of the question, is left to the data.
func (b *builder) findings() Section {
	s := b.section(FindingsSection)
	var open, rest []findingRow
	for i := range b.r.Areas {
		asks, satisfied := b.findingsOf(&b.r.Areas[i])
		open, rest = append(open, asks...), append(rest, satisfied...)
	}
	s.addTable("", findingTable("findings", Records).Of(b.language, open))
	if nothing := b.nothing(open); nothing != "" {
		s.Lead = []Para{{Text: nothing}}
	}
	s.addTable(b.say("report/findings.rest"), findingTable("other_findings", Grid).Of(b.language, rest))
	if len(rest) > 0 {
		s.Parts[len(s.Parts)-1].Detail, s.Parts[len(s.Parts)-1].Screen = true, true
	}
	return s
}

// findingsOf are an area's findings that ask for something, with the notes
// behind them, and those that ask nothing.
func (b *builder) findingsOf(a *result.AreaResult) (open, rest []findingRow) {
	var notes [][]*result.Finding
	for _, alike := range gather(printed(a)) {
		f := alike[0]
		switch {
		case noted(f):
			notes = append(notes, alike)
		case f.Outcome == result.Holds:
			rest = append(rest, b.satisfied(a, f))
		default:
			row := b.finding(a, alike)
			row.detail = folded(f)
			open = append(open, row)
		}
	}
	open = append(open, b.unnamed(a)...)
	for _, alike := range notes {
		row := b.finding(a, alike)
		row.tone = Plain
		open = append(open, row)
	}
	return open, rest
}

// printed are the findings that a report tells one by one.
func printed(a *result.AreaResult) []*result.Finding {
	var out []*result.Finding
	for i := range a.Findings {
		f := &a.Findings[i]
		switch {
		case f.Outcome == result.NotApplicable, idle(a, f):
		case f.Outcome == result.NotSettled && isUnnamed(f): // one line stands for all of these
		default:
			out = append(out, f)
		}
	}
	return out
}

// nothing says that a list is empty, or that a short print leaves all of it out.
func (b *builder) nothing(open []findingRow) string {
	switch {
	case len(open) == 0:
		return b.say("report/findings.nothing")
	case !slices.ContainsFunc(open, func(r findingRow) bool { return !r.detail }):
		return b.say("report/findings.looks")
	}
	return ""
}

// noted reports whether the rule only adds what it says.
func noted(f *result.Finding) bool {
	return f.Outcome == result.Holds && f.Calls == result.NoPath && len(f.Bars) == 0 && len(f.Permits) == 0
}

// folded reports whether a short print leaves the finding out: it only asks
// for a look that the plan lists.
func folded(f *result.Finding) bool {
	return f.Outcome == result.NotSettled && (f.Policy == result.PolicyVerify || f.Policy == result.PolicyNote)
}

// gather brings findings together that say the same of several things, in the
// order of the first of each.
func gather(findings []*result.Finding) [][]*result.Finding {
	type key struct {
		zone, rule, text, limit string
		outcome                 result.FindingOutcome
		presumed                bool
	}
	place := map[key]int{}
	var out [][]*result.Finding
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
func idle(a *result.AreaResult, f *result.Finding) bool {
	p, ok := assembly(f)
	return ok && (ruledOut(a, f.Zone, p) || noted(f) && stopped(a, f.Zone))
}

func ruledOut(a *result.AreaResult, zone string, p result.PathID) bool {
	for i := range a.Zones {
		z := &a.Zones[i]
		if zone != "" && z.ID != zone {
			continue
		}
		for _, standing := range z.Paths {
			if standing.Path == p {
				return standing.State == result.PathRuledOut
			}
		}
	}
	return false
}

func stopped(a *result.AreaResult, zone string) bool {
	for i := range a.Zones {
		if z := &a.Zones[i]; zone == "" || z.ID == zone {
			return z.Path.MinVerdict() == result.Stop
		}
	}
	return false
}
