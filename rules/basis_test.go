package rules

import "testing"

// TestLimitSaysHowThisRegionKnowsIt: the year of 29 CFR 1926.1101 was read; that
// another region's year is a choice of this program is not said of it.
func TestLimitSaysHowThisRegionKnowsIt(t *testing.T) {
	e := openUS(t)
	job, _ := readJob(t, e, "../testdata/cases/P04.yaml")
	for _, f := range e.Assess(job, job.Visited).Areas[0].Findings {
		if f.Rule == "asbestos-presumed-layer" && f.Limit == "1980" {
			if len(f.Basis) != 1 || f.Basis[0].Known != "lookup" {
				t.Errorf("the limit rests on %v", f.Basis)
			}
			return
		}
	}
	t.Error("no finding of the presumed years")
}
