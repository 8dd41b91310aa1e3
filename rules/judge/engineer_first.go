package judge

import (
	"underfoot/assess/facts"
	"underfoot/assess/logic"
	"underfoot/assess/result"
	"underfoot/assess/schema"
	"underfoot/rules/pack"
)

// asksEngineer reports whether the rule has a licensed person asked before the layer
// it is about comes up. What lies between two dwellings may be what keeps fire
// and noise apart, so such a rule is asked twice: of the layer as it lies, and
// of the layer as a removal would leave it.
func asksEngineer(r *pack.Rule) bool {
	return r.Calls == result.Engineer && r.Scope == schema.ScopeLayer && r.Protects == result.ProtectsPeople
}

// askEngineerFirst asks the guarding rules of every layer that may have to come up.
// Nothing comes up while one of them is open on a layer that does. They bar
// nothing, so what they say changes no other layer's rise.
func (e *Evaluation) askEngineerFirst(zone *facts.Frame, favour bool) {
	var rises map[string]removal
	for i := range e.Rulings {
		g := &e.Rulings[i]
		if !asksEngineer(g.Rule) || g.Thing.IsRest() {
			continue
		}
		goes := g.Thing.Stays().Truth == logic.No
		if rule(g.Rule, g.Thing.Leaving(logic.Proven), false).Outcome.Truth != logic.No {
			e.Guarded = append(e.Guarded, g.Thing.ID())
			if rises == nil {
				rises = e.removals(zone)
			}
			up := rises[g.Thing.ID()]
			goes = goes || up.due
			g.join(rule(g.Rule, g.Thing.Leaving(up.outcome), false), up, favour)
		}
		g.gates = goes && g.Waits()
		e.EngineerPending = e.EngineerPending || g.gates
	}
}

// Gate is the first open ruling that a removal waits for: a test, or an
// engineer who may have to be asked; nil where there is none.
func (e *Evaluation) Gate() *Ruling {
	return e.First(func(r *Ruling) bool { return r.gates || r.Rule.Calls == result.TestOrAbate && r.Waits() })
}

// join adds to a ruling on a layer as it lies what the rule says of it coming
// up. Where a removal is called for, this stays open even where all else is
// taken in our favour: no mild answer stands in for the one that comes first.
func (g *Ruling) join(leaving Ruling, up removal, favour bool) {
	both := g.Outcome.Or(leaving.Outcome)
	switch {
	case g.Outcome.Truth == logic.Yes, leaving.Outcome.Truth == logic.No:
		return
	case favour && both.Truth == logic.Open && !up.due:
		return
	case both.Truth == logic.Yes:
		g.Policy = ""
	case up.due, up.waits, g.Waits():
		g.Policy = result.PolicyHold
	default:
		g.Policy = result.PolicyNote
	}
	g.Outcome, g.Thing = both, leaving.Thing
}
