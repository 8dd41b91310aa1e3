package structure

import (
	"strings"
	"testing"
)

// TestLimitsDifferByCountry: a hole is 1/3 of the depth in the International
// Residential Code 2018, R502.8.1, and 1/4 in the CMHC wood-frame guide.
func TestLimitsDifferByCountry(t *testing.T) {
	for region, want := range map[string]string{"us": "hole is at most 1/3", "ca": "hole is at most 1/4"} {
		r, ok := LimitsOf(region)
		if !ok || !strings.Contains(spoken(r.Texts), want) || r.Source.Title == "" {
			t.Errorf("%s: %+v", region, r)
		}
	}
	m := plain()
	m.Notched = "within-limits"
	if a := Analyze(m, Loads{}, BoundFor("ceramic", us), us); !strings.Contains(spoken(a.Notes), "1/3 of the depth across") || !a.Refusal.IsZero() {
		t.Errorf("%v", a.Notes)
	}
	if _, ok := LimitsOf("uk"); ok {
		t.Error("no rules were read for uk")
	}
}
