package reports

import (
	"strings"
	"testing"

	"underfoot/assess"
	"underfoot/assess/quantity"
	"underfoot/assess/result"
	"underfoot/assess/schema"
	"underfoot/reports/internal/sample"
)

// twoVisits is an invented floor: the joists are cured, the sheet is gone, a
// weight is still not computed, and the panel has come loose.
func twoVisits() *result.Comparison {
	old, now := sample.Result(), sample.Result()
	finding := func(r *result.Result, rule string) *result.Finding {
		for i := range r.Areas[0].Findings {
			if f := &r.Areas[0].Findings[i]; f.Rule == rule {
				return f
			}
		}
		panic("no finding of " + rule)
	}
	cured := *finding(now, "joist-too-limber")
	cured.Outcome, cured.Text, cured.Value, cured.Missing = result.Holds, "The joists are stiff enough by the answers given.", "L/480", nil
	loose := result.Finding{ID: "deck-loose", Rule: "deck-loose", Zone: "addition", Outcome: result.Fails, Text: "The panel is loose.", Remedy: "Have it refastened."}
	at := func(text string) schema.Address {
		a, err := schema.ParseAddress(text)
		if err != nil {
			panic(err)
		}
		return a
	}
	changes := []result.FindingChange{
		{Change: result.New, Zone: "addition", New: &loose},
		{Change: result.Cured, Zone: "old-part", Old: finding(old, "joist-too-limber"), New: &cured},
		{Change: result.Gone, Zone: "old-part", Old: finding(old, "suspect-resilient")},
	}
	area := result.AreaComparison{ID: old.Areas[0].ID, Name: "Invented kitchen", Old: &old.Areas[0], New: &now.Areas[0], Findings: changes}
	for i := range old.Areas[0].Zones {
		area.Zones = append(area.Zones, result.ZoneComparison{ID: old.Areas[0].Zones[i].ID, Old: &old.Areas[0].Zones[i], New: &now.Areas[0].Zones[i]})
	}
	looks := [][]result.Inspection{
		{{Address: at("kitchen.addition.deck.d1.loose"), Label: "Deck loose", Value: "yes", Basis: assess.Told}},
		{{Address: at("kitchen.old-part.joist.species"), Label: "Wood species", Value: "hem-fir", Basis: assess.Document},
			{Address: at("kitchen.old-part.joist.span"), Label: "Joist span", How: "Measure from below.", Missing: true}},
		nil,
	}
	for i, c := range changes {
		area.Accept = append(area.Accept, result.Acceptance{FindingChange: c, Inspections: looks[i]})
	}
	return &result.Comparison{Old: old, New: now, Areas: []result.AreaComparison{area}, Missing: []string{"cellar"},
		Answers: []result.AnswerChange{{Address: at("kitchen.old-part.joist.species"), Label: "Wood species", New: &result.AnswerRow{Value: "hem-fir"}}}}
}

func TestComparisonSaysWhatHasChanged(t *testing.T) {
	v := NewComparison(twoVisits(), Options{Units: quantity.US})
	for _, c := range []struct{ section, row, column, want string }{
		{SummarySection, "cellar", "Second visit", "not in this record"},
		{ChangesSection, "The panel is loose.", "What became of it", "new"},
		{ChangesSection, "The panel is loose.", "First visit", "no such finding"},
		{ChangesSection, "The joists may or may not be stiff enough for tile.", "Second visit", "The joists are stiff enough"},
		{ChangesSection, "The joists may or may not be stiff enough for tile.", "First visit", "L/312 to L/439"},
		{ChangesSection, "The sheet floor is presumed", "What became of it", "gone"},
		{AnswersSection, "Wood species", "First visit", "not answered"},
		{AcceptanceSection, "The panel is loose.", "To be seen or measured", "Deck loose (d1): yes (told); to be seen or measured"},
		{AcceptanceSection, "The panel is loose.", "What follows", "Have it refastened."},
		{AcceptanceSection, "The joists may or may not", "To be seen or measured", "Wood species: hem-fir (from a paper); see the paper"},
		{AcceptanceSection, "The joists may or may not", "To be seen or measured", "Joist span: not answered. Measure from below."},
		{AcceptanceSection, "The sheet floor is presumed", "To be seen or measured", "The paper of the licensed person"},
	} {
		if got := rowWith(t, v, c.section, c.row)[c.column]; !strings.Contains(got, c.want) {
			t.Errorf("%s, %s, %s: %q does not say %q", c.section, c.row, c.column, got, c.want)
		}
	}
}

// What the second visit leaves open is accepted under a condition.
func TestAcceptanceOfWhatIsNotSettled(t *testing.T) {
	c := twoVisits()
	c.Areas[0].Accept[0].New.Outcome = result.NotSettled
	row := rowWith(t, NewComparison(c, Options{Units: quantity.US}), AcceptanceSection, "The panel is loose.")
	if want := "If it is so: Have it refastened."; row["What follows"] != want {
		t.Errorf("%q, want %q", row["What follows"], want)
	}
}

// Two visits without any finding say so, rather than showing an empty section.
func TestComparisonOfNothing(t *testing.T) {
	c := twoVisits()
	c.Areas[0].Findings, c.Areas[0].Accept, c.Answers = nil, nil, nil
	v := NewComparison(c, Options{Units: quantity.US})
	if s := v.Section(ChangesSection); len(s.Lead) != 1 || !strings.Contains(s.Lead[0].Text, "Neither record") {
		t.Errorf("the section says %+v", s)
	}
	if v.Section(AcceptanceSection) != nil {
		t.Error("an acceptance list without a line")
	}
}
