package pack

import (
	"io/fs"
	"os"
	"strings"
	"testing"
	"testing/fstest"

	"underfoot/assess"
	"underfoot/assess/condition"
	"underfoot/assess/figure"
	"underfoot/assess/message"
	"underfoot/assess/quantity"
	"underfoot/assess/result"
	"underfoot/assess/schema"
)

// The few facts that the pack of the tests speaks of.
var fewFacts = schema.NewSchema([]schema.Declaration{
	{ID: "room.wet", Scope: schema.ScopeArea, Kind: schema.KindYesNo, Choices: schema.YesNoChoices, Always: true},
	{ID: "danger.gas", Scope: schema.ScopeZone, Kind: schema.KindYesNo, Choices: schema.YesNoChoices, Always: true},
	{ID: "zone.base", Scope: schema.ScopeZone, Kind: schema.KindChoice, Choices: []string{"joists", "slab-on-ground", "suspended-slab"}, Always: true},
	{ID: "floor.covers", Scope: schema.ScopeZone, Kind: schema.KindQuantity, Dimension: quantity.Number, Always: true, Bounds: quantity.AtLeast(0)},
	{ID: "joist.size", Scope: schema.ScopeZone, Kind: schema.KindText},
	{ID: "crack.width", Scope: schema.ScopeCrack, Kind: schema.KindQuantity, Dimension: quantity.Length, Bounds: quantity.Range{Lo: 0, Hi: 2}},
})

func fewNames(region string) condition.Names {
	return condition.Names{Schema: fewFacts, Figures: figure.For(region, quantity.US)}
}

// valid is the pack of the tests as files that can be changed.
func valid(t *testing.T) fstest.MapFS {
	t.Helper()
	files := fstest.MapFS{}
	disk := os.DirFS("testdata")
	names, err := fs.Glob(disk, "valid/*.toml")
	if err != nil || len(names) == 0 {
		t.Fatal("no files", err)
	}
	for _, name := range names {
		data, err := fs.ReadFile(disk, name)
		if err != nil {
			t.Fatal(err)
		}
		files[name] = &fstest.MapFile{Data: data}
	}
	return files
}

// change replaces a text, which must be there, once in one file.
func change(t *testing.T, files fstest.MapFS, name, from, to string) {
	t.Helper()
	data := string(files["valid/"+name].Data)
	if !strings.Contains(data, from) {
		t.Fatalf("%s has no %q", name, from)
	}
	files["valid/"+name] = &fstest.MapFile{Data: []byte(strings.Replace(data, from, to, 1))}
}

func TestValidPackLoads(t *testing.T) {
	p, err := load(valid(t), "valid", fewNames("us"), "us", message.English())
	if err != nil {
		t.Fatal(err)
	}
	gas, slab, crack, path := p.Rule("gas-smell"), p.Rule("plain-slab"), p.Rule("wide-crack"), p.Rule("mat-on-joists")
	if gas.Calls != result.CallService || !gas.IsTrouble() || gas.IsPermit() || gas.Text.Why != "Gas burns." {
		t.Errorf("gas-smell: %+v", gas)
	}
	if !slab.IsPermit() || slab.IsTrouble() || slab.Alternatives[0] != result.Uncouple || slab.Applies == nil {
		t.Errorf("plain-slab: %+v", slab)
	}
	if crack.Scope != schema.ScopeCrack || crack.Bars[0] != result.IsolateStrip || crack.UnknownWhen[0].Then != result.PolicyVerify {
		t.Errorf("wide-crack: %+v", crack)
	}
	if !path.BarsThis || len(path.Bars) > 0 {
		t.Errorf("mat-on-joists: %+v", path)
	}
	if !p.Steps[result.Engineer].Ends || p.Steps[result.Remove].Makes["danger.gas"] != "no" {
		t.Errorf("steps: %+v, %+v", p.Steps[result.Engineer], p.Steps[result.Remove])
	}
	if c := p.Cautions["leave-first"]; c.Text == "" || len(c.Sources) != 1 || c.Sources[0].Title == "" {
		t.Errorf("caution: %+v", c)
	}
	if p.Region != "us" || p.Rule("no-such-rule") != nil {
		t.Errorf("region %q, rule %v", p.Region, p.Rule("no-such-rule"))
	}
}

func TestRuleOfOtherRegionsIsLeftOut(t *testing.T) {
	p, err := load(valid(t), "valid", fewNames("uk"), "uk", message.English())
	if err != nil {
		t.Fatal(err)
	}
	if p.Rule("mat-on-joists") != nil || p.Rule("gas-smell") == nil {
		t.Error("a rule for the United States stands in the British pack, or one for all does not")
	}
}

// One broken place for each validation: the file, what stands there, what is
// put in its place, and the problem that it must give.
var broken = []struct{ name, file, from, to, want string }{
	{"key that no record has", "rule.toml", `since = "1"`, `sinse = "1"`, "a key that no record has"},
	{"not TOML", "rule.toml", `scope = "zone"`, `scope = zone"`, "rule.toml:7:"},
	{"text key that no record has", "rule.en.toml", `title = "Gas"`, `titel = "Gas"`, "titel"},
	{"text of no caution", "caution.en.toml", `[leave-first]`, `[leave-last]`, "caution text leave-last: there is no record of that text"},
	{"text of no step", "step.en.toml", `[level]`, `[flatten]`, "step text flatten: there is no record of that text"},
	{"wrong kind of value", "rule.toml", `rank = 1`, `rank = "first"`, "valid/rule.toml"},
	{"scope", "rule.toml", `scope = "zone"`, `scope = "house"`, `"house" is not a scope`},
	{"condition with an unknown fact", "rule.toml", `danger.gas == "yes"`, `danger.gass == "yes"`, "there is no fact danger.gass"},
	{"condition with an unknown choice", "rule.toml", `zone.base in ["slab-on-ground"`, `zone.base in ["slab-on-grund"`, "slab-on-grund"},
	{"applies does not compile", "rule.toml", `applies = 'danger.gas == "no"'`, `applies = 'danger.gas = "no"'`, "= does not compare"},
	{"fact of a thing that the rule does not see", "rule.toml", `when = 'danger.gas == "yes"'`, `when = 'crack.width > "1 in"'`, "cannot name a fact of crack scope"},
	{"policy case names what it does not see", "rule.toml", `when = 'zone.base == "joists"', then`, `when = 'path.is_base == "yes"', then`, "there is no fact path.is_base"},
	{"policy", "rule.toml", `unknown = "hold"`, `unknown = "wait"`, `"wait" is not a policy`},
	{"policy of a case", "rule.toml", `then = "verify"`, `then = "later"`, `"later" is not a policy`},
	{"people left to verify", "rule.toml", `unknown = "hold"`, `unknown = "verify"`, "may not leave an open question to verify"},
	{"people left to verify by a case", "rule.toml", `unknown = "hold"`, "unknown = \"hold\"\nunknown_when = [{when = 'danger.gas == \"no\"', then = \"verify\"}]", "may not leave an open question to verify"},
	{"whom it protects", "rule.toml", `protects = "people"`, `protects = "pets"`, `"pets" does not say whom`},
	{"no condition", "rule.toml", `when = 'danger.gas == "yes"'`, ``, "the rule has no `when`"},
	{"permit of item scope", "rule.toml", `bars = ["isolate-strip"]`, `permits = ["isolate-strip"]`, "only a rule of zone or area scope may permit"},
	{"call of a base", "rule.toml", `calls = "engineer"`, `calls = "uncouple"`, "uncouple is called for if it is a step"},
	{"permit of a step", "rule.toml", `permits = ["direct-bond"]`, `permits = ["level"]`, "level is called for if it is a step"},
	{"bar of no path", "rule.toml", `bars = ["isolate-strip"]`, `bars = ["strip"]`, `"strip" is not a path`},
	{"alternative that is no path", "rule.toml", `alternatives = ["uncouple"]`, `alternatives = ["mat"]`, `"mat" is not a path`},
	{"step that is none", "rule.toml", `cautions = ["leave-first"]`, "cautions = [\"leave-first\"]\nat_steps = [\"demolish\"]", `"demolish" is not a path`},
	{"step of a rule that warns of nothing", "rule.toml", `cautions = ["leave-first"]`, `at_steps = ["level"]`, "no cautions that could stand at a step"},
	{"no source", "rule.toml", `sources = ["HZ01"]`, ``, "the rule names no source"},
	{"source that is none", "rule.toml", `sources = ["HZ01"]`, `sources = ["ZZ99"]`, `there is no citation "ZZ99"`},
	{"caution that is none", "rule.toml", `cautions = ["leave-first"]`, `cautions = ["run"]`, `there is no caution "run"`},
	{"no case for yes", "rule.toml", `expect = "yes"`, `expect = "no"`, "no case that expects yes"},
	{"no case for no", "rule.toml", `expect = "no"`, `expect = "yes"`, "no case that expects no"},
	{"no case for open", "rule.toml", `expect = "open"`, `expect = "yes"`, "no case that expects open"},
	{"case of a fact that is none", "rule.toml", `facts = { "crack.width" = "1/2 in" }`, `facts = { "crack.wide" = "1/2 in" }`, "there is no fact crack.wide"},
	{"case that expects something else", "rule.toml", `facts = {}
  expect = "open"`, `facts = {}
  expect = "maybe"`, `"maybe" is not what a case may expect`},
	{"no rank", "rule.toml", `rank = 1`, ``, "needs a rank"},
	{"rank of another rule", "rule.toml", `rank = 2`, `rank = 1`, "the rank 1 is that of gas-smell too"},
	{"id of another rule", "rule.toml", `id = "plain-slab"`, `id = "gas-smell"`, "the rule stands twice"},
	{"region that is none", "rule.toml", `regions = ["us"]`, `regions = ["usa"]`, `"usa" is not a region`},
	{"region of a case that is none", "rule.toml", `region = "uk"`, `region = "britain"`, `"britain" is not a region`},
	{"case that never runs", "rule.toml", `regions = ["us"]`, `regions = ["uk"]`, "a case of region us, where the rule does not hold"},
	{"text without a rule", "rule.en.toml", `[gas-smell]`, `[gas-odour]`, "text gas-odour: there is no rule of that id"},
	{"text that is missing", "rule.en.toml", `why = "Gas burns."`, ``, "text is missing"},
	{"hole that nothing fills", "rule.en.toml", `{danger.gas}`, `{danger.gass}`, `it shows "danger.gass"`},
	{"hole for a figure that is none", "rule.en.toml", `{figure.crack_width_engineer}`, `{figure.crack_width}`, `it shows "figure.crack_width"`},
	{"hole out of scope", "rule.en.toml", `{danger.gas}`, `{crack.width}`, "cannot show crack.width"},
	{"value that is none", "rule.toml", `value = "danger.gas"`, `value = "danger.gass"`, `it shows "danger.gass"`},
	{"limit that is none", "rule.toml", `limit = "figure.crack_width_engineer"`, `limit = "figure.none"`, `it shows "figure.none"`},
	{"makes no fact", "rule.toml", `makes = { "crack.width"`, `makes = { "crack.size"`, `it makes "crack.size" true`},
	{"copies no figure", "rule.toml", `"=figure.crack_width_engineer" }`, `"=figure.none" }`, `it copies "figure.none"`},
	{"reveals no topic", "rule.toml", `"crack.*"`, `"cracks.*"`, `it lays open "cracks.*"`},
	{"reveals no fact", "rule.toml", `"zone.base"]`, `"zone.bass"]`, `it lays open "zone.bass"`},
	{"caution without a text", "caution.en.toml", `text = "Leave the house first."`, ``, "the caution has no text"},
	{"caution without its source", "caution.toml", `["HZ01"]`, `["ZZ99"]`, `caution leave-first: there is no citation "ZZ99"`},
	{"caution that stands twice", "caution.toml", `[[caution]]`, "[[caution]]\nid = \"leave-first\"\n[[caution]]", "the caution stands twice"},
	{"step that is no path", "step.toml", `path = "level"`, `path = "flatten"`, `step flatten: "flatten" is not a path`},
	{"path without a step", "step.toml", `path = "level"`, `path = "remove"`, "step level: the path has no step record"},
	{"step without a text", "step.en.toml", `text = "What is done on the path level."`, ``, "step level: the step has no text"},
	{"step makes no fact", "step.toml", `"danger.gas" = "no"`, `"danger.smell" = "no"`, `it makes "danger.smell" true`},
	{"step reveals no topic", "step.toml", `["crack.*"]`, `["gap.*"]`, `it lays open "gap.*"`},
}

func TestBrokenPackSaysWhy(t *testing.T) {
	for _, b := range broken {
		t.Run(b.name, func(t *testing.T) {
			files := valid(t)
			change(t, files, b.file, b.from, b.to)
			_, err := load(files, "valid", fewNames("us"), "us", message.English())
			if err == nil || !strings.Contains(err.Error(), b.want) {
				t.Errorf("error %v\nwant %q in it", err, b.want)
			}
		})
	}
}

// A reader mends a pack in one go: every problem is named at once.
func TestAllProblemsAtOnce(t *testing.T) {
	files := valid(t)
	change(t, files, "rule.toml", `protects = "people"`, `protects = "pets"`)
	change(t, files, "rule.toml", `permits = ["direct-bond"]`, `permits = ["mat"]`)
	change(t, files, "caution.en.toml", `Leave the house first.`, ``)
	_, err := load(files, "valid", fewNames("us"), "us", message.English())
	problems, ok := err.(assess.Problems)
	if !ok || len(problems) < 3 {
		t.Fatalf("%v", err)
	}
	for _, p := range problems {
		if p.Kind != assess.Invalid || p.Place == "" {
			t.Errorf("%+v has no place, or not the kind of a bad file", p)
		}
	}
}
