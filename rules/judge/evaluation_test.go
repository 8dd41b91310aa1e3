package judge_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"underfoot/assess"
	"underfoot/rules/internal/trial"
	"underfoot/rules/judge"
	"underfoot/rules/pack"
)

// calls is a rule that calls for a step.
func calls(rank float64, path assess.PathID, when string, r pack.Rule) trial.Rule {
	r.Rank, r.Calls = rank, path
	return trial.Rule{When: when, Rule: r}
}

// permits is a rule that permits bases.
func permits(rank float64, when string, r pack.Rule, bases ...assess.PathID) trial.Rule {
	r.Rank, r.Permits = rank, bases
	return trial.Rule{When: when, Rule: r}
}

// bars is a rule that bars bases.
func bars(when string, r pack.Rule, bases ...assess.PathID) trial.Rule {
	r.Bars = bases
	return trial.Rule{When: when, Rule: r}
}

const (
	gas   = `danger.gas == "yes"`
	leak  = `water.leak == "yes"`
	damp  = `water.damp == "yes"`
	mould = `water.mould == "yes"`
	wet   = `layer.wet == "yes"`
)

var (
	verify  = pack.Rule{Unknown: assess.PolicyVerify}
	presume = pack.Rule{Unknown: assess.PolicyPresume}
	note    = pack.Rule{Unknown: assess.PolicyNote}
	hold    = pack.Rule{}
)

// state is what leads and what else there is, in one line.
func state(e *judge.Evaluation) string {
	s := fmt.Sprintf("%s %s-%s", e.Lead, e.Span.Low, e.Span.High)
	if e.Behind != assess.NoPath {
		s += " behind " + e.Behind.String()
	}
	if e.By != nil {
		s += " by " + e.By.FindingID()
	}
	return s
}

func TestWhatLeads(t *testing.T) {
	removal := calls(5, assess.Remove, wet, pack.Rule{Scope: assess.ScopeLayer, ID: "wet"})
	laboratory := calls(2, assess.TestOrAbate, gas, pack.Rule{ID: "lab"})
	tile := permits(90, `danger.burning == "no"`, pack.Rule{ID: "tile"}, assess.Uncouple, assess.BackerBoard)
	bond := permits(80, leak, pack.Rule{ID: "bond", Ready: true}, assess.DirectBond)
	open := []string{"layer.complete = yes"}
	for name, tt := range map[string]struct {
		rules []trial.Rule
		lines []string
		want  string
	}{
		"the lowest rank of two proven calls": {[]trial.Rule{calls(4, assess.DryOut, leak, hold), calls(3, assess.Strengthen, leak, hold)},
			[]string{"water.leak = yes"}, "strengthen repair-repair by b"},
		"a presumed call is proven": {[]trial.Rule{calls(4, assess.DryOut, leak, presume)}, nil, "dry-out repair-repair by a"},
		"a call that waits":         {[]trial.Rule{calls(4, assess.DryOut, leak, hold), tile}, []string{"danger.burning = no"}, "find-out prepare-repair"},
		"an open look before the work keeps a base": {[]trial.Rule{calls(4, assess.DryOut, leak, verify), tile}, []string{"danger.burning = no"},
			"uncouple prepare-prepare by tile"},
		"an open note asks for nothing": {[]trial.Rule{calls(4, assess.DryOut, leak, note), tile}, []string{"danger.burning = no"}, "uncouple prepare-prepare by tile"},
		"a removal waits behind the laboratory": {[]trial.Rule{laboratory, removal},
			append(open, "layer.l1.wet = yes", "layer.l1.kind = sheet-vinyl"), "find-out repair-stop behind remove"},
		"strengthening waits behind the laboratory": {[]trial.Rule{laboratory, calls(4, assess.Strengthen, leak, hold)}, []string{"water.leak = yes"},
			"find-out repair-stop behind strengthen"},
		"level waits behind the laboratory": {[]trial.Rule{laboratory, calls(4, assess.Level, leak, hold)}, []string{"water.leak = yes"},
			"find-out prepare-stop behind level"},
		"drying does not": {[]trial.Rule{laboratory, calls(4, assess.DryOut, leak, hold)}, []string{"water.leak = yes"}, "dry-out repair-stop by b"},
		"a laboratory of higher rank holds nothing back": {[]trial.Rule{calls(9, assess.TestOrAbate, gas, hold), calls(4, assess.Strengthen, leak, hold)},
			[]string{"water.leak = yes"}, "strengthen repair-stop by b"},
		"a floating floor is lifted before the laboratory": {[]trial.Rule{laboratory, removal},
			append(open, "layer.l1.wet = yes", "layer.l1.kind = laminate", "layer.l1.held = floating"), "remove repair-stop by wet@l1"},
		"the first base that no bar touches": {[]trial.Rule{tile, bars(damp, hold, assess.Uncouple)}, []string{"danger.burning = no", "water.damp = yes"},
			"backer-board prepare-prepare by tile"},
		"a bar that waits leaves the next base": {[]trial.Rule{tile, bars(damp, hold, assess.Uncouple)}, []string{"danger.burning = no"},
			"backer-board prepare-prepare by tile"},
		"all bases wait for a bar":      {[]trial.Rule{tile, bars(damp, hold, assess.Uncouple, assess.BackerBoard)}, []string{"danger.burning = no"}, "find-out prepare-repair"},
		"a bar to verify bars nothing":  {[]trial.Rule{tile, bars(damp, verify, assess.Uncouple)}, []string{"danger.burning = no"}, "uncouple prepare-prepare by tile"},
		"the lower rank of two permits": {[]trial.Rule{tile, bond}, []string{"danger.burning = no", "water.leak = yes"}, "direct-bond ready-ready by bond"},
		"a look before the work keeps ready away": {[]trial.Rule{bond, calls(4, assess.DryOut, damp, verify)}, []string{"water.leak = yes"},
			"direct-bond ready-prepare by bond"},
		"every base barred and nothing on the floor": {[]trial.Rule{tile, bars(damp, hold, assess.Uncouple, assess.BackerBoard)},
			[]string{"danger.burning = no", "water.damp = yes", "layer.complete = yes"}, "none repair-repair"},
		"every base barred and a covering on it": {[]trial.Rule{tile, bars(damp, hold, assess.Uncouple, assess.BackerBoard)},
			[]string{"danger.burning = no", "water.damp = yes", "layer.complete = yes", "layer.l1.kind = sheet-vinyl"}, "remove repair-repair"},
		"no rule permits a base": {[]trial.Rule{tile}, []string{"danger.burning = yes"}, "find-out prepare-repair"},
		"a permit that waits":    {[]trial.Rule{tile}, nil, "find-out prepare-repair"},
	} {
		if got := state(trial.New(t, nil, tt.rules...).Evaluate(tt.lines...)); got != tt.want {
			t.Errorf("%s: %s, want %s", name, got, tt.want)
		}
	}
}

// The steps of one evaluation stand in working order, without what waits behind
// a test.
func TestStepsStandInWorkingOrder(t *testing.T) {
	w := trial.New(t, nil, calls(9, assess.DryOut, leak, hold), calls(2, assess.Level, leak, hold), calls(3, assess.Engineer, leak, hold), calls(4, assess.DryOut, leak, hold))
	if got := fmt.Sprint(w.Evaluate("water.leak = yes").Steps); got != "[engineer dry-out level]" {
		t.Errorf("steps %s", got)
	}
	w = trial.New(t, nil, calls(1, assess.TestOrAbate, gas, hold), calls(3, assess.Strengthen, leak, hold), calls(4, assess.DryOut, leak, hold))
	if got := fmt.Sprint(w.Evaluate("water.leak = yes").Steps); got != "[dry-out]" {
		t.Errorf("steps %s behind a laboratory", got)
	}
}

func TestRestOfAListProvesNothing(t *testing.T) {
	w := trial.New(t, nil, calls(3, assess.Remove, `layer.stays == "yes"`, pack.Rule{Scope: assess.ScopeLayer, Unknown: assess.PolicyPresume}))
	e := w.Evaluate("layer.l1.kind = cork")
	var got []string
	for i := range e.Rulings {
		r := &e.Rulings[i]
		got = append(got, fmt.Sprint(r.FindingID(), " ", r.Outcome.Truth, " ", r.Policy))
	}
	if s := strings.Join(got, ", "); s != "a@l1 yes , a@rest open hold" {
		t.Errorf("rulings: %s", s)
	}
}

// A layer that is coming out is judged as gone, unless people are at risk.
func TestWhatComesOutIsGone(t *testing.T) {
	for protects, want := range map[assess.Protects]assess.Truth{assess.ProtectsPeople: assess.Yes, assess.ProtectsBond: assess.No} {
		w := trial.New(t, nil, trial.Rule{When: wet, Rule: pack.Rule{Scope: assess.ScopeLayer, Protects: protects}})
		r := w.Evaluate("layer.complete = yes", "layer.l1.wet = yes", "layer.l1.coming_out = yes").Rulings[0]
		if r.Outcome.Truth != want || r.Gone() != (want == assess.No) {
			t.Errorf("%s: %v, gone %t", protects, r.Outcome.Truth, r.Gone())
		}
	}
}

// A proven step lays open what it reveals: what waits only for that is looked
// at then, but never where people are protected.
func TestUncovered(t *testing.T) {
	steps := map[assess.PathID]pack.Step{assess.DryOut: {Reveals: []string{"danger.gas", "slab.*"}}}
	for _, tt := range []struct {
		when     string
		protects assess.Protects
		want     assess.Policy
	}{
		{gas, assess.ProtectsBond, assess.PolicyVerify},
		{gas, assess.ProtectsPeople, assess.PolicyHold},
		{gas + " || " + mould, assess.ProtectsBond, assess.PolicyHold},
		{damp, assess.ProtectsBond, assess.PolicyHold},
	} {
		w := trial.New(t, steps, calls(2, assess.DryOut, leak, hold), trial.Rule{When: tt.when, Rule: pack.Rule{Protects: tt.protects, Bars: []assess.PathID{assess.Uncouple}}})
		e := w.Evaluate("water.leak = yes")
		if r := e.First(func(r *judge.Ruling) bool { return r.Rule.ID == "b" }); r.Policy != tt.want {
			t.Errorf("%s for %s: %s, want %s", tt.when, tt.protects, r.Policy, tt.want)
		}
		if e := w.Evaluate("water.leak = no"); e.First((*judge.Ruling).Verifies) != nil {
			t.Errorf("%s is laid open by a step that nobody takes", tt.when)
		}
	}
}

func TestPolicyOfACase(t *testing.T) {
	w := trial.New(t, nil, trial.Rule{When: leak, Rule: pack.Rule{Unknown: assess.PolicyNote, Bars: []assess.PathID{assess.Uncouple}}})
	rule := w.Judge.Pack.Rules[0]
	other := trial.New(t, nil, trial.Rule{When: damp}, trial.Rule{When: mould})
	for i, then := range []assess.Policy{assess.PolicyVerify, assess.PolicyPresume} {
		rule.UnknownWhen = append(rule.UnknownWhen, pack.PolicyCase{When: other.Judge.Pack.Rules[i].When, Then: then})
	}
	for line, want := range map[string]assess.Policy{
		"water.damp = yes": assess.PolicyVerify, "water.mould = yes": assess.PolicyPresume, "water.damp = no": assess.PolicyNote, "water.mould = not sure": assess.PolicyNote,
	} {
		if got := w.Evaluate(line).Rulings[0].Policy; got != want {
			t.Errorf("%s: %s, want %s", line, got, want)
		}
	}
}

// favour: finding out that went well leaves no open trouble, and the permits.
func TestInOurFavour(t *testing.T) {
	w := trial.New(t, nil, calls(2, assess.DryOut, leak, presume), permits(9, damp, hold, assess.Uncouple), calls(3, assess.Level, mould, verify))
	e := w.Judge.Zone(w.Zone(w.Job()), true)
	var got []string
	for i := range e.Rulings {
		got = append(got, e.Rulings[i].Rule.ID+" "+e.Rulings[i].Outcome.Truth.String())
	}
	if s := strings.Join(got, ", "); s != "a no, c open, b open" {
		t.Errorf("%s", s)
	}
}

func TestStandings(t *testing.T) {
	w := trial.New(t, nil, calls(2, assess.DryOut, leak, hold), calls(3, assess.Strengthen, gas, hold),
		permits(9, `danger.burning == "no"`, hold, assess.Uncouple, assess.BackerBoard), bars(damp, hold, assess.BackerBoard), bars(mould, hold, assess.BackerBoard))
	e := w.Evaluate("water.leak = yes", "danger.burning = no", "water.mould = no")
	want := map[assess.PathID]string{
		assess.DryOut: "open [a] []", assess.Strengthen: "waiting [] [the-room.main.danger.gas]", assess.Level: "ruled-out [] []",
		assess.Uncouple: "open [c] []", assess.BackerBoard: "waiting [c] [the-room.main.water.damp]", assess.DirectBond: "ruled-out [] []",
	}
	for _, s := range e.Paths {
		if got := fmt.Sprint(s.State, s.Because, s.Questions); want[s.Path] != "" && got != want[s.Path] {
			t.Errorf("%s stands %s, want %s", s.Path, got, want[s.Path])
		}
	}
	if len(e.Paths) != len(assess.Paths()) || e.Possible(assess.DirectBond) || !e.Possible(assess.BackerBoard) {
		t.Errorf("%d standings, possible %t %t", len(e.Paths), e.Possible(assess.DirectBond), e.Possible(assess.BackerBoard))
	}
}

func TestCautions(t *testing.T) {
	rule := func(when, caution string, r pack.Rule) trial.Rule {
		r.Cautions = []string{caution}
		return trial.Rule{When: when, Rule: r}
	}
	w := trial.New(t, nil, rule(leak, "proven", hold), rule(damp, "open-people", pack.Rule{Protects: assess.ProtectsPeople}),
		rule(damp, "open-bond", pack.Rule{Protects: assess.ProtectsBond}), rule(mould, "no", hold), rule(leak, "proven", hold))
	if got := w.Evaluate("water.leak = yes", "water.mould = no").Cautions(); !slices.Equal(got, []string{"proven", "open-people"}) {
		t.Errorf("cautions %v", got)
	}
}
