package reports

import (
	"testing"

	"underfoot/assess/result"
	"underfoot/reports/internal/sample"
)

// with is the view of the sample with one more finding in its first room.
func with(f result.Finding) *View {
	r := sample.Result()
	r.Areas[0].Findings = append(r.Areas[0].Findings, f)
	return NewView(r, Options{})
}

func note(zone, subject string) result.Finding {
	return result.Finding{ID: "n", Rule: "n", Zone: zone, Subject: subject, Outcome: result.Holds, Protects: "finish",
		Text: "An invented note.", Remedy: "Ask an invented office."}
}

// A note is read with the findings, behind all troubles, and not among what is
// in order.
func TestNotesStandBehindTroubles(t *testing.T) {
	v := with(note("addition", ""))
	if row := rowWith(t, v, FindingsSection, "An invented note."); row["How it stands"] != "noted" || row["What follows"] == "" {
		t.Errorf("row %v", row)
	}
	table := v.Section(FindingsSection).Parts[0].Table
	behind := false
	for _, row := range table.Rows {
		if row.Cells[table.Find(Group)].Text != rowWith(t, v, FindingsSection, "An invented note.")["Room"] {
			continue
		}
		isNote := row.Cells[table.Find(Mark)].Text == "noted"
		if behind && !isNote {
			t.Errorf("%q stands behind a note", row.Cells[table.Find(Title)].Text)
		}
		behind = isNote
	}
}

// What a rule that bars says when it does not is no note.
func TestBarNotRaisedIsNoNote(t *testing.T) {
	f := note("addition", "")
	f.Bars = []result.PathID{result.DirectBond}
	if row := rowWith(t, with(f), FindingsSection, f.Text); row["How it stands"] != "not raised" {
		t.Errorf("row %v", row)
	}
}

// A note on a way to lay tile is not told of a floor that is to be left alone,
// also where the room's zones stand before what it is about.
func TestNoteOnABaseOfAStoppedFloor(t *testing.T) {
	for subject, told := range map[string]bool{"uncouple": false, "old-part.uncouple": false, "": true} {
		v := with(note("old-part", subject))
		if got := contains(v, "An invented note."); got != told {
			t.Errorf("about %q: told %v, want %v", subject, got, told)
		}
	}
}

// Where a finding about two bases is idle for the first, it is told of the other.
func TestIdleBaseHidesNoOther(t *testing.T) {
	r := sample.Result()
	a := &r.Areas[0]
	z := &a.Zones[1]
	z.Path = result.DirectBond
	z.Paths = []result.PathStanding{{Path: result.Uncouple, State: result.PathRuledOut}, {Path: result.DirectBond, State: result.PathOpen}}
	a.Findings = append(a.Findings, note(z.ID, "uncouple"), note(z.ID, "direct-bond"))
	row := rowWith(t, NewView(r, Options{}), FindingsSection, "An invented note.")
	if want := "tile bonded straight to the base"; row["About"] != want {
		t.Errorf("about %q, want %q", row["About"], want)
	}
}

// How to lay tile is no instruction while the base is not settled, and what an
// unsettled trouble asks for says so.
func TestRemedyOfWhatIsNotSettled(t *testing.T) {
	for _, outcome := range []result.FindingOutcome{result.NotSettled, result.NotComputed} {
		f := result.Finding{ID: "p", Rule: "p", Zone: "addition", Outcome: outcome, Protects: "finish",
			Text: "An invented base.", Remedy: "Fasten the invented board.", Calls: result.Level}
		if got := rowWith(t, with(f), FindingsSection, f.Text)["What follows"]; got != "If it is so: Fasten the invented board." {
			t.Errorf("a trouble, %v: %q", outcome, got)
		}
		f.Calls, f.Permits = result.NoPath, []result.PathID{result.BackerBoard}
		if got := rowWith(t, with(f), FindingsSection, f.Text)["What follows"]; got != "" {
			t.Errorf("a permit, %v: %q", outcome, got)
		}
	}
}

// A floor without findings says so, and so does a print that leaves all out.
func TestListOfNothingSaysSo(t *testing.T) {
	look := result.Finding{ID: "l", Rule: "l", Outcome: result.NotSettled, Policy: "verify", Text: "An invented look."}
	for want, findings := range map[string][]result.Finding{
		"No rule found trouble or an open point.":                                                      nil,
		"No rule found trouble. What is still open holds nothing up; it is looked at before the work.": {look},
		"": {look, note("", "")},
	} {
		r := sample.Result()
		for i := range r.Areas {
			r.Areas[i].Findings = nil
		}
		r.Areas[0].Findings = findings
		got := ""
		if lead := NewView(r, Options{}).Section(FindingsSection).Lead; len(lead) > 0 {
			got = lead[0].Text
		}
		if got != want {
			t.Errorf("%d findings: %q, want %q", len(findings), got, want)
		}
	}
}

// The plan's first step stands in the summary where it is work.
func TestFirstStepIsWork(t *testing.T) {
	z := result.ZoneResult{Path: result.Remove, Plan: []result.PlanStep{{Path: result.Remove, Text: "Take it up."}}}
	if got := firstStep(&z); got != "Take it up." {
		t.Errorf("%q", got)
	}
	z.Plan[0].Path = result.FindOut
	if got := firstStep(&z); got != "" {
		t.Errorf("a question: %q", got)
	}
	z.Path, z.Plan[0].Path = result.DirectBond, result.DirectBond
	if got := firstStep(&z); got != "" {
		t.Errorf("a base: %q", got)
	}
}
