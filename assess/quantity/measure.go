package quantity

import "strings"

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
