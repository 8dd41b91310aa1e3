package quantity

import "math"

// settle is the measure in the base unit; a bare number takes the unit of the
// other end of its range.
func (p *reader) settle(m measure, other *measure) (Range, error) {
	u := m.unit
	if u == nil && other != nil {
		if u = other.unit; u == footInches {
			u = foot
		}
	}
	if u == nil {
		u = p.usual(m, other)
	}
	if u == nil {
		return Range{}, p.unclear(m)
	}
	r := Range{u.base(m.value.Lo), u.base(m.value.Hi)}
	if (m.centres || other != nil && other.centres) && u == foot && r.Lo >= farthestCentres {
		return Range{}, p.feetForInches(m)
	}
	if m.negated {
		r = Range{-r.Hi, -r.Lo}
	}
	return r, nil
}

// farthestCentres is the centre spacing, in inches, from which feet are taken
// for a slip: no framing stands ten feet apart, but 16' OC is often written.
const farthestCentres = 120

// usual is the unit of a number that stands without one, or nil.
func (p *reader) usual(m measure, other *measure) *unit {
	centres := m.centres || other != nil && other.centres
	switch {
	case !p.d.needsUnit() || m.value == Range{}:
		return units[p.d][0]
	case p.d != Length:
		return nil
	case m.number.fraction && m.number.value < 12:
		return inch
	case centres && m.number.value > 100:
		return millimetre
	case centres && p.sys == US:
		return inch
	}
	return nil
}

func isOpen(v float64) bool { return math.IsInf(v, 0) }
