package pack

import (
	"cmp"
	"fmt"
	"strings"
	"testing"

	"underfoot/assess/logic"
	"underfoot/assess/message"
	"underfoot/assess/quantity"
	"underfoot/assess/schema"
)

// readFew reads a value of the few facts.
func readFew(d *schema.Declaration, text string) (schema.Set, error) {
	switch d.Kind {
	case schema.KindText:
		return schema.Set{Text: text}, nil
	case schema.KindQuantity:
		r, err := quantity.Read(d.Dimension, text, quantity.US)
		return schema.Set{Range: r}, err
	}
	bit, ok := d.ChoiceBit(text)
	if !ok {
		return schema.Set{}, fmt.Errorf("no choice %s", text)
	}
	return schema.Set{Mask: bit}, nil
}

var few = stage{schema: fewFacts, read: readFew}

func TestCasesOfTheRegionRun(t *testing.T) {
	for _, tt := range []struct {
		region string
		run    int
	}{{"us", 12}, {"uk", 1}, {"de", 0}} {
		p, err := load(valid(t), "valid", fewNames(tt.region), tt.region, message.English())
		if err != nil {
			t.Fatal(err)
		}
		failures, run := p.Test(fewFacts, readFew)
		if run != tt.run || len(failures) > 0 {
			t.Errorf("%s: %d cases run, want %d; failures %v", tt.region, run, tt.run, failures)
		}
	}
}

// Each change makes exactly one case fail, and the failure says how.
func TestFailingCaseSaysWhy(t *testing.T) {
	for _, tt := range []struct{ name, from, to, rule, cas, want, got, explain string }{
		{"settled the other way", `facts = { "danger.gas" = "yes" }`, `facts = { "danger.gas" = "no" }`,
			"gas-smell", "it smells", "yes", "no", "danger.gas"},
		{"not settled", `facts = { "danger.gas" = "no" }`, `facts = { "danger.gas" = ["no", "yes"] }`,
			"gas-smell", "it does not", "no", "open", "danger.gas"},
		{"does not apply", `facts = { "danger.gas" = "no", "zone.base" = ["slab-on-ground", "suspended-slab"], "floor.covers" = 0 }`,
			`facts = { "danger.gas" = "yes", "zone.base" = ["slab-on-ground", "suspended-slab"], "floor.covers" = 0 }`,
			"plain-slab", "one slab or the other", "yes", "no", "applies: "},
		{"a fact not named may not apply", `facts = { "crack.width" = "1/2 in" }`, `facts = {}`,
			"wide-crack", "half an inch", "yes", "open", "crack.width"},
		{"absent proves nothing", `facts = { "crack.width" = "1/2 in" }`, `facts = { "crack.width" = "absent" }`,
			"wide-crack", "half an inch", "yes", "no", "crack.width"},
		{"no such choice", `"zone.base" = "joists", "floor.covers" = 0`, `"zone.base" = "beams", "floor.covers" = 0`,
			"plain-slab", "joists", "no", "zone.base: no choice beams", ""},
		{"not a value", `"zone.base" = "joists", "floor.covers" = 0`, `"zone.base" = true, "floor.covers" = 0`,
			"plain-slab", "joists", "no", "zone.base: true is neither a text nor a number", ""},
		{"empty list", `"zone.base" = "joists", "floor.covers" = 0`, `"zone.base" = [], "floor.covers" = 0`,
			"plain-slab", "joists", "no", "zone.base: the list has no value", ""},
	} {
		t.Run(tt.name, func(t *testing.T) {
			files := valid(t)
			change(t, files, "rule.toml", tt.from, tt.to)
			p, err := load(files, "valid", fewNames("us"), "us", message.English())
			if err != nil {
				t.Fatal(err)
			}
			failures, _ := p.Test(fewFacts, readFew)
			if len(failures) != 1 {
				t.Fatalf("%d failures: %+v", len(failures), failures)
			}
			f := failures[0]
			if f.Rule != tt.rule || f.Case != tt.cas || f.Want != tt.want || cmp.Or(f.Got, f.Fault.String()) != tt.got || !strings.Contains(f.Explain(message.English()), tt.explain) {
				t.Errorf("%+v", f)
			}
		})
	}
}

// A list of numbers is anything from the least to the most of them.
func TestListOfNumbersIsARange(t *testing.T) {
	id, _ := fewFacts.Lookup("crack.width")
	s, err := few.scene(&Case{Facts: map[string]any{"crack.width": []any{"1/4 in", "1/8 in"}}})
	if err != nil {
		t.Fatal(err)
	}
	if f := s.Fact(id); f.Set.Range != (quantity.Range{Lo: 0.125, Hi: 0.25}) || f.Presence.Truth != logic.Yes || len(f.Deps) == 0 {
		t.Errorf("%+v", f)
	}
}

func TestUnnamedFacts(t *testing.T) {
	s, err := few.scene(&Case{})
	if err != nil {
		t.Fatal(err)
	}
	for _, d := range fewFacts.All() {
		id, _ := fewFacts.Lookup(d.ID)
		f := s.Fact(id)
		if f.Set != d.Full() || len(f.Deps) == 0 {
			t.Errorf("%s is not open: %+v", d.ID, f)
		}
		if open := f.Presence.Truth == logic.Open; open == d.Always {
			t.Errorf("%s: presence %v", d.ID, f.Presence.Truth)
		}
	}
}
