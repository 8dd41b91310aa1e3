package quantity

import (
	"strconv"
	"strings"
)

// greatest is the largest number that is read; a larger one is a slip.
const greatest = 1e9

// A scanner walks over a cleaned text.
type scanner struct {
	s   string
	at  int
	sys System
}

// space passes blanks and reports whether there were any.
func (c *scanner) space() bool {
	start := c.at
	for c.at < len(c.s) && c.s[c.at] == ' ' {
		c.at++
	}
	return c.at > start
}

// done reports whether nothing but blanks is left.
func (c *scanner) done() bool {
	c.space()
	return c.at == len(c.s)
}

// word passes the given word or sign, after blanks, and reports whether it was
// there. A word that ends in a letter is not the beginning of a longer one.
func (c *scanner) word(w string) bool {
	at := c.at
	for at < len(c.s) && c.s[at] == ' ' {
		at++
	}
	if !strings.HasPrefix(c.s[at:], w) {
		return false
	}
	end := at + len(w)
	if end < len(c.s) && isLetter(w[len(w)-1]) && isLetter(c.s[end]) {
		return false
	}
	c.at = end
	return true
}

// oneOf passes the first of the words that is there.
func (c *scanner) oneOf(words ...string) bool {
	if c.done() {
		return false
	}
	for _, w := range words {
		if c.word(w) {
			return true
		}
	}
	return false
}

// unit passes a unit of the dimension, or gives nil. Names are listed longest
// first within a unit, and no name begins another unit's longer one unless
// that unit stands before it.
func (c *scanner) unit(d Dimension) *unit {
	var best *unit
	end, start := c.at, c.at
	for _, u := range units[d] {
		for _, n := range u.names {
			if c.at = start; c.word(n) && c.at > end {
				best, end = u, c.at
			}
		}
	}
	if c.at = end; best != nil && isLetter(c.s[end-1]) {
		c.dot()
	}
	return best
}

// dot passes the full stop of an abbreviation such as `in.`.
func (c *scanner) dot() {
	if c.at < len(c.s) && c.s[c.at] == '.' && !strings.HasPrefix(c.s[c.at:], "..") {
		c.at++
	}
}

// A number is one that stands in the text. Fraction: written as a fraction,
// which the trade does for inches only. Grouped: a comma before three digits,
// which some write for thousands and others for decimals.
type number struct {
	value    float64
	fraction bool
	grouped  bool
}

// number passes a number without sign: 12, 12.5, 12,5, 7/32, 1 1/8 or 1-1/8.
func (c *scanner) number() (n number, ok bool) {
	start := c.at
	n, whole, ok := c.plain()
	if !ok {
		c.at = start
		return n, false
	}
	if !whole {
		return n, true
	}
	if den, ok := c.over(); ok {
		return number{value: n.value / den, fraction: true}, den > 0
	}
	if f, ok := c.fraction(); ok {
		return number{value: n.value + f, fraction: true}, true
	}
	return n, true
}

// fraction passes the fraction of a mixed number, after a blank or a dash.
func (c *scanner) fraction() (f float64, ok bool) {
	start := c.at
	defer func() {
		if !ok {
			c.at = start
		}
	}()
	if c.at < len(c.s) && (c.s[c.at] == ' ' || c.s[c.at] == '-') {
		c.at++
	}
	num, whole, ok := c.plain()
	if !ok || !whole {
		return 0, false
	}
	den, ok := c.over()
	return num.value / den, ok && num.value > 0 && num.value < den
}

// over passes a stroke with a whole number after it.
func (c *scanner) over() (den float64, ok bool) {
	start := c.at
	if c.at < len(c.s) && c.s[c.at] == '/' {
		c.at++
		if n, whole, ok := c.plain(); ok && whole && n.value > 0 {
			return n.value, true
		}
	}
	c.at = start
	return 0, false
}

// plain passes digits with at most one decimal sign; whole says that there was none.
func (c *scanner) plain() (n number, whole, ok bool) {
	c.space()
	start := c.at
	text := c.digits()
	if decimals, comma := c.decimals(); decimals != "" {
		n.grouped = comma && len(decimals) == 3 && text != "" && text[0] != '0'
		if !n.grouped || c.sys != US {
			text += "."
		}
		text += decimals
	} else {
		whole = true
	}
	if exponent := c.exponent(); exponent != "" {
		text, whole = text+exponent, false
	}
	value, err := strconv.ParseFloat(text, 64)
	if err != nil || value > greatest {
		c.at = start
		return number{}, false, false
	}
	n.value = value
	return n, whole, true
}

// decimals passes a decimal sign and the digits after it.
func (c *scanner) decimals() (text string, comma bool) {
	if c.at+1 < len(c.s) && (c.s[c.at] == '.' || c.s[c.at] == ',') && isDigit(c.s[c.at+1]) {
		comma = c.s[c.at] == ','
		c.at++
		return c.digits(), comma
	}
	return "", false
}

// digits passes the digits at hand.
func (c *scanner) digits() string {
	start := c.at
	for c.at < len(c.s) && isDigit(c.s[c.at]) {
		c.at++
	}
	return c.s[start:c.at]
}

// exponent passes e-7, the form in which exact text writes very small numbers.
func (c *scanner) exponent() string {
	rest := c.s[c.at:]
	if len(rest) > 2 && rest[0] == 'e' && rest[1] == '-' && isDigit(rest[2]) {
		start := c.at
		c.at += 2
		c.digits()
		return c.s[start:c.at]
	}
	return ""
}

func isDigit(b byte) bool { return '0' <= b && b <= '9' }

func isLetter(b byte) bool { return 'a' <= b && b <= 'z' }
