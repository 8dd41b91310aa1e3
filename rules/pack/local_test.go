package pack

import (
	"errors"
	"os"
	"slices"
	"strings"
	"testing"

	"underfoot/assess"
	"underfoot/assess/figure"
	"underfoot/assess/message"
	"underfoot/assess/quantity"
	"underfoot/assess/result"
)

const exampleFile = "../../testdata/packs/example-harbour.toml"

// example is the pack of the invented town, with places changed in pairs of
// from and to.
func example(t testing.TB, changes ...string) string {
	t.Helper()
	data, err := os.ReadFile(exampleFile)
	if err != nil {
		t.Fatal(err)
	}
	text := string(data)
	for i := 0; i < len(changes); i += 2 {
		if !strings.Contains(text, changes[i]) {
			t.Fatalf("the pack has no %q", changes[i])
		}
		text = strings.Replace(text, changes[i], changes[i+1], 1)
	}
	return text
}

func read(t *testing.T, text string) *Local {
	t.Helper()
	p, err := ReadLocal("harbour.toml", []byte(text))
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// added is the rules of a region with packs. The facts are those of the
// program; of the figures in facts only conditions matter here.
func added(region string, packs ...*Local) (*Addition, *Pack, error) {
	c := countries()[region]
	a := Add(figure.For(region, quantity.US), packs...)
	names := c.names
	names.Figures = a.Figures
	ours, err := Shipped(names, region, message.English())
	if err != nil {
		return a, nil, err
	}
	p, err := a.To(ours, names)
	return a, p, err
}

func TestExamplePack(t *testing.T) {
	a, p, err := added("us", read(t, example(t)))
	if err != nil {
		t.Fatal(err)
	}
	for id, want := range map[string]float64{"presumed_to": 1995, "test_to": 1995, "flat_small": 3.0 / 16, "wood_moisture": 13} {
		if f, _ := a.Figures.Figure(id); f.Value != want || !strings.Contains(f.Source.Title, "invented") {
			t.Errorf("%s is %v by %q, want %v by the pack's source", id, f.Value, f.Source.Title, want)
		}
	}
	if r := p.Rule("slab-moisture-reading"); r.Unknown != result.PolicyHold || !slices.ContainsFunc(r.Cited, func(c figure.Citation) bool { return c.ID == "example-harbour-ordinance" }) {
		t.Errorf("the raised rule says %s, by %v", r.Unknown, r.Cited)
	}
	if r := countries()["us"].pack.Rule("slab-moisture-reading"); r.Unknown == result.PolicyHold {
		t.Error("raising a rule has changed the program's own")
	}
	stone, before := p.Rule("example-harbour-stone-upstairs"), p.Rule("thick-stone-on-wood")
	if stone.Rank <= before.Rank || stone.Rank >= p.Rule("topping-between-dwellings").Rank || !stone.Local || before.Local {
		t.Errorf("the new rule has the rank %v behind %v", stone.Rank, before.Rank)
	}
	if c := p.Cautions["example-harbour-ask-office"]; len(c.Sources) != 1 || c.Sources[0].Edition != "2026, sections 2 to 6" {
		t.Errorf("the caution has the sources %v", c.Sources)
	}
	if len(p.Locals) != 1 || !p.Locals[0].Local || len(p.Locals[0].Relaxes) != 1 || !strings.Contains(p.Locals[0].Relaxes[0].String(), "wood_moisture is 13 %") {
		t.Errorf("the pack is named as %+v", p.Locals)
	}
}

func TestCasesOfExamplePack(t *testing.T) {
	_, p, err := added("us", read(t, example(t)))
	if err != nil {
		t.Fatal(err)
	}
	c := countries()["us"]
	failures, ran := p.Test(c.names.Schema, c.read)
	if ran != 9 || len(failures) > 0 {
		t.Errorf("%d cases ran, %+v failed", ran, failures)
	}
	_, p, err = added("us", read(t, example(t, `"1996" }`, `"1995" }`)))
	if err != nil {
		t.Fatal(err)
	}
	if failures, _ := p.Test(c.names.Schema, c.read); len(failures) != 1 || failures[0].Case != "the year after" {
		t.Errorf("one wrong case gives %+v", failures)
	}
}

// A rule added at the end of the example, to be broken one place at a time.
const extraRule = `
[[rule]]
id = "example-harbour-extra"
scope = "zone"
when = 'zone.base == "joists"'
unknown = "hold"
protects = "finish"
AFTER
sources = ["example-harbour-ordinance"]
title = "t"
fails = "f"
open = "o"
holds = "h"
why = "w"
remedy = "r"
mode = "m"
risk = { likelihood = "possible", consequence = "serious", likelihood_after = "unlikely", consequence_after = "slight" }
case = [{ name = "a", facts = { "zone.base" = "joists" }, expect = "yes" }, { name = "b", facts = { "zone.base" = "slab-on-ground" }, expect = "no" }, { name = "c", expect = "open" }]
`

func extra(effect string) string { return strings.Replace(extraRule, "AFTER", effect, 1) }

// One broken place for each validation: what stands in the example, what is put
// in its place, where the problem must be, and what it must say.
var brokenLocals = []struct{ name, from, to, at, want, hint string }{
	{"no TOML", `id = "example-harbour" `, `id = example-harbour `, "harbour.toml:9:6", "", ""},
	{"key twice", `value = "1995"`, "value = \"1995\"\nvalue = \"1996\"", "harbour.toml:", "already", ""},
	{"unknown key", `regions = ["us"]`, `region = ["us"]`, "harbour.toml:12:1", "region is no key here", "did you mean regions?"},
	{"unknown key of a table in a line", `likelihood = "possible"`, `likelyhood = "possible"`, "harbour.toml:114:10", "likelyhood is no key here", "likelihood"},
	{"unknown record", `[[tighten]]`, `[[tigten]]`, "harbour.toml:33:3", "tigten is no key here", "did you mean tighten?"},
	{"wrong kind", `bars = ["direct-bond"]`, `bars = "direct-bond"`, "harbour.toml:105:1", "bars must be a list", ""},
	{"wrong kind in a list", `bars = ["direct-bond"]`, `bars = [1]`, "harbour.toml:105:9", "an item of bars must be a text in quotes", ""},
	{"rank", `protects = "bond"`, "protects = \"bond\"\nrank = 3", "harbour.toml:105:8", "has no rank", ""},
	{"makes", `protects = "bond"`, "protects = \"bond\"\nmakes = { \"zone.base\" = \"joists\" }", "harbour.toml:105:9", "what a step makes true", ""},
	{"reveals", `protects = "bond"`, "protects = \"bond\"\nreveals = [\"crack.*\"]", "harbour.toml:105:1", "what a step lays open", ""},
	{"no id of a pack", `id = "example-harbour" `, `id = "Example" `, "harbour.toml:9:6", "a pack has an id", ""},
	{"id of the program", `id = "example-harbour" `, `id = "asbestos" `, "harbour.toml:9:6", "are those of the program", ""},
	{"no edition", `edition = "2026, invented"`, ``, "harbour.toml:8:2", "a title and an edition", ""},
	{"no region", `regions = ["us"]`, `regions = ["us", "usa"]`, "harbour.toml:12:18", `"usa" is not a region`, "did you mean us?"},
	{"other region", `regions = ["us"]`, `regions = ["uk"]`, "harbour.toml:12:1", "does not hold in region us", ""},
	{"id without the prefix", `id = "example-harbour-wet-room-mat"`, `id = "wet-room-mat"`, "harbour.toml:100:6", "begins with example-harbour-", ""},
	{"id twice", `id = "example-harbour-wet-room-mat"`, `id = "example-harbour-permit"`, "harbour.toml:100:6", "the rule stands twice", ""},
	{"source without a word", `known = "lookup"`, `known = "heard"`, "harbour.toml:17:3", "known is one of", ""},
	{"source that says nothing", `states = "By the sea, wood floors may be covered at up to 13 percent moisture."`, ``, "harbour.toml:24:3", "does not say what it states", ""},
	{"no such figure", `figure = "flat_small"`, `figure = "flat_smal"`, "harbour.toml:44:10", "there is no figure", "did you mean flat_small?"},
	{"figure relaxed by tightening", `value = "3/16 in"`, `value = "3/8 in"`, "harbour.toml:45:9", "may only get lower than 1/4 in", ""},
	{"figure tightened by relaxing", `value = "13 %"`, `value = "11 %"`, "harbour.toml:61:9", "is not relaxed", ""},
	{"figure as a range", `value = "13 %"`, `value = "13 to 15 %"`, "harbour.toml:61:9", "a figure is one number", ""},
	{"plain property", "figure = \"wood_moisture\"\nvalue = \"13 %\"", "figure = \"panel_gap\"\nvalue = \"1/4 in\"", "harbour.toml:61:9", "plain property", ""},
	{"figure of people relaxed", "figure = \"wood_moisture\"\nvalue = \"13 %\"", "figure = \"mould_area\"\nvalue = \"20 ft2\"", "harbour.toml:59:3", "mould-large, which protects people", ""},
	{"relaxed without a source", `source = "example-harbour-lumber-note"`, ``, "harbour.toml:59:3", "names no source", ""},
	{"relaxed by a source that is none", `source = "example-harbour-lumber-note"`, `source = "example-harbour-lumber"`, "harbour.toml:62:10", "there is no citation", "did you mean example-harbour-lumber-note?"},
	{"rule of people relaxed", "figure = \"wood_moisture\"\nvalue = \"13 %\"", "rule = \"asbestos-presumed-layer\"\nunknown = \"verify\"", "harbour.toml:60:8", "protects people; it cannot be relaxed", ""},
	{"rule relaxed to no policy", "figure = \"wood_moisture\"\nvalue = \"13 %\"", "rule = \"joist-too-soft\"\nunknown = \"verfy\"", "harbour.toml:61:11", "is not a policy", "did you mean verify?"},
	{"figure and rule", `figure = "wood_moisture"`, "figure = \"wood_moisture\"\nrule = \"joist-too-soft\"", "harbour.toml:59:3", "one of them", ""},
	{"no such rule", `rule = "slab-moisture-reading"`, `rule = "slab-moisture-readin"`, "harbour.toml:52:8", "there is no rule", "did you mean slab-moisture-reading?"},
	{"permit raised to bar", `rule = "slab-moisture-reading"`, "rule = \"bare-slab-sound\"\nbars = [\"uncouple\"]", "harbour.toml:53:1", "a rule that permits cannot bar", ""},
	{"raise with a step", `rule = "slab-moisture-reading"`, "rule = \"slab-moisture-reading\"\nbars = [\"level\"]", "harbour.toml:53:9", "permitted or barred if it is a base", ""},
	{"raise with no caution", `rule = "slab-moisture-reading"`, "rule = \"slab-moisture-reading\"\ncautions = [\"silica-dst\"]", "harbour.toml:53:13", "there is no caution", "did you mean silica-dust?"},
	{"fact in a condition", `'zone.base == "joists" && room.wet`, `'zone.base == "joists" && room.wett`, "harbour.toml:102:34", "there is no fact room.wett", "did you mean room.wet?"},
	{"choice in a condition", `&& room.wet == "wet-room"'`, `&& room.wet == "wetroom"'`, "harbour.toml:102:46", "wetroom", "wet-room"},
	{"condition on several lines", `'zone.base == "joists" && room.wet == "wet-room"'`, "'''\nzone.base == \"joists\"\n  && room.wett == \"wet-room\"'''", "harbour.toml:104:6", "there is no fact room.wett", ""},
	{"fact of a case", `"room.wet" = "dry"`, `"room.wett" = "dry"`, "harbour.toml:121:37", "there is no fact room.wett", "did you mean room.wet?"},
	{"hole in a sentence", `{site.year_built}`, `{site.year_bilt}`, "harbour.toml:80:9", "shows \"site.year_bilt\"", "did you mean site.year_built?"},
	{"case of another region", `name = "dry room over joists"`, "name = \"dry room over joists\"\nregion = \"uk\"", "harbour.toml:121:10", "one of region uk", ""},
	{"whom", `protects = "bond"`, `protects = "bonds"`, "harbour.toml:104:12", "whom the rule protects", "did you mean bond?"},
	{"people left to verify", `protects = "bond"`, `protects = "people"`, "harbour.toml:103:11", "may not leave an open question to verify", ""},
	{"trouble without a remedy", `remedy = "Plan a mat or a board between wood and tile."`, ``, "harbour.toml:99:3", "has no `remedy`", ""},
	{"risk in other words", `likelihood = "possible"`, `likelihood = "maybe"`, "harbour.toml:114:23", "likelihood is one of", ""},
	{"no place", `after = "thick-stone-on-wood"`, ``, "harbour.toml:130:3", "behind which rule of the program", ""},
	{"place that is none", `after = "thick-stone-on-wood"`, `after = "thick-stone-on-wod"`, "harbour.toml:133:9", "is no rule of the program", "did you mean thick-stone-on-wood?"},
	{"before people", "[[caution]]", extra("calls = \"remove\"\nafter = \"danger-gas\"") + "[[caution]]", "harbour.toml:", "put it behind", ""},
	{"permit that bars", "[[caution]]", extra("permits = [\"uncouple\"]\nbars = [\"direct-bond\"]\nafter = \"bare-slab-sound\"") + "[[caution]]", "harbour.toml:", "make two rules of it", ""},
	{"caution without a text", `text = "Example Harbour (invented) asks`, `#`, "harbour.toml:", "has no text", ""},
}

func TestBrokenLocalSaysWhereAndWhy(t *testing.T) {
	for _, b := range brokenLocals {
		t.Run(b.name, func(t *testing.T) {
			p, err := ReadLocal("harbour.toml", []byte(example(t, b.from, b.to)))
			if err == nil {
				_, _, err = added("us", p)
			}
			var problems assess.Problems
			if !errors.As(err, &problems) {
				t.Fatalf("%v are no problems", err)
			}
			for _, p := range problems {
				if strings.HasPrefix(p.Place, b.at) && strings.Contains(p.What.String(), b.want) && strings.Contains(p.Hint.String(), b.hint) {
					if p.Kind != assess.Invalid || !strings.Contains(p.Lines, "^") {
						t.Errorf("%s has no caret, or not the kind of a bad file", p.Report(message.English()))
					}
					return
				}
			}
			for _, p := range problems {
				t.Error(p.Report(message.English()))
			}
			t.Errorf("want %s: %s, %s", b.at, b.want, b.hint)
		})
	}
}
