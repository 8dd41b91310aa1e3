package figure

import (
	"slices"
	"testing"
)

// TestEveryRegionHasAPractice: with wood that the tables have, and a source
// wherever something was read.
func TestEveryRegionHasAPractice(t *testing.T) {
	for _, region := range Regions {
		p := PracticeOf(region)
		if !slices.Contains(p.Regions, region) {
			t.Errorf("%s has the practice of %v", region, p.Regions)
		}
		if _, ok := LumberValue(p.NewSpecies, p.NewGrade, "", Stiffness); !ok {
			t.Errorf("%s: no table has %s %s", region, p.NewSpecies, p.NewGrade)
		}
		if whole := len(p.Limits.Source().Faults()) == 0; whole != (len(p.Limits.Names) > 0) {
			t.Errorf("%s: limits %v with the source %+v", region, p.Limits.Names, p.Limits.Source())
		}
	}
	if p := PracticeOf("atlantis"); !slices.Contains(p.Regions, "other") {
		t.Errorf("a region that is not known has the practice of %v", p.Regions)
	}
}

// TestMethodsHaveTheirSource: every row of methods.csv is whole, and an id that
// is not there is a fault.
func TestMethodsHaveTheirSource(t *testing.T) {
	if m := Method("beam"); m.Title != "Wood Handbook FPL-GTR-190" || m.ID != "" {
		t.Errorf("%+v", m)
	}
	defer func() {
		if recover() == nil {
			t.Error("an unknown method has a source")
		}
	}()
	Method("nothing")
}
