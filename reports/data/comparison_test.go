package data

import (
	"bytes"
	"strings"
	"testing"

	"underfoot/assess"
)

// The whole contract on one small comparison: keys in order, no list null.
func TestWriteComparison(t *testing.T) {
	old := &assess.Result{File: "may.yaml", Verdict: assess.Repair}
	now := &assess.Result{File: "june.yaml", Verdict: assess.Hold}
	was, is := assess.AreaResult{Verdict: assess.Repair}, assess.AreaResult{Verdict: assess.Hold}
	before := assess.Finding{ID: "deck-loose@d1", Rule: "deck-loose", Outcome: assess.Fails, Value: "loose"}
	at := assess.Address{Area: "bath", Zone: "main", Topic: "deck", Item: "d1", Field: "loose"}
	c := &assess.Comparison{Old: old, New: now, Areas: []assess.AreaComparison{{
		ID: "bath", Name: "Bath", Old: &was, New: &is,
		Zones: []assess.ZoneComparison{{ID: "main", New: &assess.ZoneResult{Verdict: assess.Hold, Path: assess.FindOut}}},
		Accept: []assess.Acceptance{{FindingChange: assess.FindingChange{Change: assess.Gone, Zone: "main", Old: &before},
			Looks: []assess.Look{{Address: at, Label: "Loose", Value: "no", Basis: assess.Seen}}}},
	}}, Answers: []assess.AnswerChange{{Address: at, Label: "Loose", Old: &assess.Said{Value: "yes"}}}}
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
