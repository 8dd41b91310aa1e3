package formula

import (
	"math"

	"underfoot/assess/quantity"
)

// A node is a part of an expression.
type node interface {
	// eval is the range of every value that the part has for some value of each name.
	eval(*Sheet) quantity.Range
	// numbers is the part with the names' values in place of the names.
	numbers(*Sheet) string
	// cells is the part as a spreadsheet formula for one end of its range.
	cells(*Sheet, CellOf, End) string
}

type (
	number struct {
		value float64
		text  string
	}
	name   string
	group  struct{ inner node }
	binary struct {
		op          byte
		left, right node
	}
	power struct {
		base     node
		exponent float64
		text     node // the exponent as it was written
	}
	call struct {
		fn   string
		args []node
	}
)

func (n number) eval(*Sheet) quantity.Range  { return quantity.Point(n.value) }
func (n name) eval(s *Sheet) quantity.Range  { return s.value(string(n)) }
func (n group) eval(s *Sheet) quantity.Range { return n.inner.eval(s) }

func (n binary) eval(s *Sheet) quantity.Range {
	a, b := n.left.eval(s), n.right.eval(s)
	switch n.op {
	case '+':
		return a.Add(b)
	case '-':
		return a.Sub(b)
	case '*':
		return a.Mul(b)
	}
	return a.Div(b)
}

// eval raises a range. A broken exponent takes what is negative as zero; a
// negative exponent of what may be zero or less gives Everything.
func (n power) eval(s *Sheet) quantity.Range {
	x, e := n.base.eval(s), n.exponent
	switch {
	case e < 0 && x.Lo <= 0:
		return quantity.Everything
	case !whole(e):
		x = notNegative(x)
	case math.Mod(e, 2) == 0 && x.Contains(0):
		return quantity.Range{Lo: 0, Hi: math.Max(raise(x.Lo, e), raise(x.Hi, e))}
	}
	return ordered(raise(x.Lo, e), raise(x.Hi, e))
}

func whole(e float64) bool { return e == math.Trunc(e) }

func notNegative(r quantity.Range) quantity.Range {
	return quantity.Range{Lo: math.Max(r.Lo, 0), Hi: math.Max(r.Hi, 0)}
}

// raise multiplies for small whole exponents: a product rounds the same way
// round for every operand, which keeps points inside their ranges to the last bit.
func raise(x, e float64) float64 {
	if !whole(e) || e < 1 || e > 8 {
		return math.Pow(x, e)
	}
	p := x
	for ; e > 1; e-- {
		p *= x
	}
	return p
}

func ordered(a, b float64) quantity.Range {
	return quantity.Range{Lo: math.Min(a, b), Hi: math.Max(a, b)}
}

// eval takes the ends: no function here falls when an operand rises. The root
// of what is negative is taken as zero.
func (n call) eval(s *Sheet) quantity.Range {
	r := n.args[0].eval(s)
	switch n.fn {
	case "sqrt":
		r = notNegative(r)
		return quantity.Range{Lo: math.Sqrt(r.Lo), Hi: math.Sqrt(r.Hi)}
	case "normal":
		return quantity.Range{Lo: normal(r.Lo), Hi: normal(r.Hi)}
	}
	pick := math.Min
	if n.fn == "max" {
		pick = math.Max
	}
	for _, arg := range n.args[1:] {
		a := arg.eval(s)
		r = quantity.Range{Lo: pick(r.Lo, a.Lo), Hi: pick(r.Hi, a.Hi)}
	}
	return r
}

// normal is the share of a standard normal distribution below x.
func normal(x float64) float64 { return math.Erfc(-x/math.Sqrt2) / 2 }
