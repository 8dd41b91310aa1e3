package rules

import (
	"testing"

	"underfoot/assess"
	"underfoot/assess/result"
	"underfoot/assess/schema"
)

// TestFoundAsbestosEndsThePlan: where a laboratory has found asbestos, nothing
// is planned behind the qualified person's word (29 CFR 1926.1101; 40 CFR 61 M).
func TestFoundAsbestosEndsThePlan(t *testing.T) {
	e := openUS(t)
	job, _ := readJob(t, e, "../testdata/cases/P01.yaml")
	set, err := e.Catalogue.Read(e.Catalogue.Find("layer.lab_result").Decl, "asbestos", 0)
	if err != nil {
		t.Fatal(err)
	}
	job.Areas[0].Zones[0].Lists[schema.ScopeLayer][0].Answers["layer.lab_result"] = assess.Answer{Set: set, Basis: assess.Document}
	z := e.Assess(job, job.Visited).Areas[0].Zones[0]
	if z.Verdict != result.Stop || len(z.Plan) != 1 || z.Plan[0].Path != result.TestOrAbate {
		t.Errorf("%v, plan %v", z.Verdict, z.Plan)
	}
}
