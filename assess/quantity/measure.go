package quantity

import (
	"math"
	"strings"
)

// A measure is one number of a phrase with what belongs to it. Value holds it
// in the unit, or as written where no unit stands beside it; a decade or a
// measure in feet and inches is already in the base unit.
type measure struct {
	value   Range
	unit    *unit
	number  number
	negated bool
	centres bool // a centre spacing: 16 OC
	start   int  // of the number in the text
	end     int  // after the number, where a unit would stand
}

// measure passes one measure.
func (p *reader) measure() (measure, error) {
	if p.d == Year {
		return p.year()
	}
	p.ratioSign()
	m := measure{negated: p.minus()}
	p.space()
	m.start = p.at
	n, ok := p.number()
	if !ok {
		return m, p.bad()
	}
	if n.grouped && p.sys == Metric {
		return m, p.grouped(m.start)
	}
	m.number, m.value, m.end = n, Point(n.value), p.at
	if m.unit = p.unit(p.d); m.unit == foot {
		if err := p.inches(&m); err != nil {
			return m, err
		}
	}
	if m.centres = p.d == Length && p.oneOf(centreWords...); m.centres {
		p.dot()
	}
	p.object()
	return m, nil
}

// centreWords say that a length is a spacing from centre to centre.
var centreWords = []string{"o.c", "oc", "on center", "on centers", "on centre", "on centres", "centers", "centres", "center", "centre", "ctrs",
	"c/c", "c-c"}

// objects are words that say what was measured and change nothing.
var objects = []string{"dip", "hump", "bump", "gap", "rise", "drop", "sag", "bow", "crown", "step", "crack", "thick", "wide", "deep", "long",
	"high", "tall", "clear", "span", "plywood", "ply", "osb", "board", "rh", "mc", "humidity", "moisture"}

// object passes the words that say what was measured.
func (p *reader) object() {
	for p.oneOf(objects...) {
	}
}

// minus passes a sign.
func (p *reader) minus() bool {
	if p.oneOf("-", "minus") {
		return true
	}
	p.word("+")
	return false
}

// ratioSign passes the L/ of a stiffness ratio.
func (p *reader) ratioSign() {
	if p.d == Ratio && p.oneOf("span", "l", "1/") {
		p.word("/")
	}
}

// lead passes words before a phrase that change nothing.
func (p *reader) lead() {
	p.object()
	if p.d == Year {
		p.oneOf("built in", "built", "laid in", "laid", "in")
	}
}

// inches passes the inches after a measure in feet: 12' 6 1/2", 7'-4, 12 ft 6 in.
func (p *reader) inches(m *measure) error {
	start := p.at
	spaced := p.space()
	dash := p.at < len(p.s) && p.s[p.at] == '-'
	if dash {
		p.at++
		spaced = p.space() && spaced
	}
	n, ok := p.number()
	u := p.unit(Length)
	if !ok || n.value >= 12 || n.grouped || u != nil && u != inch {
		p.at = start
		return nil
	}
	if dash && spaced && u == nil {
		feet, rest := p.s[m.start:m.end], strings.TrimLeft(p.s[start:p.at], "- ")
		return &Unclear{shown(p.text), []string{feet + "' " + rest + `"`, feet + " to " + rest + " ft"}}
	}
	m.value = Point(m.number.value*12 + n.value)
	m.unit, m.end = footInches, p.at
	return nil
}

// footInches marks a measure in feet and inches, whose value is in inches.
var footInches = &unit{"", 1, 1, nil}

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

// unclear asks for the unit of a number.
func (p *reader) unclear(m measure) error {
	var readings []string
	for _, u := range p.asked() {
		text := p.s[:m.end] + " " + u.symbol + p.s[m.end:]
		if _, err := Read(p.d, text, p.sys); err == nil {
			readings = append(readings, text)
		}
	}
	if len(readings) == 0 {
		return p.bad()
	}
	return &Unclear{shown(p.text), readings}
}

// asked are the units that a bare number may be in, those of the reader's
// system first.
func (p *reader) asked() []*unit {
	us, metric := []*unit{p.d.unit(US)}, []*unit{p.d.unit(Metric)}
	if p.d == Length {
		us, metric = []*unit{inch, foot}, []*unit{millimetre, centimetre, metre}
	}
	if p.sys == Metric {
		return append(metric, us...)
	}
	return append(us, metric...)
}

// feetForInches asks back where feet stand beside a centre spacing.
func (p *reader) feetForInches(m measure) error {
	n := p.s[m.start:m.end]
	return &Unclear{shown(p.text), []string{n + " in", n + " ft"}}
}

// grouped asks whether a comma before three digits separates thousands.
func (p *reader) grouped(start int) error {
	before, number, rest := p.s[:start], p.s[start:p.at], p.s[p.at:]
	readings := []string{}
	for _, sign := range []string{"", "."} {
		text := before + strings.Replace(number, ",", sign, 1) + rest
		if _, err := Read(p.d, text, p.sys); err == nil {
			readings = append(readings, text)
		}
	}
	if len(readings) == 0 {
		return p.bad()
	}
	return &Unclear{shown(p.text), readings}
}

// straightEdge passes the length over which a flatness gap was measured: the
// `in 10` of 1/8 in 10.
func (p *reader) straightEdge(first, last measure, two bool) error {
	m := first
	if two {
		m = last
	}
	start := p.at
	wroteIn := m.unit == inch && strings.HasSuffix(p.s[:p.at], "in")
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

func isOpen(v float64) bool { return math.IsInf(v, 0) }
