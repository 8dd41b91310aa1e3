package judge

import (
	"slices"

	"underfoot/assess/logic"
	"underfoot/assess/result"
	"underfoot/assess/schema"
)

// lead finds the path that leads and lists the steps that are proven.
func (e *Evaluation) lead() {
	call, waiting := e.calls()
	switch {
	case call != nil && call.blocked:
		e.Lead, e.Blocked = result.FindOut, call.Rule.Calls
	case call != nil:
		e.Lead, e.LeadRuling = call.Rule.Calls, call
	case waiting:
		e.Lead = result.FindOut
	default:
		e.leadBase()
	}
}

// calls finds the lowest-ranked proven call, and whether a call waits at all.
// While a test-or-abate call of lower rank waits, no step that breaks into the
// floor is due, and while an engineer may have to be asked first, no removal.
func (e *Evaluation) calls() (call *Ruling, waiting bool) {
	for i := range e.Rulings {
		r := &e.Rulings[i]
		if r.Rule.Calls == result.NoPath {
			continue
		}
		switch {
		case r.Proven():
			if call == nil {
				call = r
			}
			r.blocked = e.TestPending && disturbs(r) || e.EngineerPending && r.Rule.Calls == result.Remove
			if r.Due() {
				e.addStep(r.Rule.Calls)
			}
		case r.Waits():
			waiting = true
			e.TestPending = e.TestPending || r.Rule.Calls == result.TestOrAbate
		}
	}
	return call, waiting
}

// addStep keeps the proven steps in working order, each once.
func (e *Evaluation) addStep(p result.PathID) {
	i, found := slices.BinarySearch(e.Steps, p)
	if !found {
		e.Steps = slices.Insert(e.Steps, i, p)
	}
}

// disturbs reports whether the called step breaks into what may yet turn out
// to be suspect. Lifting a floor that floats or lies loose disturbs nothing.
func disturbs(r *Ruling) bool {
	switch r.Rule.Calls {
	case result.Strengthen, result.Level:
		return true
	case result.Remove:
		return !isLoose(r)
	}
	return false
}

func isLoose(r *Ruling) bool {
	if r.Rule.Scope != schema.ScopeLayer {
		return false
	}
	return r.Thing.HasChoice("layer.held", "floating", "loose-laid")
}

// leadBase finds the base that leads where no step is called for.
func (e *Evaluation) leadBase() {
	base, by, struck := e.firstPermitted()
	switch {
	case by != nil:
		e.Lead, e.LeadRuling = base, by
	case e.baseWaits() || !struck:
		e.Lead = result.FindOut
	case e.covered():
		e.Lead = result.Remove
		e.addStep(result.Remove)
	default:
		e.Lead = result.NoPath
	}
}

// firstPermitted is the first base that a rule permits and no bar touches, with the rule,
// and whether a base that some rule permits is struck out.
func (e *Evaluation) firstPermitted() (base result.PathID, by *Ruling, struck bool) {
	for i := range e.Rulings {
		r := &e.Rulings[i]
		if !permitsNow(r) {
			continue
		}
		for _, b := range r.Rule.Permits {
			switch e.barred(b) {
			case logic.No:
				return b, r, struck
			case logic.Yes:
				struck = true
			}
		}
	}
	return result.NoPath, nil, struck
}

// noneLeft reports whether no base is left and nothing waits that may give one:
// a covering then has to come up.
func (e *Evaluation) noneLeft() bool {
	_, by, struck := e.firstPermitted()
	return by == nil && struck && !e.baseWaits() && e.covered()
}

// permitsNow reports whether the rule permits its bases: yes, or open with
// nothing but a look before the work.
func permitsNow(r *Ruling) bool {
	return r.Rule.IsPermit() && (r.Outcome.Truth == logic.Yes || r.Verifies())
}

// Possible reports whether some rule permits the base, or may yet. What is
// computed for the others concerns nobody.
func (e *Evaluation) Possible(base result.PathID) bool { return e.possible[base] }

// permit notes the bases that some rule permits, or may yet.
func (e *Evaluation) permit() {
	e.possible = map[result.PathID]bool{}
	for i := range e.Rulings {
		if r := &e.Rulings[i]; r.Outcome.Truth != logic.No {
			for _, base := range r.Rule.Permits {
				e.possible[base] = true
			}
		}
	}
}

// barred is yes where a bar strikes the base out, open where one waits.
func (e *Evaluation) barred(base result.PathID) logic.Truth {
	out := logic.No
	for i := range e.Rulings {
		r := &e.Rulings[i]
		if !bars(r, base) {
			continue
		}
		switch {
		case r.Proven():
			return logic.Yes
		case r.Waits():
			out = logic.Open
		}
	}
	return out
}

func bars(r *Ruling, base result.PathID) bool {
	return r.Rule.BarsThis && r.Thing.ID() == base.String() || slices.Contains(r.Rule.Bars, base)
}

// baseWaits reports whether a permit or a bar waits.
func (e *Evaluation) baseWaits() bool {
	for i := range e.Rulings {
		r := &e.Rulings[i]
		if r.Waits() && (r.Rule.IsPermit() || len(r.Rule.Bars) > 0 || r.Rule.BarsThis) {
			return true
		}
	}
	return false
}

// covered reports whether a covering is known to stay on the floor.
func (e *Evaluation) covered() bool {
	for i := range e.Rulings {
		if z := e.Rulings[i].Thing.Zone(); z != nil {
			return z.Number("floor.covers").Lo >= 1
		}
	}
	return false
}

// stand says of every path whether it is open, ruled out or waiting, and why.
func (e *Evaluation) stand() {
	for _, p := range result.Paths() {
		s := result.PathStanding{Path: p}
		if p.IsAssembly() {
			e.standBase(&s)
		} else {
			e.standStep(&s)
		}
		if p == e.Lead {
			s.State = result.PathOpen
		}
		e.Paths = append(e.Paths, s)
	}
}

func (e *Evaluation) standStep(s *result.PathStanding) {
	s.State = result.PathRuledOut
	var missing Missing
	for i := range e.Rulings {
		r := &e.Rulings[i]
		if r.Rule.Calls != s.Path {
			continue
		}
		switch {
		case r.Proven():
			s.State = result.PathOpen
			s.FindingIDs = append(s.FindingIDs, r.FindingID())
		case r.Waits():
			if s.State == result.PathRuledOut {
				s.State = result.PathWaiting
			}
			missing.Add(r)
		}
	}
	s.Questions = missing.List()
}

func (e *Evaluation) standBase(s *result.PathStanding) {
	permitted, waits := false, false
	var missing Missing
	for i := range e.Rulings {
		r := &e.Rulings[i]
		if !slices.Contains(r.Rule.Permits, s.Path) {
			continue
		}
		switch {
		case permitsNow(r):
			permitted = true
			s.FindingIDs = append(s.FindingIDs, r.FindingID())
		case r.Waits():
			waits = true
			missing.Add(r)
		}
	}
	barred := e.barred(s.Path)
	for i := range e.Rulings {
		r := &e.Rulings[i]
		switch {
		case !bars(r, s.Path):
		case r.Proven():
			s.FindingIDs = append(s.FindingIDs, r.FindingID())
		case r.Waits() && barred == logic.Open:
			missing.Add(r)
		}
	}
	s.Questions = missing.List()
	switch {
	case barred == logic.Yes || !permitted && !waits:
		s.State, s.Questions = result.PathRuledOut, nil
	case permitted && barred == logic.No:
		s.State = result.PathOpen
	default:
		s.State = result.PathWaiting
	}
}
