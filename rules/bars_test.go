package rules

import (
	"testing"

	"underfoot/assess/result"
)

// TestBarOfOneBaseNamesIt: a rule that bars the base that it looks at says which,
// also where it is not raised; a report would else take it for a mere note.
func TestBarOfOneBaseNamesIt(t *testing.T) {
	e := openUS(t)
	job, _ := readJob(t, e, "../testdata/cases/P01.yaml")
	told := 0
	for _, f := range e.Assess(job, job.Visited).Areas[0].Findings {
		base, ok := result.ParsePath(f.Subject)
		if f.Rule != "height-short" || !ok {
			continue
		}
		told++
		if len(f.Bars) != 1 || f.Bars[0] != base {
			t.Errorf("%s bars %v", f.ID, f.Bars)
		}
	}
	if told == 0 {
		t.Error("no finding about a base")
	}
}
