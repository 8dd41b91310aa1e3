package reports

import (
	"testing"

	"underfoot/assess"
	"underfoot/reports/internal/sample"
)

// with is the view of the sample with one more finding in its first room.
func with(f assess.Finding) *View {
	r := sample.Result()
	r.Areas[0].Findings = append(r.Areas[0].Findings, f)
	return NewView(r, Options{})
}

// A note on people or on what carries the floor is read with the troubles, not
// among what is in order.
func TestNotesThatWeighAreFindings(t *testing.T) {
	for protects, heading := range map[string]string{"people": "What follows", "structure": "What follows", "finish": ""} {
		v := with(assess.Finding{ID: "n", Rule: "n", Outcome: assess.Holds, Protects: protects,
			Text: "An invented note.", Remedy: "Ask an invented office."})
		row := rowWith(t, v, FindingsSection, "An invented note.")
		if _, asks := row["What follows"]; asks != (heading != "") {
			t.Errorf("%s: row %v", protects, row)
		}
		if row["How it stands"] != "noted" {
			t.Errorf("%s: %q, want noted", protects, row["How it stands"])
		}
	}
}

// How to lay tile is no instruction while the base is not settled, nor on a
// floor that is to be left alone.
func TestPermitInstructsOnlyWhereItHolds(t *testing.T) {
	for _, c := range []struct {
		zone    string
		outcome assess.FindingOutcome
	}{{"addition", assess.NotSettled}, {"old-part", assess.NotSettled}, {"old-part", assess.Fails}} {
		v := with(assess.Finding{ID: "p", Rule: "p", Zone: c.zone, Outcome: c.outcome, Protects: "finish",
			Text: "An invented base.", Remedy: "Fasten the invented board.", Permits: []assess.PathID{assess.BackerBoard}})
		if got := rowWith(t, v, FindingsSection, "An invented base.")["What follows"]; got != "" {
			t.Errorf("%s, %v: %q", c.zone, c.outcome, got)
		}
	}
}

// The plan's first step stands in the summary where it is work.
func TestFirstStepIsWork(t *testing.T) {
	z := assess.ZoneResult{Path: assess.Remove, Plan: []assess.PlanStep{{Path: assess.Remove, Text: "Take it up."}}}
	if got := firstStep(&z); got != "Take it up." {
		t.Errorf("%q", got)
	}
	z.Plan[0].Path = assess.FindOut
	if got := firstStep(&z); got != "" {
		t.Errorf("a question: %q", got)
	}
	z.Path, z.Plan[0].Path = assess.DirectBond, assess.DirectBond
	if got := firstStep(&z); got != "" {
		t.Errorf("a base: %q", got)
	}
}
