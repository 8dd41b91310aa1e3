package plan_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"underfoot/assess/logic"
	"underfoot/assess/result"
	"underfoot/assess/schema"
	"underfoot/rules/internal/trial"
	"underfoot/rules/pack"
	"underfoot/rules/plan"
)

func calls(rank float64, path result.PathID, when string, r pack.Rule) trial.Rule {
	r.Rank, r.Calls = rank, path
	return trial.Rule{When: when, Rule: r}
}

// tile is laid where the floor is dry, with a bar where it is soft.
func tile(r pack.Rule) trial.Rule {
	r.ID, r.Rank, r.Permits = "tile", 90, []result.PathID{result.Uncouple, result.BackerBoard}
	return trial.Rule{When: `water.damp == "no"`, Rule: r}
}

const (
	gas  = `danger.gas == "yes"`
	leak = `water.leak == "yes"`
	wet  = `layer.wet == "yes"`
)

var (
	dry     = calls(5, result.DryOut, leak, pack.Rule{ID: "dry"})
	level   = calls(8, result.Level, `water.puddle == "yes"`, pack.Rule{ID: "level"})
	removal = calls(6, result.Remove, wet, pack.Rule{ID: "wet", Scope: schema.ScopeLayer})
	lab     = calls(3, result.TestOrAbate, gas, pack.Rule{ID: "lab"})
	asks    = trial.Rule{When: `layer.stays == "no" && layer.kind == "cement-screed"`,
		Rule: pack.Rule{ID: "asks", Rank: 1, Calls: result.Engineer, Scope: schema.ScopeLayer, Protects: result.ProtectsPeople}}
	// done is what each step makes true here.
	done = map[result.PathID]pack.Step{
		result.DryOut:      {Makes: map[string]string{"water.leak": "no"}, Text: pack.StepText{Uncovered: "if the rest is dry"}},
		result.Level:       {Makes: map[string]string{"water.puddle": "no"}},
		result.TestOrAbate: {Makes: map[string]string{"danger.gas": "no"}},
		result.Engineer:    {Ends: true},
	}
)

// planned is the plan of a record.
func planned(t *testing.T, steps map[result.PathID]pack.Step, rules []trial.Rule, lines ...string) plan.Plan {
	t.Helper()
	w := trial.New(t, steps, rules...)
	job := w.Job(lines...)
	p := &plan.Planner{Judge: w.Judge, Facts: w.Facts, Describer: w.Describer, Today: trial.Day}
	before := job.Clone()
	c := p.Zone(job, 0, 0, w.Judge.Zone(w.Zone(job), false))
	if fmt.Sprint(job) != fmt.Sprint(before) {
		t.Error("the plan changed the record")
	}
	return c
}

// way is a plan in a line: each path with the number of its evaluation.
func way(c plan.Plan) string {
	var words []string
	for _, s := range c.Steps {
		word := fmt.Sprintf("%s%d", s.Path, s.Round)
		if s.Repeats {
			word += "!"
		}
		words = append(words, word)
	}
	return strings.Join(words, " ")
}

func TestWays(t *testing.T) {
	open := []string{"water.damp = no", "layer.complete = yes"}
	for name, tt := range map[string]struct {
		rules []trial.Rule
		lines []string
		want  string
	}{
		"a base at once":                  {[]trial.Rule{dry, tile(pack.Rule{})}, []string{"water.leak = no"}, "uncouple1"},
		"a step and then a base":          {[]trial.Rule{dry, tile(pack.Rule{})}, []string{"water.leak = yes"}, "dry-out1 uncouple2"},
		"working order, not rank":         {[]trial.Rule{calls(2, result.Level, leak, pack.Rule{}), dry, tile(pack.Rule{})}, []string{"water.leak = yes"}, "dry-out1 level1 uncouple2"},
		"a step that comes up later":      {[]trial.Rule{dry, calls(8, result.Level, `water.leak == "no"`, pack.Rule{}), tile(pack.Rule{})}, []string{"water.leak = yes"}, "dry-out1 level2 level3!"},
		"a step that changes nothing":     {[]trial.Rule{calls(5, result.Strengthen, leak, pack.Rule{}), tile(pack.Rule{})}, []string{"water.leak = yes"}, "strengthen1 strengthen2!"},
		"the engineer's word":             {[]trial.Rule{calls(5, result.Engineer, leak, pack.Rule{}), level, tile(pack.Rule{})}, []string{"water.leak = yes", "water.puddle = yes"}, "engineer1"},
		"a rule whose call ends":          {[]trial.Rule{calls(5, result.DryOut, leak, pack.Rule{Ends: true}), tile(pack.Rule{})}, []string{"water.leak = yes"}, "dry-out1"},
		"a call that would end, unproven": {[]trial.Rule{calls(5, result.DryOut, leak, pack.Rule{Ends: true, Unknown: result.PolicyPresume}), tile(pack.Rule{})}, nil, "dry-out1 uncouple2"},
		"what was found out is absent":    {[]trial.Rule{dry, tile(pack.Rule{})}, nil, "find-out1 uncouple2"},
		"finding out ends where a permit stays open": {[]trial.Rule{calls(5, result.DryOut, leak, pack.Rule{Unknown: result.PolicyVerify}),
			{When: `water.mould == "no"`, Rule: pack.Rule{Rank: 80, Permits: []result.PathID{result.Uncouple}}}}, nil, "find-out1 find-out2!"},
		"finding out before what waits behind a laboratory": {[]trial.Rule{lab, calls(6, result.Strengthen, leak, pack.Rule{}), tile(pack.Rule{})},
			[]string{"water.leak = yes"}, "find-out1 strengthen2 strengthen3!"},
		"a proven laboratory comes first": {[]trial.Rule{lab, level, dry, tile(pack.Rule{})}, []string{"danger.gas = yes", "water.leak = yes", "water.puddle = yes"},
			"test-or-abate1 dry-out1 level1 uncouple2"},
		"a removal":                  {[]trial.Rule{removal, tile(pack.Rule{})}, []string{"layer.l1.wet = yes"}, "remove1 uncouple2"},
		"the owner takes a layer up": {[]trial.Rule{removal, tile(pack.Rule{})}, []string{"layer.l1.wet = no", "layer.l1.coming_out = yes"}, "remove1 uncouple1"},
		"finding out comes before what is due too, where it leads": {[]trial.Rule{lab, calls(4, result.Strengthen, leak, pack.Rule{}), dry, tile(pack.Rule{})},
			[]string{"water.leak = yes"}, "find-out1 dry-out2 strengthen2 uncouple3"},
		"nothing comes up while a laboratory waits":                   {[]trial.Rule{lab, tile(pack.Rule{})}, []string{"layer.l1.coming_out = yes"}, "find-out1 remove2 uncouple2"},
		"what an engineer may have to be asked is not taken as known": {[]trial.Rule{asks, removal, tile(pack.Rule{})}, []string{"layer.l1.wet = yes"}, "find-out1"},
		"nothing can be laid": {[]trial.Rule{tile(pack.Rule{}), {When: leak, Rule: pack.Rule{ID: "bar", Bars: []result.PathID{result.Uncouple, result.BackerBoard}}}},
			[]string{"water.leak = yes"}, "none1"},
	} {
		if got := way(planned(t, done, tt.rules, append(slices.Clone(open), tt.lines...)...)); got != tt.want {
			t.Errorf("%s: %s, want %s", name, got, tt.want)
		}
	}
}

// A removal takes the layers from the top down to the deepest that it lifts.
func TestARemovalReachesTheDeepest(t *testing.T) {
	for lines, want := range map[string]string{
		"layer.l2.wet = yes": "true true false", "layer.l1.wet = yes": "true false false", "layer.l3.wet = yes": "true true true",
	} {
		c := planned(t, done, []trial.Rule{removal, tile(pack.Rule{})}, "water.damp = no", "layer.complete = yes",
			"layer.l1.wet = no", "layer.l2.wet = no", "layer.l3.wet = no", lines)
		var gone []string
		for _, f := range c.Floor.Zones[0][0].Things(schema.ScopeLayer) {
			gone = append(gone, fmt.Sprint(f.Stays().Truth == logic.No))
		}
		if got := strings.Join(gone, " "); got != want {
			t.Errorf("%s: gone %s, want %s", lines, got, want)
		}
	}
}

// A removal stops above the layer that an engineer has to be asked about where
// it is only its height that takes a covering up.
func TestACoveringComesUpToTheGuardedLayer(t *testing.T) {
	bar := trial.Rule{When: leak, Rule: pack.Rule{ID: "bar", Bars: []result.PathID{result.Uncouple, result.BackerBoard}}}
	c := planned(t, done, []trial.Rule{asks, bar, tile(pack.Rule{})}, "water.damp = no", "water.leak = yes", "layer.complete = yes", "zone.base = joists",
		"layer.l1.kind = cork", "layer.l2.kind = cement-screed")
	layers := c.Floor.Zones[0][0].Things(schema.ScopeLayer)
	if got := way(c); got != "remove1 engineer2" || layers[0].Stays().Truth != logic.No || layers[1].Stays().Truth != logic.Yes {
		t.Errorf("%s, the layers stay: %v %v", got, layers[0].Stays().Truth, layers[1].Stays().Truth)
	}
}

// Finding out takes every list as it stands.
func TestFindingOutClosesLists(t *testing.T) {
	bare := trial.Rule{When: `floor.covers <= 0`, Rule: pack.Rule{ID: "bare", Rank: 90, Permits: []result.PathID{result.Uncouple}}}
	if got := way(planned(t, done, []trial.Rule{bare})); got != "find-out1 uncouple2" {
		t.Errorf("%s", got)
	}
}

// What a rule makes true is made for its own item alone.
func TestMakesItsOwnItem(t *testing.T) {
	r := calls(5, result.DryOut, wet, pack.Rule{Scope: schema.ScopeLayer, Unknown: result.PolicyNote, Makes: map[string]string{"layer.wet": "no"}})
	c := planned(t, done, []trial.Rule{r, tile(pack.Rule{})}, "water.damp = no", "layer.complete = yes", "layer.l1.wet = yes", "layer.l2.kind = cork")
	id, _ := trial.New(t, nil).Catalogue.Schema().Lookup("layer.wet")
	var got []string
	for _, f := range c.Floor.Zones[0][0].Things(schema.ScopeLayer) {
		got = append(got, fmt.Sprint(f.Fact(id).Set == schema.SetNo))
	}
	if way(c) != "dry-out1 uncouple2" || strings.Join(got, " ") != "true false" {
		t.Errorf("%s, dry %v", way(c), got)
	}
}

// A step says why, who waits for what, and which other ways there are.
func TestWhatAStepSays(t *testing.T) {
	verify := trial.Rule{When: `water.mould == "yes"`, Rule: pack.Rule{ID: "look", Unknown: result.PolicyVerify, Bars: []result.PathID{result.Uncouple}}}
	c := planned(t, done, []trial.Rule{dry, verify, tile(pack.Rule{Alternatives: []result.PathID{result.IsolateFull}})}, "water.damp = no", "water.leak = yes", "layer.complete = yes")
	first, last := c.Steps[0], c.Steps[1]
	if first.If != "" || fmt.Sprint(first.FindingIDs) != "[dry]" || len(first.Before) > 0 {
		t.Errorf("first %+v", first)
	}
	if fmt.Sprint(last.Alternatives) != "[backer-board isolate-full]" || fmt.Sprint(last.Before) != "[the-room.main.water.mould]" || fmt.Sprint(last.FindingIDs) != "[tile]" {
		t.Errorf("last %v, before %v, reasons %v", last.Alternatives, last.Before, last.FindingIDs)
	}
	c = planned(t, map[result.PathID]pack.Step{result.DryOut: {Makes: map[string]string{"water.leak": "no"}}, result.Uncouple: {Text: pack.StepText{Uncovered: "as described"}}},
		[]trial.Rule{dry, tile(pack.Rule{})}, "water.damp = no", "water.leak = yes", "layer.complete = yes")
	if c.Steps[1].If != "as described" {
		t.Errorf("a later step says %q", c.Steps[1].If)
	}
}

// Finding out asks first what comes before a removal.
func TestFindingOutAsksTheGateFirst(t *testing.T) {
	c := planned(t, done, []trial.Rule{calls(1, result.DryOut, leak, pack.Rule{}), lab, calls(6, result.Strengthen, `water.puddle == "yes"`, pack.Rule{})},
		"water.damp = no", "water.puddle = yes", "layer.complete = yes")
	if s := c.Steps[0]; s.Path != result.FindOut || fmt.Sprint(s.Pending) != "[the-room.main.danger.gas the-room.main.water.leak]" {
		t.Errorf("%s asks %v", s.Path, s.Pending)
	}
}
