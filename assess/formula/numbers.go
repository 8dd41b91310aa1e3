package formula

import (
	"math"
	"strconv"
	"strings"

	"underfoot/assess/quantity"
)

// Numbers is the expression of a line with the values of its names in place of
// the names, a range as a..b and an end that is not known as a question mark.
// For an input it is the value. A line that the sheet does not have is empty.
func (s *Sheet) Numbers(name string) string {
	l, ok := s.Line(name)
	switch {
	case !ok:
		return ""
	case l.Expr == "":
		return span(l.Value)
	}
	return parsed(l.Expr).numbers(s)
}

func (n number) numbers(*Sheet) string  { return n.text }
func (n name) numbers(s *Sheet) string  { return span(s.value(string(n))) }
func (n group) numbers(s *Sheet) string { return "(" + n.inner.numbers(s) + ")" }

func (n binary) numbers(s *Sheet) string {
	return n.left.numbers(s) + " " + string(n.op) + " " + n.right.numbers(s)
}

func (n power) numbers(s *Sheet) string {
	return n.base.numbers(s) + "^" + n.text.numbers(s)
}

func (n call) numbers(s *Sheet) string {
	args := make([]string, len(n.args))
	for i, a := range n.args {
		args[i] = a.numbers(s)
	}
	return n.fn + "(" + strings.Join(args, ", ") + ")"
}

func span(r quantity.Range) string {
	if r.IsPoint() {
		return digits(r.Lo)
	}
	return digits(r.Lo) + ".." + digits(r.Hi)
}

// digits writes a number with six significant digits and no exponent, enough
// to redo the sum by hand.
func digits(v float64) string {
	switch {
	case math.IsInf(v, 0):
		return "?"
	case v == 0:
		return "0"
	}
	decimals := 5 - int(math.Floor(math.Log10(math.Abs(v))))
	text := strconv.FormatFloat(v, 'f', max(decimals, 0), 64)
	if strings.Contains(text, ".") {
		text = strings.TrimRight(strings.TrimRight(text, "0"), ".")
	}
	return text
}
