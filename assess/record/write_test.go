package record_test

import (
	"encoding/json"
	"reflect"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"underfoot/assess"
	"underfoot/assess/quantity"
	"underfoot/assess/record"
	"underfoot/assess/schema"
)

// bytesOf is the document as a file, read back to the same job.
func bytesOf(t testing.TB, d *record.Document) string {
	t.Helper()
	out, err := d.Bytes()
	if err != nil {
		t.Fatal(err)
	}
	return string(out)
}

// TestRoundTrip: whatever is done to a record, its bytes read back as the job
// that it holds, and writing them again changes nothing.
func TestRoundTrip(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		d := record.New(values(), "us", quantity.US, "2026-05-04")
		if rapid.Bool().Draw(rt, "from a file") {
			d = parse(t, kitchen)
		}
		for range 2 {
			changed(rt, d, 12)
			if rapid.Bool().Draw(rt, "rearranged") {
				rearrange(rt, d)
				changed(rt, d, 2)
			}
			out, err := d.Bytes()
			if err != nil {
				rt.Fatal(err)
			}
			back, err := record.Read(out, "record.yaml", values())
			if err != nil {
				rt.Fatalf("%v\n%s", err, out)
			}
			if got, want := jobText(back.Job()), jobText(d.Job()); got != want {
				rt.Fatalf("read back as\n%s\nwant\n%s\nfrom\n%s", got, want, out)
			}
			d = back
		}
	})
}

// jobText is everything that a job says, in a form to compare and to read.
func jobText(j *assess.Job) string {
	out, err := json.MarshalIndent(describe(j), "", " ")
	if err != nil {
		panic(err)
	}
	return string(out)
}

// describe drops what makes no difference: empty maps and empty lists.
func describe(j *assess.Job) any {
	type thing map[string]any
	answers := func(as assess.Answers) thing {
		out := thing{}
		for name, a := range as {
			out[name] = []any{a.Reply, a.Text, a.Basis, a.With, a.Note, a.On, strings.Join(a.Photos, "|")}
		}
		return out
	}
	var areas []thing
	for _, a := range j.Areas {
		var zones []thing
		for _, z := range a.Zones {
			zone := thing{"id": z.ID, "answers": answers(z.Answers)}
			for _, list := range schema.ListScopes {
				var items []thing
				for _, it := range z.Lists[list] {
					items = append(items, thing{"id": it.ID, "answers": answers(it.Answers)})
				}
				zone[list.String()] = items
			}
			zones = append(zones, zone)
		}
		areas = append(areas, thing{"id": a.ID, "name": a.Name, "answers": answers(a.Answers), "zones": zones})
	}
	return thing{"header": []any{j.Region, j.Units, j.Visited}, "answers": answers(j.Answers), "areas": areas}
}

// TestSurvives: after a change, every comment, unknown key and untouched
// answer is still there, as it was written.
func TestSurvives(t *testing.T) {
	const file = `# who wrote this

# about the format
format: underfoot.assessment/1
client: {name: Invented Person} # not ours
visited: 2026-05-04
region: us
units: us
areas: # the rooms
  # first room
  - id: kitchen
    paint: green
    zones:
      - answers:
          joist.span: 12 ft # with the tape
          # from below
          zone.base: joists
          danger: none
          water:
        id: main
        layer: none
        crack:
          items:
            - {id: c1, crack.step: no, marked: blue}
        readings: {flatness: [{at: [0, 0], gap: 1/8 in}]}
# the end
`
	const want = `# yaml-language-server: $schema=underfoot.schema.json
# who wrote this

# about the format
format: underfoot.assessment/1
region: us
units: us
visited: 2026-05-04
areas: # the rooms
  # first room
  - id: kitchen
    zones:
      - id: main
        answers:
          danger: none
          # from below
          zone.base: joists
          joist.spacing: {value: 16 in, basis: measured, with: tape}
          joist.span: 12 ft # with the tape
          water:
        layer: none
        crack:
          items:
            - {id: c1, crack.step: no, marked: blue}
            - id: c2
              crack.growing: not sure
        readings: {flatness: [{at: [0, 0], gap: 1/8 in}]}
    paint: green
# the end

client: {name: Invented Person} # not ours
`
	d := parse(t, file)
	for addr, ans := range map[string]assess.Answer{
		"joist.spacing":    {Text: "16 in", Basis: assess.Measured, With: "tape"},
		"crack.c2.growing": {Reply: assess.NotSure},
	} {
		if err := d.Put(address(t, addr), ans); err != nil {
			t.Fatal(err)
		}
	}
	if got := bytesOf(t, d); got != want {
		t.Errorf("got:\n%s\nwant:\n%s", got, want)
	}
}

// TestFamilies: what was answered as a whole stays so while that is true.
func TestFamilies(t *testing.T) {
	head := "format: underfoot.assessment/1\nareas:\n  - id: hall\n    zones:\n      - id: main\n        answers:\n"
	yes, notched := assess.Answer{Text: "yes"}, assess.Answer{Text: "within-limits"}
	for _, c := range []struct {
		name, before string
		act          func(*record.Document) error
		want, never  string
	}{
		{"one of them differs", "          danger: none\n", func(d *record.Document) error { return d.Put(address(t, "danger.gas"), yes) },
			"          danger: none\n          danger.gas: yes\n", "danger.burning"},
		{"one of them is taken away", "          danger: none\n", func(d *record.Document) error {
			d.Forget(address(t, "hall.main.danger.gas"))
			return nil
		}, "          danger.burning: no\n", "danger: none"},
		{"answered as a whole", "          zone.base: joists\n", func(d *record.Document) error { return d.PutFamily("", "", "joist.trouble", assess.Answer{}) },
			"          joist.trouble: none\n", "joist.cut"},
		{"with what is known of it", "          zone.base: joists\n", func(d *record.Document) error {
			return d.PutFamily("hall", "main", "water", assess.Answer{Basis: assess.Told})
		}, "          water: {value: none, basis: told}\n", "water.leak"},
		{"its own address beside it", "          joist.trouble: none\n          joist.notched: none\n", func(d *record.Document) error {
			return d.Put(address(t, "joist.notched"), notched)
		}, "          joist.trouble: none\n          joist.notched: within-limits\n", "joist.cut"},
	} {
		d := parse(t, head+c.before)
		if err := c.act(d); err != nil {
			t.Fatal(c.name, err)
		}
		if got := bytesOf(t, d); !strings.Contains(got, c.want) || strings.Contains(got, c.never) {
			t.Errorf("%s:\n%s", c.name, got)
		}
	}
}

// TestJSONStaysJSON: a record that came as JSON is written as JSON.
func TestJSONStaysJSON(t *testing.T) {
	d := parse(t, `{"format": "underfoot.assessment/1", "size": 1.50, "sure": true, "areas": [{"id": "hall"}]}`)
	if err := d.Put(address(t, "joist.span"), assess.Answer{Text: `12' 6"`}); err != nil {
		t.Fatal(err)
	}
	var got map[string]any
	out := bytesOf(t, d)
	if err := json.Unmarshal([]byte(out), &got); err != nil {
		t.Fatalf("%v\n%s", err, out)
	}
	want := map[string]any{"format": record.Format, "size": 1.5, "sure": true, "areas": []any{map[string]any{"id": "hall",
		"zones": []any{map[string]any{"id": "main", "answers": map[string]any{"joist.span": `12' 6"`}}}}}}
	if !reflect.DeepEqual(got, want) || !strings.Contains(out, "1.50") {
		t.Errorf("%s", out)
	}
}

func TestRename(t *testing.T) {
	d := parse(t, kitchen)
	if err := d.RenameArea("kitchen", "cook-room", "Cook room"); err != nil {
		t.Fatal(err)
	}
	out := bytesOf(t, d)
	for _, want := range []string{"- id: cook-room\n    name: Cook room\n", "# with the long tape", "flatness"} {
		if !strings.Contains(out, want) {
			t.Errorf("%q is missing:\n%s", want, out)
		}
	}
}

// TestUnitsKeepTheirMeaning: what metric units would read otherwise is written anew.
func TestUnitsKeepTheirMeaning(t *testing.T) {
	d := parse(t, kitchen)
	before := d.Job()
	if err := d.SetHeader("", "mm", ""); err != nil {
		t.Fatal(err)
	}
	after := parse(t, bytesOf(t, d)).Job()
	name := "joist.depth"
	if got, want := after.Areas[0].Zones[0].Answers[name].Set, before.Areas[0].Zones[0].Answers[name].Set; got != want {
		t.Errorf("%v, want %v", got, want)
	}
}

func TestRefused(t *testing.T) {
	d := parse(t, kitchen)
	for name, err := range map[string]error{
		"no such question":  d.Put(schema.Address{Topic: "joist", Field: "spann"}, assess.Answer{Text: "12 ft"}),
		"derived":           d.Put(address(t, "layer.l1.laid"), assess.Answer{Text: "1970"}),
		"which layer":       d.Put(address(t, "layer.kind"), assess.Answer{Text: "cork"}),
		"no item here":      d.Put(address(t, "layer.l1.complete"), assess.Answer{Text: "yes"}),
		"no such area":      d.Put(address(t, "attic.room.use"), assess.Answer{Text: "hall"}),
		"value":             d.Put(address(t, "room.use"), assess.Answer{Text: "dungeon"}),
		"control character": d.Put(address(t, "room.use"), assess.Answer{Text: "hall", Note: "\x1b[31m"}),
		"day":               d.Put(address(t, "room.use"), assess.Answer{Text: "hall", On: "today"}),
		"year to come":      d.Put(address(t, "layer.l1.year"), assess.Answer{Text: "2031"}),
		"item id":           d.Put(address(t, "layer.L1.kind"), assess.Answer{Text: "cork"}),
		"area twice":        d.AddArea("kitchen", ""),
		"area a topic":      d.AddArea("joist", ""),
		"zone twice":        d.AddZone("kitchen", "main"),

		"no such item":    d.DropItem(schema.Address{Topic: "layer", Item: "l9"}),
		"no such list":    d.DropItem(schema.Address{Topic: "joist", Item: "j1"}),
		"no such family":  d.PutFamily("", "", "joist", assess.Answer{}),
		"region":          d.SetHeader("mars", "", ""),
		"units":           d.SetHeader("", "ell", ""),
		"visit too early": d.SetHeader("", "", "1950-01-01"),
	} {
		if p, ok := err.(*assess.Problem); !ok || p.Kind != assess.Usage {
			t.Errorf("%s: %v", name, err)
		}
	}
	if got := bytesOf(t, d); got != kitchen {
		t.Errorf("refused changes changed the record:\n%s", got)
	}
}
