package rules

import (
	"strings"
	"testing"

	"underfoot/assess"
	"underfoot/assess/message"
	"underfoot/assess/result"
	"underfoot/assess/schema"
)

// What decides a finding is told with its values, and only the branches that do.
func TestWhy(t *testing.T) {
	e := openUS(t)
	job, _ := readJob(t, e, "../testdata/cases/P05.yaml")
	for _, tt := range []struct {
		id      string
		ids     string // of the findings found
		says    string
		outcome result.FindingOutcome // of the last
	}{
		{"asbestos-presumed-layer", "asbestos-presumed-layer@l1 asbestos-presumed-layer@l2", "Year it was laid (1976) is at most 1980: yes", result.Fails},
		{"asbestos-presumed-layer@l1", "asbestos-presumed-layer@l1", "Year it was laid (1998) is at most 1980: no", result.Holds},
		{"asbestos-presumed-layer@main.l2", "asbestos-presumed-layer@l2", "Sheet vinyl", result.Fails},
		{"asbestos-presumed-layer@l3", "", "", 0},
		{"crack-step-or-wide", "", "", 0}, // no crack is named, and joists ask for none
		{"no-such-rule", "", "", 0},
	} {
		var ids, says []string
		reasons := e.Judge(job, job.Visited).Why(tt.id)
		for _, r := range reasons {
			ids = append(ids, r.Finding.ID)
			says = append(says, lines(message.English(), r.Conditions))
		}
		if got := strings.Join(ids, " "); got != tt.ids || !strings.Contains(strings.Join(says, "\n"), tt.says) {
			t.Errorf("%s: found %q, decided by %q; want %q, %q", tt.id, got, says, tt.ids, tt.says)
		}
		if n := len(reasons); n > 0 && reasons[n-1].Finding.Outcome != tt.outcome {
			t.Errorf("%s: %s, want %s", tt.id, reasons[n-1].Finding.Outcome, tt.outcome)
		}
	}
}

// A layer that comes out and items that nobody has named say so themselves.
func TestWhySaysWhatNoConditionSays(t *testing.T) {
	e := openUS(t)
	job, _ := readJob(t, e, "../testdata/cases/P06.yaml")
	zone := &job.Areas[0].Zones[0]
	zone.Lists[schema.ScopeLayer][0].Answers["layer.coming_out"] = assess.Answer{Set: schema.SetYes, Text: "yes"}
	delete(zone.Answers, "layer.complete")
	var gone, rest bool
	for _, r := range e.Judge(job, job.Visited).Why("layer-never-a-base") {
		gone, rest = gone || r.Gone, rest || r.Rest
	}
	if !gone || !rest {
		t.Errorf("gone %t, rest %t; want both", gone, rest)
	}
}

// Explained, every finding that asks something of the reader says why, in every
// scenario, and nothing else of the result changes.
func TestExplain(t *testing.T) {
	e := openUS(t)
	for _, name := range []string{"P05", "P10", "P17", "P21"} {
		job, _ := readJob(t, e, "../testdata/cases/"+name+".yaml")
		r := e.Judge(job, job.Visited).Explained()
		for _, f := range r.Areas[0].Findings {
			asks := f.Outcome < result.Holds && !strings.HasSuffix(f.Subject, "rest")
			if (f.Explanation != "") != asks {
				t.Errorf("%s: %s (%s) is decided by %q", name, f.ID, f.Outcome, f.Explanation)
			}
		}
	}
}
