package data

import (
	"bytes"
	"strings"
	"testing"

	"underfoot/assess"
	"underfoot/assess/result"
	"underfoot/assess/schema"
)

// The whole contract on one small comparison: keys in order, no list null.
func TestWriteComparison(t *testing.T) {
	old := &result.Result{File: "may.yaml", Verdict: result.Repair}
	now := &result.Result{File: "june.yaml", Verdict: result.Hold}
	was, is := result.AreaResult{Verdict: result.Repair}, result.AreaResult{Verdict: result.Hold}
	before := result.Finding{ID: "deck-loose@d1", Rule: "deck-loose", Outcome: result.Fails, Value: "loose"}
	at := schema.Address{Area: "bath", Zone: "main", Topic: "deck", Item: "d1", Field: "loose"}
	c := &result.Comparison{Old: old, New: now, Areas: []result.AreaComparison{{
		ID: "bath", Name: "Bath", Old: &was, New: &is,
		Zones: []result.ZoneComparison{{ID: "main", New: &result.ZoneResult{Verdict: result.Hold, Path: result.FindOut}}},
		Accept: []result.Acceptance{{FindingChange: result.FindingChange{Change: result.Gone, Zone: "main", Old: &before},
			Inspections: []result.Inspection{{Address: at, Label: "Loose", Value: "no", Basis: assess.Seen}}}},
	}}, Answers: []result.AnswerChange{{Address: at, Label: "Loose", Old: &result.AnswerRow{Value: "yes"}}}}
	var b bytes.Buffer
	if err := WriteComparison(&b, c, Options{}); err != nil {
		t.Fatal(err)
	}
	want := `{"format":"underfoot.comparison/1","old":"may.yaml","new":"june.yaml","verdict":{"old":"repair","new":"hold"},` +
		`"areas":[{"id":"bath","name":"Bath","verdict":{"old":"repair","new":"hold"},` +
		`"zones":[{"id":"main","verdict":{"old":"","new":"hold"},"path":{"old":"","new":"find-out"}}],` +
		`"findings":[{"id":"deck-loose@d1","rule":"deck-loose","zone":"main","change":"gone","outcome":{"old":"fails","new":""},` +
		`"value":{"old":"loose","new":""},"text":"","remedy":"",` +
		`"accept":[{"address":"bath.main.deck.d1.loose","label":"Loose","how":"","value":"no","basis":"seen","missing":false,"firm":true}]}]}],` +
		`"added":[],"missing":[],"answers":[{"address":"bath.main.deck.d1.loose","label":"Loose","value":{"old":"yes","new":""}}]}`
	if got := strings.TrimSpace(b.String()); got != want {
		t.Errorf("written\n%s\nwant\n%s", got, want)
	}
}
