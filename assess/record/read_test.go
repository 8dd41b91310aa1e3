package record_test

import (
	"bytes"
	"slices"
	"testing"

	"underfoot/assess"
	"underfoot/assess/logic"
	"underfoot/assess/quantity"
	"underfoot/assess/schema"
)

// TestCases: each scenario reads without a warning, and untouched gives the
// same bytes.
func TestCases(t *testing.T) {
	for _, path := range cases(t) {
		d, data := load(t, path)
		if w := d.Warnings(); len(w) > 0 {
			t.Errorf("%s: %v", path, w)
		}
		if out, err := d.Bytes(); err != nil || !bytes.Equal(out, data) {
			t.Errorf("%s: untouched, but other bytes (%v)", path, err)
		}
	}
}

const kitchen = `# a comment of my own
format: underfoot.assessment/1
region: us
units: us
visited: 2026-05-04
answers: {site.year_built: 1960s}
areas:
  - id: kitchen
    name: Kitchen, upstairs
    answers: {room.use: kitchen, tile.kind: porcelain}
    zones:
      - id: main
        answers:
          zone.base: joists
          # with the long tape
          joist.depth: {value: 9 to 9.25 in, basis: measured, with: tape, on: 2026-05-04, photos: [p1.jpg, p2.jpg]}
          joist.species: not sure
          joist.trouble: none
          joist.cut: true
          danger: {value: none, basis: seen}
          water: could not see
        layer:
          complete: not sure
          items:
            - {id: l1, layer.kind: [sheet-vinyl, linoleum], layer.year: {value: 1998, basis: document}}
        deck: none
        readings:
          flatness: [{at: [0, 0], gap: 1/8 in}]
`

func TestRead(t *testing.T) {
	job := parse(t, kitchen).Job()
	for _, c := range []struct {
		address string
		want    assess.Answer
	}{
		{"site.year_built", assess.Answer{Text: "1960s", Set: schema.Set{Range: quantity.Range{Lo: 1960, Hi: 1969}}}},
		{"kitchen.main.joist.depth", assess.Answer{Text: "9 to 9.25 in", Set: schema.Set{Range: quantity.Range{Lo: 9, Hi: 9.25}},
			Basis: assess.Measured, With: "tape", On: "2026-05-04", Photos: []string{"p1.jpg", "p2.jpg"}}},
		{"joist.species", assess.Answer{Reply: assess.NotSure}},
		{"joist.notched", assess.Answer{Text: "none", Set: schema.Set{Mask: 1}}},
		{"joist.insects", assess.Answer{Text: "no", Set: schema.SetNo}},
		{"joist.cut", assess.Answer{Text: "yes", Set: schema.SetYes}},
		{"danger.gas", assess.Answer{Text: "no", Set: schema.SetNo, Basis: assess.Seen}},
		{"water.mould", assess.Answer{Reply: assess.CouldNotSee}},
		{"layer.l1.kind", assess.Answer{Text: "sheet-vinyl, linoleum", Set: schema.Set{Mask: 1 | 1<<5}}},
		{"layer.complete", assess.Answer{Reply: assess.NotSure}},
		{"deck.complete", assess.Answer{Text: "yes", Set: schema.SetYes}},
	} {
		at, err := job.Locate(address(t, c.address))
		if err != nil {
			t.Fatal(err)
		}
		if got, _ := job.Answer(at); !equal(got, c.want) {
			t.Errorf("%s: %+v, want %+v", c.address, got, c.want)
		}
	}
	zone := job.Areas[0].Zones[0]
	if _, said := zone.Answers["water.mould_area"]; said {
		t.Error("water.mould_area is no member of its family, but was answered by it")
	}
	if job.Areas[0].Name != "Kitchen, upstairs" {
		t.Errorf("name %q", job.Areas[0].Name)
	}
	if zone.ListClosed(schema.ScopeDeck) != logic.Yes || zone.ListClosed(schema.ScopeLayer) != logic.Open || zone.ListClosed(schema.ScopeCrack) != logic.Open {
		t.Error("the lists are not as closed as they say")
	}
}

// TestReadJSON: the same record as JSON says the same.
func TestReadJSON(t *testing.T) {
	d := parse(t, `{"format": "underfoot.assessment/1", "areas": [{"id": "hall", "zones": [{"id": "main",
  "answers": {"joist.known_ratio": 480, "joist.cut": false, "danger": "none"}, "crack": "none"}]}]}`)
	job := d.Job()
	zone := job.Areas[0].Zones[0]
	if zone.Answers["joist.known_ratio"].Set.Range != quantity.Point(480) || zone.Answers["joist.cut"].Set != schema.SetNo {
		t.Errorf("%+v", zone.Answers)
	}
}

// TestJSONAsOtherProgramsWriteIt: a record on one line, with tabs, or with a
// character in two escapes reads like any other.
func TestJSONAsOtherProgramsWriteIt(t *testing.T) {
	for text, want := range map[string]string{
		`{"format":"underfoot.assessment/1","areas":[{"id":"hall","name":"a\/b: c"}]}`:                              "a/b: c",
		"{\n\t\"format\": \"underfoot.assessment/1\",\r\n\t\"areas\": [\n\t\t{\"id\": \"hall\", \"name\": \"x\"}]}": "x",
		`{"format": "underfoot.assessment/1", "areas": [{"id": "hall", "name": "gr\u00fcn \ud83d\uDE00 \\ud83d"}]}`: `grün 😀 \ud83d`,
	} {
		if got := parse(t, text).Job().Areas[0].Name; got != want {
			t.Errorf("%s reads as %q, want %q", text, got, want)
		}
	}
}

// TestWarnings: what is not known is kept, of no effect, and said.
func TestWarnings(t *testing.T) {
	warned(t, "format: underfoot.assessment/1\nclient: Invented Person\nregion:\nareas:\n  - id: hall\n    answers: {room.colour_of_walls: green, room.use: }\n",
		"record.yaml:2:1", "record.yaml:3:1", "record.yaml:6:15", "record.yaml:6:54")
}

// TestListSaidNotToApply: a list that does not apply should name nothing.
func TestListSaidNotToApply(t *testing.T) {
	zone := "format: underfoot.assessment/1\nareas:\n  - id: hall\n    zones:\n      - id: main\n        crack:\n"
	warned(t, zone+"          complete: does not apply\n          items: [{id: c1}]\n", "record.yaml:7:11")
	warned(t, zone+"          complete: does not apply\n")
	warned(t, zone+"          complete: not sure\n          items: [{id: c1}]\n")
}

// warned tests the places that reading warns of.
func warned(t *testing.T, text string, want ...string) {
	t.Helper()
	var places []string
	for _, w := range parse(t, text).Warnings() {
		places = append(places, w.Place)
	}
	if !slices.Equal(places, want) {
		t.Errorf("%v, want %v", places, want)
	}
}
