package reports

import (
	"strings"

	"underfoot/assess/quantity"
	"underfoot/assess/result"
)

// A findingRow is a line of the findings: findings that are alike, one that asks
// nothing, or all those about what nobody has named.
type findingRow struct {
	tone                                       Tone
	detail                                     bool
	place, stands, text, about, found, limit   string
	why, remedy, missing, risk, protects, rule string
	sources, decided                           string
}

// findingTable lists findings. Those that ask nothing are listed under the same
// columns, so that on paper the headings which a sheet repeats are those of both.
func findingTable(id string, shape Shape) TableOf[findingRow] {
	return TableOf[findingRow]{
		ID: id, Shape: shape,
		Tone:   func(r findingRow) Tone { return r.tone },
		Detail: func(r findingRow) bool { return r.detail },
		Columns: []ColumnOf[findingRow]{
			TextColumn("report/column.place", Group, 15, func(r findingRow) string { return r.place }),
			TextColumn("report/column.stands", Mark, 12, func(r findingRow) string { return r.stands }),
			TextColumn("report/column.finding", Title, 30, func(r findingRow) string { return r.text }),
			TextColumn("report/column.about", Detail, 11, func(r findingRow) string { return r.about }),
			TextColumn("report/column.found", Detail, 12, func(r findingRow) string { return r.found }),
			TextColumn("report/column.limit", Detail, 14, func(r findingRow) string { return r.limit }),
			TextColumn("report/column.why", Detail, 28, func(r findingRow) string { return r.why }),
			TextColumn("report/column.todo", Detail, 28, func(r findingRow) string { return r.remedy }),
			TextColumn("report/column.missing", Detail, 24, func(r findingRow) string { return r.missing }),
			TextColumn("report/column.risk", Aside, 60, func(r findingRow) string { return r.risk }),
			TextColumn("report/column.protects", Aside, 14, func(r findingRow) string { return r.protects }),
			TextColumn("report/column.sources", Aside, 18, func(r findingRow) string { return r.sources }),
			TextColumn("report/column.rule", Aside, 24, func(r findingRow) string { return r.rule }),
			TextColumn("report/column.decided", Fold, 40, func(r findingRow) string { return r.decided }),
		},
	}
}

// finding is one row for findings that are alike.
func (b *builder) finding(a *result.AreaResult, alike []*result.Finding) findingRow {
	f := alike[0]
	row := b.satisfied(a, f)
	missing := f.Missing
	if len(alike) > 1 {
		row.about, row.found = b.aboutEach(alike), ""
		for _, other := range alike[1:] {
			missing = append(missing[:len(missing):len(missing)], other.Missing...)
		}
	}
	if firm := b.firmness(f.Basis...); row.limit != "" && firm != "" {
		row.limit += " (" + firm + ")"
	}
	row.why, row.remedy, row.missing = f.Why, b.remedy(f), b.names(missing)
	row.risk, row.protects = b.risk(f.Failure), b.or("report/protects."+string(f.Protects), string(f.Protects))
	row.decided = decided(alike)
	return row
}

// satisfied is the row of a finding that asks nothing.
func (b *builder) satisfied(a *result.AreaResult, f *result.Finding) findingRow {
	return findingRow{
		tone: findingTone(f), place: place(a, f.Zone), stands: b.stands(f), text: f.Text, about: b.about(f), found: b.found(f),
		limit: f.Limit, sources: b.cite(f.Sources...), rule: f.Rule,
	}
}

// decided is what decided each of the findings.
func decided(alike []*result.Finding) string {
	var parts []string
	for _, f := range alike {
		parts = append(parts, f.Explanation)
	}
	return strings.Join(distinct(parts), "\n")
}

// remedy is what follows; of what is not settled it says so. How to lay tile is
// the plan's to say, and no instruction while the base is not settled.
func (b *builder) remedy(f *result.Finding) string {
	switch {
	case f.Remedy == "" || len(f.Permits) > 0:
		return ""
	case f.Outcome == result.NotSettled, f.Outcome == result.NotComputed:
		return b.say("report/findings.if_so", "remedy", f.Remedy)
	}
	return f.Remedy
}

// aboutEach lists the things that findings alike are about, each with its value.
func (b *builder) aboutEach(alike []*result.Finding) string {
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
func (b *builder) found(f *result.Finding) string {
	if f.Value == b.amount(quantity.Number, quantity.Everything) {
		return ""
	}
	return f.Value
}

// stands is the word for a finding's outcome. A rule that permits says
// 'possible' when it holds, a bare caution says 'noted'.
func (b *builder) stands(f *result.Finding) string {
	key := f.Outcome.String()
	switch {
	case f.Presumed:
		key = "presumed"
	case f.Outcome == result.Holds && len(f.Permits) > 0:
		key = "permits"
	case noted(f):
		key = "noted"
	}
	return b.say("report/outcome." + key)
}

func findingTone(f *result.Finding) Tone {
	switch f.Outcome {
	case result.Fails:
		return Urgent
	case result.NotSettled, result.NotComputed:
		if f.Presumed {
			return Urgent
		}
		return Waiting
	case result.Holds:
		return Settled
	}
	return Quiet
}

// about is the thing that the finding is about, where that is a listed one.
func (b *builder) about(f *result.Finding) string {
	if isUnnamed(f) {
		return b.say("report/findings.unnamed")
	}
	if p, ok := assembly(f); ok {
		return b.path(p)
	}
	return subject(f)
}

// assembly is the way to lay tile that the finding is about, where it is about one.
func assembly(f *result.Finding) (result.PathID, bool) { return result.ParsePath(subject(f)) }

// subject is without the zone that stands before it in a room of several.
func subject(f *result.Finding) string { return strings.TrimPrefix(f.Subject, f.Zone+".") }

func (b *builder) risk(f result.Failure) string {
	if f.Mode == "" {
		return ""
	}
	return b.say("report/findings.risk", "mode", f.Mode, "lb", f.LikelihoodBefore, "cb", f.ConsequenceBefore,
		"la", f.LikelihoodAfter, "ca", f.ConsequenceAfter)
}
