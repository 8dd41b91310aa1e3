package judge

import (
	"slices"

	"underfoot/assess"
)

// lead finds the path that leads and lists the steps that are proven.
func (e *Evaluation) lead() {
	call, waiting := e.calls()
	switch {
	case call != nil && call.behind:
		e.Lead, e.Behind = assess.FindOut, call.Rule.Calls
	case call != nil:
		e.Lead, e.By = call.Rule.Calls, call
	case waiting:
		e.Lead = assess.FindOut
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
		if r.Rule.Calls == assess.NoPath {
			continue
		}
		switch {
		case r.Proven():
			if call == nil {
				call = r
			}
			r.behind = e.Untested && disturbs(r) || e.Unasked && r.Rule.Calls == assess.Remove
			if r.Due() {
				e.addStep(r.Rule.Calls)
			}
		case r.Waits():
			waiting = true
			e.Untested = e.Untested || r.Rule.Calls == assess.TestOrAbate
		}
	}
	return call, waiting
}

// addStep keeps the proven steps in working order, each once.
func (e *Evaluation) addStep(p assess.PathID) {
	i, found := slices.BinarySearch(e.Steps, p)
	if !found {
		e.Steps = slices.Insert(e.Steps, i, p)
	}
}

// disturbs reports whether the called step breaks into what may yet turn out
// to be suspect. Lifting a floor that floats or lies loose disturbs nothing.
func disturbs(r *Ruling) bool {
	switch r.Rule.Calls {
	case assess.Strengthen, assess.Level:
		return true
	case assess.Remove:
		return !lies(r)
	}
	return false
}

func lies(r *Ruling) bool {
	if r.Rule.Scope != assess.ScopeLayer {
		return false
	}
	return r.Thing.HasChoice("layer.held", "floating", "loose-laid")
}

// leadBase finds the base that leads where no step is called for.
func (e *Evaluation) leadBase() {
	base, by, struck := e.free()
	switch {
	case by != nil:
		e.Lead, e.By = base, by
	case e.baseWaits() || !struck:
		e.Lead = assess.FindOut
	case e.covered():
		e.Lead = assess.Remove
		e.addStep(assess.Remove)
	default:
		e.Lead = assess.NoPath
	}
}

// free is the first base that a rule permits and no bar touches, with the rule,
// and whether a base that some rule permits is struck out.
func (e *Evaluation) free() (base assess.PathID, by *Ruling, struck bool) {
	for i := range e.Rulings {
		r := &e.Rulings[i]
		if !permitsNow(r) {
			continue
		}
		for _, b := range r.Rule.Permits {
			switch e.barred(b) {
			case assess.No:
				return b, r, struck
			case assess.Yes:
				struck = true
			}
		}
	}
	return assess.NoPath, nil, struck
}

// leftOver reports whether no base is left and nothing waits that may give one:
// a covering then has to come up.
func (e *Evaluation) leftOver() bool {
	_, by, struck := e.free()
	return by == nil && struck && !e.baseWaits() && e.covered()
}

// permitsNow reports whether the rule permits its bases: yes, or open with
// nothing but a look before the work.
func permitsNow(r *Ruling) bool {
	return r.Rule.IsPermit() && (r.Outcome.Truth == assess.Yes || r.Verifies())
}

// Possible reports whether some rule permits the base, or may yet. What is
// computed for the others concerns nobody.
func (e *Evaluation) Possible(base assess.PathID) bool { return e.possible[base] }

// permit notes the bases that some rule permits, or may yet.
func (e *Evaluation) permit() {
	e.possible = map[assess.PathID]bool{}
	for i := range e.Rulings {
		if r := &e.Rulings[i]; r.Outcome.Truth != assess.No {
			for _, base := range r.Rule.Permits {
				e.possible[base] = true
			}
		}
	}
}

// barred is yes where a bar strikes the base out, open where one waits.
func (e *Evaluation) barred(base assess.PathID) assess.Truth {
	out := assess.No
	for i := range e.Rulings {
		r := &e.Rulings[i]
		if !bars(r, base) {
			continue
		}
		switch {
		case r.Proven():
			return assess.Yes
		case r.Waits():
			out = assess.Open
		}
	}
	return out
}

func bars(r *Ruling, base assess.PathID) bool {
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
	for _, p := range assess.Paths() {
		s := assess.PathStanding{Path: p}
		if p.IsBase() {
			e.standBase(&s)
		} else {
			e.standStep(&s)
		}
		if p == e.Lead {
			s.State = assess.PathOpen
		}
		e.Paths = append(e.Paths, s)
	}
}

func (e *Evaluation) standStep(s *assess.PathStanding) {
	s.State = assess.PathRuledOut
	var missing Missing
	for i := range e.Rulings {
		r := &e.Rulings[i]
		if r.Rule.Calls != s.Path {
			continue
		}
		switch {
		case r.Proven():
			s.State = assess.PathOpen
			s.Because = append(s.Because, r.FindingID())
		case r.Waits():
			if s.State == assess.PathRuledOut {
				s.State = assess.PathWaiting
			}
			missing.Add(r)
		}
	}
	s.Questions = missing.List()
}

func (e *Evaluation) standBase(s *assess.PathStanding) {
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
			s.Because = append(s.Because, r.FindingID())
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
			s.Because = append(s.Because, r.FindingID())
		case r.Waits() && barred == assess.Open:
			missing.Add(r)
		}
	}
	s.Questions = missing.List()
	switch {
	case barred == assess.Yes || !permitted && !waits:
		s.State, s.Questions = assess.PathRuledOut, nil
	case permitted && barred == assess.No:
		s.State = assess.PathOpen
	default:
		s.State = assess.PathWaiting
	}
}
