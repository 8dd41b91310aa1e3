package quantity

import "strings"

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
