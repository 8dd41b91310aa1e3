package judge

import (
	"underfoot/assess"
	"underfoot/assess/facts"
	"underfoot/rules/pack"
)

// guards reports whether the rule has a licensed person asked before the layer
// it is about comes up. What lies between two dwellings may be what keeps fire
// and noise apart, so such a rule is asked twice: of the layer as it lies, and
// of the layer as a removal would leave it.
func guards(r *pack.Rule) bool {
	return r.Calls == assess.Engineer && r.Scope == assess.ScopeLayer && r.Protects == "people"
}

// guard asks the guarding rules of every layer that may have to come up.
// Nothing comes up while one of them is open on a layer that does.
func (j *Judge) guard(l *Look, zone *facts.Frame, favour bool) {
	for i := range l.Rulings {
		g := &l.Rulings[i]
		if !guards(g.Rule) || g.Thing.IsRest() {
			continue
		}
		goes := g.Thing.Stays().Truth == assess.No
		if rule(g.Rule, g.Thing.Leaving(assess.Proven), false).Outcome.Truth != assess.No {
			l.Guarded = append(l.Guarded, g.Thing.ID())
			up := l.rise(zone, g.Thing)
			goes = goes || up.due
			g.join(rule(g.Rule, g.Thing.Leaving(up.outcome), false), up, favour)
		}
		g.gates = goes && g.Waits()
		l.Unasked = l.Unasked || g.gates
	}
}

// Gate is the first open ruling that a removal waits for: a test, or an
// engineer who may have to be asked; nil where there is none.
func (l *Look) Gate() *Ruling {
	return l.First(func(r *Ruling) bool { return r.gates || r.Rule.Calls == assess.TestOrAbate && r.Waits() })
}

// join adds to a ruling on a layer as it lies what the rule says of it coming
// up. Where a removal is called for, this stays open even where all else is
// taken in our favour: no mild answer stands in for the one that comes first.
func (g *Ruling) join(leaving Ruling, up rise, favour bool) {
	both := g.Outcome.Or(leaving.Outcome)
	switch {
	case g.Outcome.Truth == assess.Yes, leaving.Outcome.Truth == assess.No:
		return
	case favour && both.Truth == assess.Open && !up.due:
		return
	case both.Truth == assess.Yes:
		g.Policy = ""
	case up.due, up.waits, g.Waits():
		g.Policy = pack.Hold
	default:
		g.Policy = pack.Note
	}
	g.Outcome, g.Thing = both, leaving.Thing
}

// A rise is whether a layer has to come up.
type rise struct {
	outcome assess.Outcome
	due     bool // it does, as things stand and are presumed
	waits   bool // paths wait for the answer
}

func (r *rise) or(o assess.Outcome, due, waits bool) {
	if o.Truth != assess.No {
		r.outcome, r.due, r.waits = r.outcome.Or(o), r.due || due, r.waits || waits
	}
}

// rise is whether the layer has to come up: a rule removes it or one below it,
// or it is the top layer and no base is left for it.
func (l *Look) rise(zone, layer *facts.Frame) rise {
	out := rise{outcome: assess.Refuted}
	for i := range l.Rulings {
		if r := &l.Rulings[i]; r.Rule.Calls == assess.Remove {
			out.or(r.Outcome.And(r.reaches(zone, layer)), r.Proven(), r.Waits())
		}
	}
	top := layer.Top().And(zone.AtLeast("floor.covers", 1))
	if top.Truth != assess.No {
		out.or(l.stuck().And(top), l.leftOver(), l.baseWaits())
	}
	return out
}

// reaches reports whether a removal takes the layer up, or one below it.
func (r *Ruling) reaches(zone, layer *facts.Frame) assess.Outcome {
	below, out := false, assess.Refuted
	for _, f := range zone.Things(assess.ScopeLayer) {
		if below = below || f.ID() == layer.ID(); below {
			out = out.Or(r.Takes(f))
		}
	}
	return out
}

// Takes reports whether a removal takes the layer up: its own subject, or what
// its record names.
func (r *Ruling) Takes(layer *facts.Frame) assess.Outcome {
	switch {
	case r.Rule.Scope == assess.ScopeLayer && r.Thing.ID() == layer.ID():
		return assess.Proven
	case r.Rule.Scope == assess.ScopeLayer || r.Rule.TakesUp == nil:
		return assess.Refuted
	}
	out := r.Rule.TakesUp.Eval(layer)
	if layer.IsRest() && out.Truth != assess.No {
		return assess.OpenOn(layer.RestDeps())
	}
	return out
}

// stuck is whether every base is struck out that some rule permits.
func (l *Look) stuck() assess.Outcome {
	permitted := l.First(func(r *Ruling) bool { return r.Rule.IsPermit() && r.Outcome.Truth != assess.No })
	switch {
	case permitted == nil, l.baseEnd(rawHigh) < assess.Repair:
		return assess.Refuted
	case l.baseEnd(rawLow) == assess.Repair:
		return assess.Proven
	}
	return assess.OpenOn(l.baseDeps())
}

// baseDeps are the answers that the open permits and bars miss.
func (l *Look) baseDeps() assess.Deps {
	var deps assess.Deps
	for i := range l.Rulings {
		if r := &l.Rulings[i]; r.Rule.IsPermit() || len(r.Rule.Bars) > 0 || r.Rule.BarsThis {
			deps = deps.Union(r.Outcome.Deps)
		}
	}
	return deps
}
