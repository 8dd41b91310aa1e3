package reports

import (
	"strconv"
	"strings"

	"underfoot/assess"
)

// unnamed reports a finding about what nobody has named yet.
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
			t.add(Waiting, place(a, a.Zones[i].ID), b.say("report/outcome."+assess.NotSettled.String()),
				b.say("report/findings.unnamed_row", "n", strconv.Itoa(o.rules)), "", "", "",
				b.say("report/findings.unnamed_why"), "", b.names(o.missing), "", "", "", "", "")
		}
	}
}
