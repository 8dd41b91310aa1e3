package inquiry_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"underfoot/assess/result"
	"underfoot/assess/schema"
	"underfoot/rules/inquiry"
	"underfoot/rules/internal/trial"
	"underfoot/rules/pack"
)

// asked are the questions of a record, each with its stage and what it decides.
func asked(t *testing.T, quick bool, rules []trial.Rule, lines ...string) []string {
	t.Helper()
	w := trial.New(t, nil, rules...)
	job := w.Job(lines...)
	q := &inquiry.Inquiry{Judge: w.Judge, Facts: w.Facts, Catalogue: w.Catalogue, Today: trial.Day, Quick: quick}
	var out []string
	for _, c := range q.Zone(job, 0, 0, w.Judge.Zone(w.Zone(job), false)) {
		out = append(out, strings.TrimSpace(fmt.Sprintf("%d %s %s", c.Stage, c.Address.Local(), strings.Join(c.Decides, "/"))))
	}
	return out
}

func calls(rank float64, path result.PathID, when string, r pack.Rule) trial.Rule {
	r.Rank, r.Calls = rank, path
	return trial.Rule{When: when, Rule: r}
}

func permits(rank float64, when string, bases ...result.PathID) trial.Rule {
	return trial.Rule{When: when, Rule: pack.Rule{Rank: rank, Permits: bases}}
}

const leak = `water.leak == "yes"`

func TestStages(t *testing.T) {
	rules := []trial.Rule{
		calls(9, result.DryOut, `water.damp == "yes"`, pack.Rule{Unknown: result.PolicyVerify}),
		calls(4, result.DryOut, leak, pack.Rule{}),
		calls(2, result.TestOrAbate, `water.puddle == "yes"`, pack.Rule{Unknown: result.PolicyPresume}),
		calls(1, result.CallService, `danger.gas == "yes"`, pack.Rule{}),
		calls(8, result.Level, `water.mould == "yes"`, pack.Rule{Unknown: result.PolicyNote}),
		calls(7, result.Level, `danger.burning == "yes" && danger.gas == "yes"`, pack.Rule{}),
	}
	want := []string{"0 danger.gas", "1 water.puddle", "2 danger.burning", "2 water.leak", "3 water.damp"}
	if got := asked(t, true, rules); !slices.Equal(got, want) {
		t.Errorf("%q, want %q", got, want)
	}
	if got := asked(t, true, rules, "danger.gas = no", "water.leak = not sure"); len(got) != 3 || got[1] != "2 water.leak" {
		t.Errorf("after answers: %q", got)
	}
}

// What a question hangs on is asked before it.
func TestAClosedGateComesFirst(t *testing.T) {
	rules := []trial.Rule{calls(4, result.DryOut, `water.leak == "yes" && water.leak_cured == "no"`, pack.Rule{})}
	if got := asked(t, true, rules); !slices.Equal(got, []string{"2 water.leak"}) {
		t.Errorf("gate open: %q", got)
	}
	if got := asked(t, true, rules, "water.leak = yes"); !slices.Equal(got, []string{"2 water.leak_cured"}) {
		t.Errorf("gate passed: %q", got)
	}
}

// The deciding question leaves the fewest paths waiting, whatever its place in
// the catalogue.
func TestTheDecidingQuestionFirst(t *testing.T) {
	rules := []trial.Rule{
		permits(90, leak, result.Uncouple),
		permits(91, `water.mould == "yes"`, result.BackerBoard, result.IsolateFull, result.IsolateStrip),
	}
	if got := asked(t, true, rules); !slices.Equal(got, []string{"2 water.leak", "2 water.mould"}) {
		t.Errorf("quick: %q", got)
	}
	if got := asked(t, false, rules); !slices.Equal(got, []string{"2 water.mould backer-board", "2 water.leak uncouple"}) {
		t.Errorf("tried: %q", got)
	}
}

// An answer decides what leads once it is known, but never finding out.
func TestWhatAnAnswerDecides(t *testing.T) {
	rules := []trial.Rule{calls(4, result.DryOut, leak, pack.Rule{}), permits(90, `water.damp == "no"`, result.Uncouple)}
	if got := asked(t, false, rules, "water.damp = no"); !slices.Equal(got, []string{"2 water.leak uncouple/dry-out"}) {
		t.Errorf("%q", got)
	}
}

// A quantity is tried below, at and above each value that any condition of a
// rule compares it with, those of its policies too.
func TestAQuantityIsTriedAroundEveryConstant(t *testing.T) {
	tight := calls(4, result.Level, `slab.age_days > 100`, pack.Rule{})
	if got := asked(t, false, []trial.Rule{tight, permits(90, `water.damp == "no"`, result.Uncouple)}, "water.damp = no", "zone.base = slab-on-ground"); !slices.Equal(got, []string{"2 slab.age_days uncouple/level"}) {
		t.Errorf("%q", got)
	}
	exact := calls(4, result.Level, `slab.age_days == 100`, pack.Rule{})
	if got := asked(t, false, []trial.Rule{exact, permits(90, `water.damp == "no"`, result.Uncouple)}, "water.damp = no", "zone.base = slab-on-ground"); !slices.Equal(got, []string{"2 slab.age_days uncouple/level"}) {
		t.Errorf("at the constant: %q", got)
	}
	w := trial.New(t, nil, trial.Rule{When: `slab.age_days == 300`})
	policy := trial.New(t, nil, permits(90, `water.damp == "no"`, result.Uncouple), calls(4, result.DryOut, `slab.age_days > 100 && water.leak == "yes"`, pack.Rule{}))
	rule := policy.Judge.Pack.Rules[1]
	rule.UnknownWhen = []pack.PolicyCase{{When: w.Judge.Pack.Rules[0].When, Then: result.PolicyPresume}}
	job := policy.Job("water.damp = no", "water.leak = not sure", "zone.base = slab-on-ground")
	q := &inquiry.Inquiry{Judge: policy.Judge, Facts: policy.Facts, Catalogue: policy.Catalogue, Today: trial.Day}
	list := q.Zone(job, 0, 0, policy.Judge.Zone(policy.Zone(job), false))
	if !slices.ContainsFunc(list, func(c inquiry.Candidate) bool { return slices.Contains(c.Decides, "dry-out") }) {
		t.Errorf("policy: %+v", list)
	}
}

// A list is tried closed as it stands.
func TestAListIsTriedClosed(t *testing.T) {
	rules := []trial.Rule{calls(4, result.Remove, `layer.wet == "yes"`, pack.Rule{Scope: schema.ScopeLayer}), permits(90, `water.damp == "no"`, result.Uncouple)}
	if got := asked(t, false, rules, "water.damp = no", "layer.l1.wet = no"); !slices.Equal(got, []string{"2 layer.complete uncouple"}) {
		t.Errorf("%q", got)
	}
}

// Each answer is tried on a floor of its own: the record stays as it is.
func TestTryingChangesNothing(t *testing.T) {
	w := trial.New(t, nil, calls(4, result.DryOut, leak, pack.Rule{}))
	job := w.Job("water.damp = no")
	before := fmt.Sprint(job)
	q := &inquiry.Inquiry{Judge: w.Judge, Facts: w.Facts, Catalogue: w.Catalogue, Today: trial.Day}
	q.Zone(job, 0, 0, w.Judge.Zone(w.Zone(job), false))
	if fmt.Sprint(job) != before {
		t.Error("an answer that was tried stands in the record")
	}
}
