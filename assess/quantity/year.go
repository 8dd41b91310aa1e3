package quantity

import "math"

// firstYear and lastYear are the four-digit years that are read.
const (
	firstYear = 1000
	lastYear  = 2999
)

// year passes a year or a decade: 1968, 1960s, the early 1970s. Early, mid and
// late are the first four, the middle four and the last four years of it.
func (p *reader) year() (measure, error) {
	p.word("the")
	part := p.part()
	p.word("-")
	p.space()
	m := measure{start: p.at}
	digits := p.digits()
	if len(digits) != 4 {
		return m, p.bad()
	}
	first := 0.0
	for _, r := range digits {
		first = first*10 + float64(r-'0')
	}
	decade := p.word("'s") || p.word("s")
	if first < firstYear || first > lastYear || part != whole && !decade {
		return m, p.bad()
	}
	m.value, m.unit, m.end = Point(first), p.d.unit(US), p.at
	if decade {
		m.value = part.of(first)
	}
	return m, nil
}

// A part is which years of a decade are meant, as offsets from its first.
type part struct{ from, to float64 }

var whole = part{0, 9}

func (p *reader) part() part {
	switch {
	case p.word("early"):
		return part{0, 3}
	case p.word("mid"):
		return part{3, 6}
	case p.word("late"):
		return part{6, 9}
	}
	return whole
}

// of is the years of the decade, or of the century in 1900s.
func (a part) of(first float64) Range {
	years := 1.0
	if math.Mod(first, 100) == 0 && math.Mod(first, 1000) != 0 {
		years = 10 // the 1900s are a century; early 1900s its first forty years
	}
	return Range{first + a.from*years, first + a.to*years + years - 1}
}

// isYear reports whether v is a whole year, or an open end.
func isYear(v float64) bool {
	return isOpen(v) || v == math.Trunc(v) && v >= firstYear-yearsAbout && v <= lastYear+yearsAbout
}
