package judge_test

import (
	"fmt"
	"testing"

	"underfoot/assess/result"
	"underfoot/assess/schema"
	"underfoot/rules/internal/trial"
	"underfoot/rules/pack"
)

// asks is a rule that has an engineer asked before a layer comes up.
var asks = trial.Rule{When: `layer.stays == "no" && layer.kind == "cement-screed"`,
	Rule: pack.Rule{ID: "asks", Rank: 1, Calls: result.Engineer, Scope: schema.ScopeLayer, Protects: result.ProtectsPeople}}

// An engineer is asked before a layer comes up that he has to be asked about,
// whatever takes it up: its own removal, one from below, or what the zone's names.
func TestNothingComesUpBeforeTheEngineer(t *testing.T) {
	own := calls(5, result.Remove, wet, pack.Rule{ID: "own", Scope: schema.ScopeLayer})
	zone := trial.Rule{When: leak, TakesUp: `layer.kind == "cork"`, Rule: pack.Rule{ID: "zone", Rank: 6, Calls: result.Remove}}
	screed := []string{"layer.complete = yes", "layer.l1.kind = cement-screed", "layer.l2.kind = cork"}
	for name, tt := range map[string]struct {
		lines []string
		want  string
	}{
		"nothing comes up":           {[]string{"layer.l1.wet = no", "layer.l2.wet = no", "water.leak = no"}, "find-out [l1]"},
		"it comes up itself":         {[]string{"layer.l1.wet = yes", "layer.l2.wet = no", "water.leak = no"}, "engineer [l1]"},
		"what lies below comes up":   {[]string{"layer.l1.wet = no", "layer.l2.wet = yes", "water.leak = no"}, "engineer [l1]"},
		"the zone's removal does it": {[]string{"layer.l1.wet = no", "layer.l2.wet = no", "water.leak = yes"}, "engineer [l1]"},
		"it may come up":             {[]string{"layer.l1.wet = no", "layer.l2.wet = no"}, "find-out [l1]"},
		"it goes already":            {[]string{"layer.l1.wet = no", "layer.l2.wet = no", "water.leak = no", "layer.l1.coming_out = yes"}, "engineer [l1]"},
	} {
		e := trial.New(t, nil, asks, own, zone).Evaluate(append(screed, tt.lines...)...)
		if got := fmt.Sprint(e.Lead, " ", e.Guarded); got != tt.want {
			t.Errorf("%s: %s, want %s", name, got, tt.want)
		}
	}
}

// While it is open what the layer is, its removal waits behind the engineer.
func TestARemovalWaitsForTheEngineersAnswer(t *testing.T) {
	own := calls(5, result.Remove, wet, pack.Rule{ID: "own", Scope: schema.ScopeLayer})
	e := trial.New(t, nil, asks, own).Evaluate("layer.complete = yes", "layer.l1.wet = yes")
	if e.Lead != result.FindOut || e.Blocked != result.Remove || !e.EngineerPending || e.Gate() == nil || e.Gate().Rule.ID != "asks" {
		t.Errorf("%s behind %s, unasked %t, gate %v", e.Lead, e.Blocked, e.EngineerPending, e.Gate())
	}
	if e := trial.New(t, nil, asks, own).Evaluate("layer.complete = yes", "layer.l1.wet = yes", "layer.l1.kind = cork"); e.Lead != result.Remove || e.EngineerPending {
		t.Errorf("cork: %s, unasked %t", e.Lead, e.EngineerPending)
	}
}

// A covering that has to go because no base is left is asked about too.
func TestACoveringThatIsLeftOverIsAskedAbout(t *testing.T) {
	tile := permits(90, `danger.burning == "no"`, pack.Rule{ID: "tile"}, result.Uncouple)
	lines := []string{"layer.complete = yes", "layer.l1.kind = cement-screed", "danger.burning = no", "zone.base = joists"}
	for line, want := range map[string]result.PathID{"water.damp = yes": result.Engineer, "water.damp = no": result.Uncouple} {
		if e := trial.New(t, nil, asks, tile, bars(damp, hold, result.Uncouple)).Evaluate(append(lines, line)...); e.Lead != want {
			t.Errorf("%s: %s, want %s", line, e.Lead, want)
		}
	}
}

// Lifted are the layers that a due removal takes up.
func TestLifted(t *testing.T) {
	w := trial.New(t, nil, calls(5, result.Remove, wet, pack.Rule{Scope: schema.ScopeLayer}),
		trial.Rule{When: leak, TakesUp: `layer.kind == "cork"`, Rule: pack.Rule{Rank: 6, Calls: result.Remove}})
	zone := w.Zone(w.Job("layer.complete = yes", "layer.l1.kind = cork", "layer.l1.wet = no", "layer.l2.wet = yes", "layer.l3.wet = no", "layer.l3.kind = carpet", "water.leak = yes"))
	if got := fmt.Sprint(w.Judge.Zone(zone, false).Lifted(zone.Things(schema.ScopeLayer))); got != "[true true false]" {
		t.Errorf("lifted %s", got)
	}
}
