package reports

import (
	"strconv"
	"strings"

	"underfoot/assess/result"
	"underfoot/assess/schema"
)

// isUnnamed reports a finding about what nobody has named yet.
func isUnnamed(f *result.Finding) bool {
	return f.Subject == "rest" || strings.HasSuffix(f.Subject, ".rest")
}

// unnamed is one line a zone for the findings about things that nobody has
// named, with the answers that would close the lists.
func (b *builder) unnamed(a *result.AreaResult) []findingRow {
	type open struct {
		rules   int
		missing []schema.Address
	}
	zones := map[string]*open{}
	for i := range a.Findings {
		f := &a.Findings[i]
		if f.Outcome != result.NotSettled || !isUnnamed(f) || f.Policy != result.PolicyHold {
			continue
		}
		if zones[f.Zone] == nil {
			zones[f.Zone] = &open{}
		}
		zones[f.Zone].rules++
		zones[f.Zone].missing = append(zones[f.Zone].missing, f.Missing...)
	}
	var rows []findingRow
	for i := range a.Zones {
		if o := zones[a.Zones[i].ID]; o != nil {
			rows = append(rows, findingRow{
				tone: Waiting, place: place(a, a.Zones[i].ID), stands: b.say("report/outcome." + result.NotSettled.String()),
				text: b.say("report/findings.unnamed_row", "n", strconv.Itoa(o.rules)),
				why:  b.say("report/findings.unnamed_why"), missing: b.names(o.missing),
			})
		}
	}
	return rows
}
