package condition

import (
	"math"
	"slices"
	"strconv"

	"underfoot/assess/message"
	"underfoot/assess/quantity"
	"underfoot/assess/schema"
)

// A measured is a checked number with what is known of it at load.
type measured struct {
	number *number
	dim    quantity.Dimension
	fits   bool    // no dimension of its own: a bare number, or a figure that the region lacks
	ok     bool    // no problem was found in it
	value  float64 // where it names no fact
	known  bool    // value is set
	reach  float64 // greatest magnitude that it takes for facts within their bounds
	least  float64 // least magnitude that it takes as a divisor; 0 where it may be zero
}

// Facts without declared bounds are taken to stay below factReach, and no
// number may pass numberReach, so that evaluation never meets infinity minus
// infinity.
const (
	factReach   = 1e9
	numberReach = 1e100
)

// numbers compiles the comparison of two numbers.
func (c *checker) numbers(n *node) term {
	if !namesFact(n) {
		c.log.add(n.at, message.New("condition/constants.what"), message.New("condition/constants.hint"))
		c.mentions(n)
		return broken
	}
	want, ok := c.dimension(n.kids[0])
	if !ok {
		want, ok = c.dimension(n.kids[1])
	}
	before := len(c.log.problems)
	left, right := c.number(n.kids[0], want, ok), c.number(n.kids[1], want, ok)
	dim := c.agree(n, left, right, "compared")
	t := term{op: n.op, sides: [2]*number{left.number, right.number}, from: n}
	if len(c.log.problems) > before {
		return broken
	}
	t.facts = t.sides[1].facts(t.sides[0].facts(nil))
	c.mayCompare(n, &t, dim, max(left.reach, right.reach))
	return t
}

func namesFact(n *node) bool { return n.op == opFact || slices.ContainsFunc(n.kids, namesFact) }

// mayCompare checks a comparison whose sides are right each by itself.
func (c *checker) mayCompare(n *node, t *term, dim quantity.Dimension, reach float64) {
	if (n.op == opEqual || n.op == opUnequal) && !counted(dim) {
		c.log.add(n.sign, message.New("condition/equal_quantity.what", "dimension", dimensionPhrase(dim)), message.New("condition/equal_quantity.hint"))
	}
	if !(reach <= numberReach) { // so written, it also refuses what is no number
		c.log.add(n.at, message.New("condition/too_large.what"), message.New("condition/too_large.hint"))
	}
}

// number compiles an expression. Want is the dimension of what it stands
// beside, where wanted says that there is one.
func (c *checker) number(n *node, want quantity.Dimension, wanted bool) measured {
	switch n.op {
	case opNumber:
		return c.plain(n, want, wanted)
	case opText:
		return c.text(n, want, wanted)
	case opFact:
		return c.numberFact(n)
	case opFigure:
		return c.figure(n)
	case opNeg:
		m := c.number(n.kids[0], want, wanted)
		return m.fold(&number{op: opNeg, sides: [2]*number{m.number}}, -m.value)
	case opAdd, opSub, opMul, opDiv:
		return c.operation(n, want, wanted)
	}
	c.log.add(n.at, message.New("condition/needs_number.what"), message.New("condition/needs_number.hint"))
	c.mentions(n)
	return unmeasured
}

// everything stands for a number that is not known at load.
var everything = &number{op: opNumber, value: quantity.Everything}

// unmeasured stands for a number with a problem.
var unmeasured = measured{number: everything, fits: true}

// constant is a number that is known at load.
func constant(v float64, d quantity.Dimension, fits bool) measured {
	return measured{number: &number{op: opNumber, value: quantity.Point(v)}, dim: d, fits: fits, ok: true,
		value: v, known: true, reach: math.Abs(v), least: math.Abs(v)}
}

// fold is m with another number, or with the value where that is known.
func (m measured) fold(to *number, value float64) measured {
	m.number = to
	if m.known {
		m.value, m.number = value, &number{op: opNumber, value: quantity.Point(value)}
		m.reach, m.least = math.Abs(value), math.Abs(value)
	}
	return m
}

func (c *checker) plain(n *node, want quantity.Dimension, wanted bool) measured {
	v, err := strconv.ParseFloat(n.text, 64)
	if err != nil {
		c.log.add(n.at, message.New("condition/too_large.number", "number", n.text), noHint)
	}
	if wanted && hasUnit(want) {
		c.log.add(n.at, message.New("condition/bare_number.what", "dimension", dimensionPhrase(want)),
			message.New("condition/bare_number.hint", "example", exampleOf(want)))
	}
	return constant(v, quantity.Number, true)
}

func (c *checker) text(n *node, want quantity.Dimension, wanted bool) measured {
	if !wanted {
		c.log.add(n.at, message.New("condition/no_unit_beside.what", "text", quote(n.text)), message.New("condition/no_unit_beside.hint"))
		return unmeasured
	}
	if want == quantity.Number {
		c.log.add(n.at, message.New("condition/quoted_number.what", "text", quote(n.text)), message.New("condition/quoted_number.hint"))
		return unmeasured
	}
	r, err := quantity.Read(want, n.text, quantity.US)
	switch {
	case err != nil:
		c.log.add(n.at, message.Of(err), noHint)
	case !r.IsPoint():
		c.log.add(n.at, message.New("condition/range.what", "text", quote(n.text)), message.New("condition/range.hint"))
	default:
		n.value, n.dim = r.Lo, want
		return constant(r.Lo, want, false)
	}
	return unmeasured
}

func (c *checker) numberFact(n *node) measured {
	f, ok := c.fact(n)
	if !ok {
		return unmeasured
	}
	d := c.names.Schema.Decl(f)
	if d.Kind != schema.KindQuantity {
		c.log.add(n.at, message.New("condition/fact_not_number.what", "fact", d.ID), message.New("condition/fact_not_number.hint"))
		return unmeasured
	}
	m := measured{number: &number{op: opFact, fact: f}, dim: d.Dimension, ok: true, reach: factReach, least: max(0, d.Bounds.Lo)}
	if d.Bounds.Bounded() && d.Bounds != (quantity.Range{}) {
		m.reach = max(math.Abs(d.Bounds.Lo), math.Abs(d.Bounds.Hi))
	}
	return m
}

// agree is the common dimension of two numbers, or a problem that says how they
// meet: compared, added or set_off.
func (c *checker) agree(n *node, a, b measured, how string) quantity.Dimension {
	switch {
	case a.fits:
		return b.dim
	case !b.fits && a.dim != b.dim:
		c.log.add(n.sign, message.New("condition/two_dimensions."+how, "left", dimensionPhrase(a.dim), "right", dimensionPhrase(b.dim)),
			message.New("condition/two_dimensions.hint"))
	}
	return a.dim
}
