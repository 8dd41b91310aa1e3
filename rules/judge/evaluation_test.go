package judge_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"underfoot/assess/logic"
	"underfoot/assess/result"
	"underfoot/assess/schema"
	"underfoot/rules/internal/trial"
	"underfoot/rules/judge"
	"underfoot/rules/pack"
)

// calls is a rule that calls for a step.
func calls(rank float64, path result.PathID, when string, r pack.Rule) trial.Rule {
	r.Rank, r.Calls = rank, path
	return trial.Rule{When: when, Rule: r}
}

// permits is a rule that permits bases.
func permits(rank float64, when string, r pack.Rule, bases ...result.PathID) trial.Rule {
	r.Rank, r.Permits = rank, bases
	return trial.Rule{When: when, Rule: r}
}

// bars is a rule that bars bases.
func bars(when string, r pack.Rule, bases ...result.PathID) trial.Rule {
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
	verify  = pack.Rule{Unknown: result.PolicyVerify}
	presume = pack.Rule{Unknown: result.PolicyPresume}
	note    = pack.Rule{Unknown: result.PolicyNote}
	hold    = pack.Rule{}
)

// state is what leads and what else there is, in one line.
func state(e *judge.Evaluation) string {
	s := fmt.Sprintf("%s %s-%s", e.Lead, e.Span.Low, e.Span.High)
	if e.Blocked != result.NoPath {
		s += " behind " + e.Blocked.String()
	}
	if e.LeadRuling != nil {
		s += " by " + e.LeadRuling.FindingID()
	}
	return s
}

func TestWhatLeads(t *testing.T) {
	removal := calls(5, result.Remove, wet, pack.Rule{Scope: schema.ScopeLayer, ID: "wet"})
	laboratory := calls(2, result.TestOrAbate, gas, pack.Rule{ID: "lab"})
	tile := permits(90, `danger.burning == "no"`, pack.Rule{ID: "tile"}, result.Uncouple, result.BackerBoard)
	bond := permits(80, leak, pack.Rule{ID: "bond", Ready: true}, result.DirectBond)
	open := []string{"layer.complete = yes"}
	for name, tt := range map[string]struct {
		rules []trial.Rule
		lines []string
		want  string
	}{
		"the lowest rank of two proven calls": {[]trial.Rule{calls(4, result.DryOut, leak, hold), calls(3, result.Strengthen, leak, hold)},
			[]string{"water.leak = yes"}, "strengthen repair-repair by b"},
		"a presumed call is proven": {[]trial.Rule{calls(4, result.DryOut, leak, presume)}, nil, "dry-out repair-repair by a"},
		"a call that waits":         {[]trial.Rule{calls(4, result.DryOut, leak, hold), tile}, []string{"danger.burning = no"}, "find-out prepare-repair"},
		"an open look before the work keeps a base": {[]trial.Rule{calls(4, result.DryOut, leak, verify), tile}, []string{"danger.burning = no"},
			"uncouple prepare-prepare by tile"},
		"an open note asks for nothing": {[]trial.Rule{calls(4, result.DryOut, leak, note), tile}, []string{"danger.burning = no"}, "uncouple prepare-prepare by tile"},
		"a removal waits behind the laboratory": {[]trial.Rule{laboratory, removal},
			append(open, "layer.l1.wet = yes", "layer.l1.kind = sheet-vinyl"), "find-out repair-stop behind remove"},
		"strengthening waits behind the laboratory": {[]trial.Rule{laboratory, calls(4, result.Strengthen, leak, hold)}, []string{"water.leak = yes"},
			"find-out repair-stop behind strengthen"},
		"level waits behind the laboratory": {[]trial.Rule{laboratory, calls(4, result.Level, leak, hold)}, []string{"water.leak = yes"},
			"find-out prepare-stop behind level"},
		"drying does not": {[]trial.Rule{laboratory, calls(4, result.DryOut, leak, hold)}, []string{"water.leak = yes"}, "dry-out repair-stop by b"},
		"a laboratory of higher rank holds nothing back": {[]trial.Rule{calls(9, result.TestOrAbate, gas, hold), calls(4, result.Strengthen, leak, hold)},
			[]string{"water.leak = yes"}, "strengthen repair-stop by b"},
		"a floating floor is lifted before the laboratory": {[]trial.Rule{laboratory, removal},
			append(open, "layer.l1.wet = yes", "layer.l1.kind = laminate", "layer.l1.held = floating"), "remove repair-stop by wet@l1"},
		"the first base that no bar touches": {[]trial.Rule{tile, bars(damp, hold, result.Uncouple)}, []string{"danger.burning = no", "water.damp = yes"},
			"backer-board prepare-prepare by tile"},
		"a bar that waits leaves the next base": {[]trial.Rule{tile, bars(damp, hold, result.Uncouple)}, []string{"danger.burning = no"},
			"backer-board prepare-prepare by tile"},
		"all bases wait for a bar":      {[]trial.Rule{tile, bars(damp, hold, result.Uncouple, result.BackerBoard)}, []string{"danger.burning = no"}, "find-out prepare-repair"},
		"a bar to verify bars nothing":  {[]trial.Rule{tile, bars(damp, verify, result.Uncouple)}, []string{"danger.burning = no"}, "uncouple prepare-prepare by tile"},
		"the lower rank of two permits": {[]trial.Rule{tile, bond}, []string{"danger.burning = no", "water.leak = yes"}, "direct-bond ready-ready by bond"},
		"a look before the work keeps ready away": {[]trial.Rule{bond, calls(4, result.DryOut, damp, verify)}, []string{"water.leak = yes"},
			"direct-bond ready-prepare by bond"},
		"every base barred and nothing on the floor": {[]trial.Rule{tile, bars(damp, hold, result.Uncouple, result.BackerBoard)},
			[]string{"danger.burning = no", "water.damp = yes", "layer.complete = yes"}, "none repair-repair"},
		"every base barred and a covering on it": {[]trial.Rule{tile, bars(damp, hold, result.Uncouple, result.BackerBoard)},
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
	w := trial.New(t, nil, calls(9, result.DryOut, leak, hold), calls(2, result.Level, leak, hold), calls(3, result.Engineer, leak, hold), calls(4, result.DryOut, leak, hold))
	if got := fmt.Sprint(w.Evaluate("water.leak = yes").Steps); got != "[engineer dry-out level]" {
		t.Errorf("steps %s", got)
	}
	w = trial.New(t, nil, calls(1, result.TestOrAbate, gas, hold), calls(3, result.Strengthen, leak, hold), calls(4, result.DryOut, leak, hold))
	if got := fmt.Sprint(w.Evaluate("water.leak = yes").Steps); got != "[dry-out]" {
		t.Errorf("steps %s behind a laboratory", got)
	}
}

func TestRestOfAListProvesNothing(t *testing.T) {
	w := trial.New(t, nil, calls(3, result.Remove, `layer.stays == "yes"`, pack.Rule{Scope: schema.ScopeLayer, Unknown: result.PolicyPresume}))
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
	for protects, want := range map[result.Protects]logic.Truth{result.ProtectsPeople: logic.Yes, result.ProtectsBond: logic.No} {
		w := trial.New(t, nil, trial.Rule{When: wet, Rule: pack.Rule{Scope: schema.ScopeLayer, Protects: protects}})
		r := w.Evaluate("layer.complete = yes", "layer.l1.wet = yes", "layer.l1.coming_out = yes").Rulings[0]
		if r.Outcome.Truth != want || r.Gone() != (want == logic.No) {
			t.Errorf("%s: %v, gone %t", protects, r.Outcome.Truth, r.Gone())
		}
	}
}

// A proven step lays open what it reveals: what waits only for that is looked
// at then, but never where people are protected.
func TestUncovered(t *testing.T) {
	steps := map[result.PathID]pack.Step{result.DryOut: {Reveals: []string{"danger.gas", "slab.*"}}}
	for _, tt := range []struct {
		when     string
		protects result.Protects
		want     result.Policy
	}{
		{gas, result.ProtectsBond, result.PolicyVerify},
		{gas, result.ProtectsPeople, result.PolicyHold},
		{gas + " || " + mould, result.ProtectsBond, result.PolicyHold},
		{damp, result.ProtectsBond, result.PolicyHold},
	} {
		w := trial.New(t, steps, calls(2, result.DryOut, leak, hold), trial.Rule{When: tt.when, Rule: pack.Rule{Protects: tt.protects, Bars: []result.PathID{result.Uncouple}}})
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
	w := trial.New(t, nil, trial.Rule{When: leak, Rule: pack.Rule{Unknown: result.PolicyNote, Bars: []result.PathID{result.Uncouple}}})
	rule := w.Judge.Pack.Rules[0]
	other := trial.New(t, nil, trial.Rule{When: damp}, trial.Rule{When: mould})
	for i, then := range []result.Policy{result.PolicyVerify, result.PolicyPresume} {
		rule.UnknownWhen = append(rule.UnknownWhen, pack.PolicyCase{When: other.Judge.Pack.Rules[i].When, Then: then})
	}
	for line, want := range map[string]result.Policy{
		"water.damp = yes": result.PolicyVerify, "water.mould = yes": result.PolicyPresume, "water.damp = no": result.PolicyNote, "water.mould = not sure": result.PolicyNote,
	} {
		if got := w.Evaluate(line).Rulings[0].Policy; got != want {
			t.Errorf("%s: %s, want %s", line, got, want)
		}
	}
}

// favour: finding out that went well leaves no open trouble, and the permits.
func TestInOurFavour(t *testing.T) {
	w := trial.New(t, nil, calls(2, result.DryOut, leak, presume), permits(9, damp, hold, result.Uncouple), calls(3, result.Level, mould, verify))
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
	w := trial.New(t, nil, calls(2, result.DryOut, leak, hold), calls(3, result.Strengthen, gas, hold),
		permits(9, `danger.burning == "no"`, hold, result.Uncouple, result.BackerBoard), bars(damp, hold, result.BackerBoard), bars(mould, hold, result.BackerBoard))
	e := w.Evaluate("water.leak = yes", "danger.burning = no", "water.mould = no")
	want := map[result.PathID]string{
		result.DryOut: "open [a] []", result.Strengthen: "waiting [] [the-room.main.danger.gas]", result.Level: "ruled-out [] []",
		result.Uncouple: "open [c] []", result.BackerBoard: "waiting [c] [the-room.main.water.damp]", result.DirectBond: "ruled-out [] []",
	}
	for _, s := range e.Paths {
		if got := fmt.Sprint(s.State, s.FindingIDs, s.Questions); want[s.Path] != "" && got != want[s.Path] {
			t.Errorf("%s stands %s, want %s", s.Path, got, want[s.Path])
		}
	}
	if len(e.Paths) != len(result.Paths()) || e.Possible(result.DirectBond) || !e.Possible(result.BackerBoard) {
		t.Errorf("%d standings, possible %t %t", len(e.Paths), e.Possible(result.DirectBond), e.Possible(result.BackerBoard))
	}
}

func TestCautions(t *testing.T) {
	rule := func(when, caution string, r pack.Rule) trial.Rule {
		r.Cautions = []string{caution}
		return trial.Rule{When: when, Rule: r}
	}
	w := trial.New(t, nil, rule(leak, "proven", hold), rule(damp, "open-people", pack.Rule{Protects: result.ProtectsPeople}),
		rule(damp, "open-bond", pack.Rule{Protects: result.ProtectsBond}), rule(mould, "no", hold), rule(leak, "proven", hold))
	if got := w.Evaluate("water.leak = yes", "water.mould = no").Cautions(); !slices.Equal(got, []string{"proven", "open-people"}) {
		t.Errorf("cautions %v", got)
	}
}
