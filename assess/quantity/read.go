package quantity

import (
	"math"

	"underfoot/assess/message"
)

// Read is the range, in the base unit of the dimension, that a text stands for:
// 12' 6 1/2", 7/32, 3,8 m, 16 OC, L/360, 75% RH, 1960s, before 1978,
// 9 to 9.25 in, about 3/8 in, at least 5 ft, 1/8 in 10.
//
//   - A number without a unit is read in the base unit where no other is usual.
//     For a length, area, load, weight or strength it is asked back, except 0,
//     fractions below 12 (the trade writes those for inches alone), centre
//     spacings (inches, or millimetres above 100), and a number beside one that
//     has a unit.
//   - `about` reaches a tenth each way, for a year five years. An end ruled out
//     by `more than` or `before` is not part of the range.
//   - The length over which a flatness gap was measured is passed over.
//   - A comma before three digits separates thousands in US texts and is asked
//     back in metric ones; any other comma is a decimal sign.
//   - A month counts 28 days and a year 365.
//
// The error is *Unclear where several readings make sense and *Malformed
// otherwise. A range that is returned has Lo <= Hi and no NaN; infinite ends
// stand for `at least`, `up to` and `not known` alone.
func Read(d Dimension, text string, sys System) (Range, error) {
	s, ok := clean(text)
	if !ok {
		return Range{}, malformed(d, text)
	}
	if s == notKnown {
		return Everything, nil
	}
	p := &reader{scanner: scanner{s: s, sys: sys}, d: d, text: text}
	r, err := p.phrase()
	if err != nil {
		return Range{}, err
	}
	if !sensible(d, r) {
		return Range{}, malformed(d, text)
	}
	return r, nil
}

// notKnown is the text of Everything.
const notKnown = "not known"

// A reader reads one phrase of a dimension.
type reader struct {
	scanner
	d       Dimension
	text    string // as the person wrote it
	between bool   // the phrase began with the word
}

// phrase reads the whole text: a bound, one or two measures, what was measured.
func (p *reader) phrase() (Range, error) {
	p.lead()
	b := p.opener()
	if b == exactly {
		if p.between = p.word("between"); !p.between {
			p.word("from")
		}
	} else if p.d == Year && p.at < len(p.s) && p.s[p.at] == '-' {
		p.at++ // pre-1978
	}
	first, err := p.measure()
	if err != nil {
		return Range{}, err
	}
	last, two, err := p.second()
	if err != nil {
		return Range{}, err
	}
	if c := p.closer(); c != exactly {
		if b != exactly || two {
			return Range{}, p.bad()
		}
		b = c
	}
	if err := p.straightEdge(first, last, two); err != nil {
		return Range{}, err
	}
	if p.object(); !p.done() {
		return Range{}, p.bad()
	}
	return p.join(b, first, last, two)
}

// second passes the second end of a range, where one follows.
func (p *reader) second() (m measure, two bool, err error) {
	start := p.at
	if p.closer() != exactly { // `or more` begins like the joiner `or`
		p.at = start
		return m, false, nil
	}
	if !p.oneOf(joiners...) && !(p.between && p.word("and")) {
		return m, false, nil
	}
	m, err = p.measure()
	return m, true, err
}

// join makes the range of what was read.
func (p *reader) join(b bound, first, last measure, two bool) (Range, error) {
	if !two {
		r, err := p.settle(first, nil)
		return b.apply(p.d, r), err
	}
	if b != exactly && b != about {
		return Range{}, p.bad()
	}
	lo, err := p.settle(first, &last)
	if err != nil {
		return Range{}, err
	}
	hi, err := p.settle(last, &first)
	if err != nil {
		return Range{}, err
	}
	if lo.Lo > hi.Hi {
		turned := Write(p.d, Range{hi.Lo, lo.Hi}, p.sys)
		return Range{}, &Malformed{shown(p.text), message.New("quantity/want.rising"), []string{turned}}
	}
	return b.apply(p.d, Range{lo.Lo, hi.Hi}), nil
}

// bad is the refusal of the text.
func (p *reader) bad() error { return malformed(p.d, p.text) }

// sensible reports whether the dimension can have every value of the range.
func sensible(d Dimension, r Range) bool {
	if tooLarge(r.Lo) || tooLarge(r.Hi) || !(r.Lo <= r.Hi) || (r.Lo < 0 && !isOpen(r.Lo) || r.Hi < 0) && d != Length {
		return false
	}
	switch d {
	case Percent:
		return isOpen(r.Hi) || r.Hi <= 100
	case Ratio:
		return r.Lo > 0 || isOpen(r.Lo) && r.Hi > 0
	case Year:
		return isYear(r.Lo) && isYear(r.Hi)
	}
	return true
}

// tooLarge reports a finite end that no floor reaches in the base unit.
func tooLarge(v float64) bool { return math.Abs(v) > greatest && !isOpen(v) }
