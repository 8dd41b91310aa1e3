package judge

import (
	"underfoot/assess/facts"
	"underfoot/assess/logic"
	"underfoot/assess/result"
	"underfoot/assess/schema"
)

// A removal is whether a layer has to come up.
type removal struct {
	outcome logic.Outcome
	due     bool // it does, as things stand and are presumed
	waits   bool // paths wait for the answer
}

func (r *removal) or(o logic.Outcome, due, waits bool) {
	if o.Truth != logic.No {
		r.outcome, r.due, r.waits = r.outcome.Or(o), r.due || due, r.waits || waits
	}
}

// removals are what is known of every layer having to come up, by its id: a rule
// removes it or one below it, or it is the top layer and no base is left for it.
// Each removal goes through the layers once, from below.
func (e *Evaluation) removals(zone *facts.Frame) map[string]removal {
	layers := zone.Things(schema.ScopeLayer)
	out, own := noRemovals(len(layers)), noRemovals(len(layers))
	place := places(layers)
	for i := range e.Rulings {
		switch r := &e.Rulings[i]; {
		case r.Rule.Calls != result.Remove:
		case r.Rule.Scope != schema.ScopeLayer:
			r.addRemoval(layers, out)
		default:
			if at, there := place[r.Thing.ID()]; there {
				own[at].or(r.Outcome, r.Proven(), r.Waits())
			}
		}
	}
	left, below := e.coverRemoval(zone), removal{outcome: logic.Refuted}
	all := make(map[string]removal, len(layers))
	for i := len(layers) - 1; i >= 0; i-- {
		below.or(own[i].outcome, own[i].due, own[i].waits)
		up := out[i]
		up.or(below.outcome, below.due, below.waits)
		up.or(layers[i].Top().And(left.outcome), left.due, left.waits)
		all[layers[i].ID()] = up
	}
	return all
}

// addRemoval adds a removal of the zone to every layer that it takes up, and to
// those above it.
func (r *Ruling) addRemoval(layers []*facts.Frame, out []removal) {
	reaches := logic.Refuted
	for i := len(layers) - 1; i >= 0; i-- {
		reaches = reaches.Or(r.removes(layers[i]))
		out[i].or(r.Outcome.And(reaches), r.Proven(), r.Waits())
	}
}

// noRemovals are rises of layers of which nothing is known to take them up.
func noRemovals(n int) []removal {
	out := make([]removal, n)
	for i := range out {
		out[i].outcome = logic.Refuted
	}
	return out
}

// places are where the layers stand, by their ids.
func places(layers []*facts.Frame) map[string]int {
	at := make(map[string]int, len(layers))
	for i, f := range layers {
		at[f.ID()] = i
	}
	return at
}

// coverRemoval is whether a covering has to come up because no base is left for it.
func (e *Evaluation) coverRemoval(zone *facts.Frame) removal {
	covered := zone.AtLeast("floor.covers", 1)
	if covered.Truth == logic.No {
		return removal{outcome: logic.Refuted}
	}
	return removal{e.allBarred().And(covered), e.noneLeft(), e.baseWaits()}
}

// Lifted says of each layer whether a removal that is due takes it up, or may.
func (e *Evaluation) Lifted(layers []*facts.Frame) []bool {
	out := make([]bool, len(layers))
	place := places(layers)
	for i := range e.Rulings {
		r := &e.Rulings[i]
		if r.Rule.Calls != result.Remove || !r.Due() {
			continue
		}
		if r.Rule.Scope == schema.ScopeLayer {
			if at, there := place[r.Thing.ID()]; there {
				out[at] = true
			}
			continue
		}
		for at, f := range layers {
			out[at] = out[at] || r.removes(f).Truth != logic.No
		}
	}
	return out
}

// removes is whether a removal of the zone takes the layer up: what its record names.
func (r *Ruling) removes(layer *facts.Frame) logic.Outcome {
	if r.Rule.TakesUp == nil {
		return logic.Refuted
	}
	out := r.Rule.TakesUp.Eval(layer)
	if layer.IsRest() && out.Truth != logic.No {
		return logic.OpenOn(layer.RestDeps())
	}
	return out
}

// allBarred is whether every base is struck out that some rule permits.
func (e *Evaluation) allBarred() logic.Outcome {
	permitted := e.First(func(r *Ruling) bool { return r.Rule.IsPermit() && r.Outcome.Truth != logic.No })
	switch {
	case permitted == nil, e.baseEnd(rawHigh) < result.Repair:
		return logic.Refuted
	case e.baseEnd(rawLow) == result.Repair:
		return logic.Proven
	}
	return logic.OpenOn(e.baseDeps())
}

// baseDeps are the answers that the open permits and bars miss.
func (e *Evaluation) baseDeps() logic.Deps {
	var deps logic.Deps
	for i := range e.Rulings {
		if r := &e.Rulings[i]; r.Rule.IsPermit() || len(r.Rule.Bars) > 0 || r.Rule.BarsThis {
			deps = deps.Union(r.Outcome.Deps)
		}
	}
	return deps
}
