package judge

import (
	"slices"

	"underfoot/assess"
)

// lead finds the path that leads and lists the steps that are proven.
func (l *Look) lead() {
	call, waiting := l.calls()
	switch {
	case call != nil && call.behind:
		l.Lead, l.Behind = assess.FindOut, call.Rule.Calls
	case call != nil:
		l.Lead, l.By = call.Rule.Calls, call
	case waiting:
		l.Lead = assess.FindOut
	default:
		l.leadBase()
	}
}

// calls finds the lowest-ranked proven call, and whether a call waits at all.
// While a test-or-abate call of lower rank waits, no step that breaks into the
// floor is due, and while an engineer may have to be asked first, no removal.
func (l *Look) calls() (call *Ruling, waiting bool) {
	for i := range l.Rulings {
		r := &l.Rulings[i]
		if r.Rule.Calls == assess.NoPath {
			continue
		}
		switch {
		case r.Proven():
			if call == nil {
				call = r
			}
			r.behind = l.Untested && disturbs(r) || l.Unasked && r.Rule.Calls == assess.Remove
			if r.Due() {
				l.addStep(r.Rule.Calls)
			}
		case r.Waits():
			waiting = true
			l.Untested = l.Untested || r.Rule.Calls == assess.TestOrAbate
		}
	}
	return call, waiting
}

// addStep keeps the proven steps in working order, each once.
func (l *Look) addStep(p assess.PathID) {
	i, found := slices.BinarySearch(l.Steps, p)
	if !found {
		l.Steps = slices.Insert(l.Steps, i, p)
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
func (l *Look) leadBase() {
	base, by, struck := l.free()
	switch {
	case by != nil:
		l.Lead, l.By = base, by
	case l.baseWaits() || !struck:
		l.Lead = assess.FindOut
	case l.covered():
		l.Lead = assess.Remove
		l.addStep(assess.Remove)
	default:
		l.Lead = assess.NoPath
	}
}

// free is the first base that a rule permits and no bar touches, with the rule,
// and whether a base that some rule permits is struck out.
func (l *Look) free() (base assess.PathID, by *Ruling, struck bool) {
	for i := range l.Rulings {
		r := &l.Rulings[i]
		if !permitsNow(r) {
			continue
		}
		for _, b := range r.Rule.Permits {
			switch l.barred(b) {
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
func (l *Look) leftOver() bool {
	_, by, struck := l.free()
	return by == nil && struck && !l.baseWaits() && l.covered()
}

// permitsNow reports whether the rule permits its bases: yes, or open with
// nothing but a look before the work.
func permitsNow(r *Ruling) bool {
	return r.Rule.IsPermit() && (r.Outcome.Truth == assess.Yes || r.Verifies())
}

// Possible reports whether some rule permits the base, or may yet. What is
// computed for the others concerns nobody.
func (l *Look) Possible(base assess.PathID) bool {
	for i := range l.Rulings {
		r := &l.Rulings[i]
		if r.Outcome.Truth != assess.No && slices.Contains(r.Rule.Permits, base) {
			return true
		}
	}
	return false
}

// barred is yes where a bar strikes the base out, open where one waits.
func (l *Look) barred(base assess.PathID) assess.Truth {
	out := assess.No
	for i := range l.Rulings {
		r := &l.Rulings[i]
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
func (l *Look) baseWaits() bool {
	for i := range l.Rulings {
		r := &l.Rulings[i]
		if r.Waits() && (r.Rule.IsPermit() || len(r.Rule.Bars) > 0 || r.Rule.BarsThis) {
			return true
		}
	}
	return false
}

// covered reports whether a covering is known to stay on the floor.
func (l *Look) covered() bool {
	for i := range l.Rulings {
		if z := l.Rulings[i].Thing.Zone(); z != nil {
			return z.Number("floor.covers").Lo >= 1
		}
	}
	return false
}

// stand says of every path whether it is open, ruled out or waiting, and why.
func (l *Look) stand() {
	for _, p := range assess.Paths() {
		s := assess.PathStanding{Path: p}
		if p.IsBase() {
			l.standBase(&s)
		} else {
			l.standStep(&s)
		}
		if p == l.Lead {
			s.State = assess.PathOpen
		}
		l.Paths = append(l.Paths, s)
	}
}

func (l *Look) standStep(s *assess.PathStanding) {
	s.State = assess.PathRuledOut
	for i := range l.Rulings {
		r := &l.Rulings[i]
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
			s.Questions = r.Missing(s.Questions)
		}
	}
}

func (l *Look) standBase(s *assess.PathStanding) {
	permitted, waits := false, false
	for i := range l.Rulings {
		r := &l.Rulings[i]
		if !slices.Contains(r.Rule.Permits, s.Path) {
			continue
		}
		switch {
		case permitsNow(r):
			permitted = true
			s.Because = append(s.Because, r.FindingID())
		case r.Waits():
			waits = true
			s.Questions = r.Missing(s.Questions)
		}
	}
	barred := l.barred(s.Path)
	for i := range l.Rulings {
		r := &l.Rulings[i]
		switch {
		case !bars(r, s.Path):
		case r.Proven():
			s.Because = append(s.Because, r.FindingID())
		case r.Waits() && barred == assess.Open:
			s.Questions = r.Missing(s.Questions)
		}
	}
	switch {
	case barred == assess.Yes || !permitted && !waits:
		s.State, s.Questions = assess.PathRuledOut, nil
	case permitted && barred == assess.No:
		s.State = assess.PathOpen
	default:
		s.State = assess.PathWaiting
	}
}

// Missing adds what the ruling misses to a list of questions, each once.
func (r *Ruling) Missing(list []assess.Address) []assess.Address {
	for _, a := range r.Thing.Named(r.Outcome.Deps) {
		if !slices.Contains(list, a) {
			list = append(list, a)
		}
	}
	return list
}

// FindingID names the ruling in results: the rule, and what it was said of.
func (r *Ruling) FindingID() string {
	if s := r.Subject(); s != "" {
		return r.Rule.ID + "@" + s
	}
	return r.Rule.ID
}

// Subject is the item, the rest of a list, or the path that was looked at.
func (r *Ruling) Subject() string {
	switch scope := r.Rule.Scope; {
	case scope.Listed(), scope == assess.ScopePath:
		return r.Thing.ID()
	}
	return ""
}
