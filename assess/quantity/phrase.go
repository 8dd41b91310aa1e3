package quantity

import "math"

// A bound is what a word beside a number makes of it.
type bound uint8

const (
	exactly bound = iota
	about
	atLeast
	atMost
	moreThan
	lessThan
)

// openers are the words before a number, longer ones before those they begin with.
var openers = []struct {
	bound bound
	words []string
}{
	{about, []string{"about", "approximately", "approx.", "approx", "around", "roughly", "circa", "ca.", "ca", "c.", "~"}},
	{atLeast, []string{"at least", "not less than", "no less than", "not under", "minimum", "min.", "min", ">=", "since"}},
	{atMost, []string{"at most", "up to", "not more than", "no more than", "not over", "maximum", "max.", "max", "<=", "until", "by"}},
	{moreThan, []string{"more than", "greater than", "wider than", "thicker than", "later than", "newer than", "over", "above",
		"after", "post", ">"}},
	{lessThan, []string{"less than", "smaller than", "narrower than", "thinner than", "earlier than", "older than", "under", "below",
		"before", "prior to", "pre", "<"}},
}

// closers are the words after a number.
var closers = []struct {
	bound bound
	words []string
}{
	{atLeast, []string{"or more", "or over", "or wider", "or thicker", "or later", "or newer", "or after", "and up", "and over", "minimum",
		"min.", "min", "+"}},
	{atMost, []string{"or less", "or under", "or thinner", "or earlier", "or older", "or before", "and under", "maximum", "max.", "max"}},
}

// joiners stand between the two ends of a range.
var joiners = []string{"to", "through", "thru", "till", "until", "or", "..", "-"}

// yearsAbout and shareAbout say how far `about` reaches each way: five years
// for a year, a tenth of the value for anything else. Both are this program's
// choice, on the wide side.
const (
	yearsAbout = 5
	shareAbout = 0.1
)

// opener passes the word before a number.
func (c *scanner) opener() bound {
	for _, o := range openers {
		if c.oneOf(o.words...) {
			return o.bound
		}
	}
	return exactly
}

// closer passes the word after a number.
func (c *scanner) closer() bound {
	for _, o := range closers {
		if c.oneOf(o.words...) {
			return o.bound
		}
	}
	return exactly
}

// apply is the range that the bound makes of r. An end that is ruled out moves
// by the smallest step: a year, or to the neighbouring number, so that `more
// than 1/8 in` is proven to exceed 1/8 in.
func (b bound) apply(d Dimension, r Range) Range {
	switch b {
	case about:
		return spread(d, r)
	case atLeast:
		return AtLeast(r.Lo)
	case atMost:
		return AtMost(r.Hi)
	case moreThan:
		return AtLeast(next(d, r.Hi, 1))
	case lessThan:
		return AtMost(next(d, r.Lo, -1))
	}
	return r
}

// spread is what `about` makes of r; it leaves no percentage above 100.
func spread(d Dimension, r Range) Range {
	if d == Year {
		return Range{r.Lo - yearsAbout, r.Hi + yearsAbout}
	}
	wide := Range{r.Lo - shareAbout*math.Abs(r.Lo), r.Hi + shareAbout*math.Abs(r.Hi)}
	if d == Percent && r.Hi <= 100 {
		wide.Hi = min(wide.Hi, 100)
	}
	return wide
}

// next is the value beside v in the direction.
func next(d Dimension, v float64, direction int) float64 {
	if d == Year {
		return v + float64(direction)
	}
	return math.Nextafter(v, math.Inf(direction))
}
