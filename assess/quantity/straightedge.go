package quantity

import "strings"

// straightEdge passes the length over which a flatness gap was measured: the
// `in 10` of 1/8 in 10.
func (p *reader) straightEdge(first, last measure, two bool) error {
	m := first
	if two {
		m = last
	}
	start := p.at
	wroteIn := m.unit == inch && strings.HasSuffix(strings.TrimRight(p.s[:p.at], " "), "in")
	preposition := p.oneOf("in", "over", "per", "under", "along", "/")
	if p.d != Length || !wroteIn && !preposition {
		p.at = start
		return nil
	}
	n, ok := p.number()
	u := p.unit(Length)
	if !ok || !isStraightEdge(n, u) {
		p.at = start
		return nil
	}
	if wroteIn && !preposition && !m.number.fraction && (p.sys == Metric || isMetric(u)) {
		length, edge := p.s[m.start:m.end], strings.TrimSpace(p.s[start:p.at])
		return &Unclear{shown(p.text), []string{length + " mm in " + edge, length + " in over " + edge}}
	}
	return nil
}

func isMetric(u *unit) bool { return u == millimetre || u == centimetre || u == metre }

// isStraightEdge reports whether gaps are measured under such a length: 10 or 2 ft,
// 2 or 3 m. Over any other the gap would say something else of the floor.
func isStraightEdge(n number, u *unit) bool {
	if u == nil {
		return n.value == 10
	}
	switch inches := u.base(n.value); {
	case isMetric(u):
		return inches == metre.base(2) || inches == metre.base(3)
	default:
		return inches == 120 || inches == 24
	}
}
