package data

import (
	"bytes"
	"encoding/json"
	"errors"
	"math"
	"strings"
	"testing"

	"underfoot/assess/message"
	"underfoot/assess/quantity"
	"underfoot/assess/result"
	"underfoot/assess/schema"
	"underfoot/reports/internal/sample"
)

func written(t *testing.T, r *result.Result, o Options) string {
	t.Helper()
	var b bytes.Buffer
	if err := Write(&b, r, o); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

// small is one room with one of everything that the contract names.
func small() *result.Result {
	address := sample.At("kitchen.main.joist.span")
	source := []result.Source{{ID: "S1", Title: "a <title>", Edition: "1", Known: "memory"}}
	return &result.Result{
		File: "a.yaml", Verdict: result.Hold,
		Areas: []result.AreaResult{{
			ID: "kitchen", Name: "Kitchen", Verdict: result.Hold,
			Zones: []result.ZoneResult{{
				ID: "main", Verdict: result.Hold, Path: result.FindOut,
				Plan: []result.PlanStep{{Path: result.FindOut, Text: "measure", Who: "owner",
					Quantities: []result.Quantity{{Text: message.Verbatim("screws"), Value: quantity.AtLeast(3), Unit: message.Verbatim("box")}}}},
				Paths: []result.PathStanding{{Path: result.Uncouple, State: result.PathWaiting, FindingIDs: []string{"r"}, Questions: []schema.Address{address}}},
			}},
			Findings: []result.Finding{
				{ID: "r", Rule: "r", Outcome: result.NotSettled, Protects: "bond", Text: "t", Missing: []schema.Address{address}, Sources: source},
				{ID: "q", Rule: "q", Outcome: result.Holds},
			},
			Checks: []result.Check{{ID: "joist.ratio_live", Outcome: result.CheckOpen, Value: quantity.AtLeast(300), Limit: quantity.Range{Lo: 360, Hi: 720},
				Dimension: quantity.Ratio, AtLeast: true, Margin: quantity.AtLeast(-0.5)}},
			Questions: []result.Question{{Address: address, Text: "How far?", How: "tape", Decides: []string{"uncouple"}}},
			Cautions:  []result.Caution{{ID: "c", Text: "mind", Sources: source}},
		}},
		Packs: []result.PackRef{{ID: "base", Edition: "1"}},
	}
}

// The document is a contract: names and order of the keys, null for an open
// end, no null lists, addresses without area and without a zone that is alone.
func TestWriteKeepsTheContract(t *testing.T) {
	source := `[{"id":"S1","title":"a <title>","edition":"1","known":"memory"}]`
	plan := `[{"path":"find-out","text":"measure","who":"owner","quantities":[{"text":"screws","value":{"low":3,"high":null},"unit":"box","note":""}]}]`
	paths := `[{"path":"uncouple","state":"waiting","because":["r"],"questions":["joist.span"]}]`
	want := `{"format":"underfoot.findings/1","file":"a.yaml","verdict":"hold","areas":[{"id":"kitchen","name":"Kitchen","verdict":"hold","path":"find-out",` +
		`"zones":[{"id":"main","verdict":"hold","path":"find-out","plan":` + plan + `,"paths":` + paths + `}],"plan":` + plan + `,"paths":` + paths + `,` +
		`"findings":[{"id":"r","rule":"r","subject":"","outcome":"not-settled","presumed":false,"protects":"bond","text":"t","why":"","remedy":"",` +
		`"value":"","limit":"","unit":"","missing":["joist.span"],"sources":` + source + `}],` +
		`"checks":[{"id":"joist.ratio_live","outcome":"open","value":{"low":300,"high":null},"limit":720,"unit":"L/x","margin":-0.5,"formula":"","missing":[],"sources":[]}],` +
		`"questions":[{"id":"joist.span","text":"How far?","how":"tape","decides":["uncouple"]}],"cautions":[{"id":"c","text":"mind","sources":` + source + `}]}],` +
		`"packs":[{"id":"base","edition":"1","local":false,"relaxes":[]}]}` + "\n"
	if got := written(t, small(), Options{}); got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
}

func TestAllAddsWhatHolds(t *testing.T) {
	if got := written(t, small(), Options{All: true}); strings.Count(got, `"outcome":"holds"`) != 1 {
		t.Errorf("the finding that holds is not there once: %s", got)
	}
}

func TestAddressesNameOneOfSeveralZones(t *testing.T) {
	got := written(t, sample.Result(), Options{})
	for _, want := range []string{`"missing":["old-part.joist.species","old-part.joist.grade"]`, `"id":"old-part.layer.l1.lab_result"`} {
		if !strings.Contains(got, want) {
			t.Errorf("%s is missing", want)
		}
	}
	if strings.Contains(got, "kitchen.old-part") {
		t.Error("an address names its area")
	}
}

func TestLeadingZoneSpeaksForTheRoom(t *testing.T) {
	r := sample.Result()
	r.Areas[0].Leading = 1
	var doc document
	if err := json.Unmarshal([]byte(written(t, r, Options{})), &doc); err != nil {
		t.Fatal(err)
	}
	if a := doc.Areas[0]; a.Path != "find-out" || len(a.Plan) != 1 || a.Plan[0].Path != "remove" {
		t.Errorf("room has path %s and plan %v", a.Path, a.Plan)
	}
}

func TestRefusedCheckGivesNoNumber(t *testing.T) {
	r := small()
	r.Areas[0].Checks[0].Outcome = result.CheckRefused
	if got := written(t, r, Options{}); !strings.Contains(got, `"value":{"low":null,"high":null},"limit":null,"unit":"L/x","margin":null`) {
		t.Errorf("a refusal gives a number: %s", got)
	}
}

func TestIndentIsTheSameDocument(t *testing.T) {
	plain, indented := written(t, sample.Result(), Options{All: true}), written(t, sample.Result(), Options{All: true, Indent: true})
	var b bytes.Buffer
	if err := json.Compact(&b, []byte(indented)); err != nil {
		t.Fatal(err)
	}
	if strings.TrimSpace(plain) != b.String() || strings.Count(plain, "\n") != 1 {
		t.Error("the indented document differs from the one on one line")
	}
}

func TestEmptyResultHasEmptyLists(t *testing.T) {
	want := `{"format":"underfoot.findings/1","file":"","verdict":"ready","areas":[],"packs":[]}` + "\n"
	if got := written(t, &result.Result{}, Options{}); got != want {
		t.Errorf("got %s", got)
	}
	got := written(t, &result.Result{Areas: []result.AreaResult{{}}}, Options{})
	if strings.Contains(got, "null") {
		t.Errorf("a list is null: %s", got)
	}
}

func TestBoundIsNilForNoNumber(t *testing.T) {
	for _, v := range []float64{math.Inf(1), math.Inf(-1), math.NaN()} {
		if bound(v) != nil {
			t.Errorf("%v is written as a number", v)
		}
	}
}

type full struct{}

func (full) Write([]byte) (int, error) { return 0, errors.New("device full") }

func TestWriteGivesTheWritersError(t *testing.T) {
	if err := Write(full{}, small(), Options{}); err == nil || !strings.Contains(err.Error(), "device full") {
		t.Errorf("got %v", err)
	}
}

func BenchmarkWrite(b *testing.B) {
	r := sample.Result()
	var out bytes.Buffer
	for b.Loop() {
		out.Reset()
		if err := Write(&out, r, Options{}); err != nil {
			b.Fatal(err)
		}
	}
	b.SetBytes(int64(out.Len()))
}
