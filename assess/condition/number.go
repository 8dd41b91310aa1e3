package condition

import (
	"fmt"
	"math"
	"slices"
	"strconv"

	"underfoot/assess"
	"underfoot/assess/figure"
	"underfoot/assess/quantity"
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
	want, ok := c.dimension(n.kids[0])
	if !ok {
		want, ok = c.dimension(n.kids[1])
	}
	before := len(c.log.problems)
	left, right := c.number(n.kids[0], want, ok), c.number(n.kids[1], want, ok)
	dim := c.agree(n, left, right, "compared with")
	t := term{op: n.op, sides: [2]*number{left.number, right.number}, from: n}
	if len(c.log.problems) > before {
		return broken
	}
	t.facts = t.sides[1].facts(t.sides[0].facts(nil))
	c.mayCompare(n, &t, dim, max(left.reach, right.reach))
	return t
}

// mayCompare checks a comparison whose sides are right each by itself.
func (c *checker) mayCompare(n *node, t *term, dim quantity.Dimension, reach float64) {
	switch {
	case len(t.facts) == 0:
		c.log.add(n.at, "this comparison names no fact", "compare a fact with the value")
	case n.op == opEqual || n.op == opUnequal:
		if !counted(dim) {
			c.log.add(n.sign, fmt.Sprintf("%s hardly ever equals another to the last digit", dimensionPhrase(dim)), "use a range: >= and <= joined by &&")
		}
	case reach > numberReach:
		c.log.add(n.at, "these numbers can grow past what can be computed", "use smaller factors")
	}
}

// counted reports whether values of the dimension are whole and can be equal.
func counted(d quantity.Dimension) bool {
	return d == quantity.Number || d == quantity.Year || d == quantity.Days
}

// dimension is that of the first fact or figure that gives the node one.
func (c *checker) dimension(n *node) (quantity.Dimension, bool) {
	switch n.op {
	case opFact:
		if d := c.names.Schema.Find(n.text); d != nil && d.Kind == assess.KindQuantity {
			return d.Dimension, true
		}
	case opFigure:
		if f, ok := c.lookup(n.text); ok {
			return f.Dimension, true
		}
	case opNeg:
		return c.dimension(n.kids[0])
	case opAdd, opSub:
		if d, ok := c.dimension(n.kids[0]); ok {
			return d, true
		}
		return c.dimension(n.kids[1])
	case opMul, opDiv:
		return c.productDimension(n)
	}
	return quantity.Number, false
}

func (c *checker) productDimension(n *node) (quantity.Dimension, bool) {
	a, okA := c.dimension(n.kids[0])
	b, okB := c.dimension(n.kids[1])
	switch {
	case n.op == opDiv && okA && okB && a == b:
		return quantity.Number, true
	case okA && (a != quantity.Number || !okB || n.op == opDiv):
		return a, true
	}
	return b, okB && n.op == opMul
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
	case opBad:
		return measured{number: everything, fits: true}
	}
	c.log.add(n.at, "a number is needed here", "compare numbers with numbers, words with words")
	c.mentions(n)
	return measured{number: everything, fits: true}
}

// everything stands for a number that is not known at load.
var everything = &number{op: opNumber, value: quantity.Everything}

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
		c.log.add(n.at, n.text+" is too large a number", "")
	}
	if wanted && hasUnit(want) {
		c.log.add(n.at, fmt.Sprintf("a bare number stands beside %s", dimensionPhrase(want)), "write it with its unit in quotes, such as "+exampleOf(want))
	}
	return constant(v, quantity.Number, true)
}

func (c *checker) text(n *node, want quantity.Dimension, wanted bool) measured {
	failed := measured{number: everything, fits: true}
	if !wanted {
		c.log.add(n.at, fmt.Sprintf("%s stands beside nothing that has a unit", quote(n.text)), "compare it with a fact")
		return failed
	}
	if want == quantity.Number {
		c.log.add(n.at, fmt.Sprintf("%s stands beside a plain number", quote(n.text)), "write the number without quotes")
		return failed
	}
	r, err := quantity.Read(want, n.text, quantity.US)
	switch {
	case err != nil:
		c.log.add(n.at, fmt.Sprintf("%s is not %s: %v", quote(n.text), dimensionPhrase(want), err), "write a quantity such as "+exampleOf(want))
	case !r.IsPoint():
		c.log.add(n.at, quote(n.text)+" is a range", "compare with one of its ends")
	default:
		n.value, n.dim = r.Lo, want
		return constant(r.Lo, want, false)
	}
	return failed
}

func (c *checker) numberFact(n *node) measured {
	f, ok := c.fact(n)
	if !ok {
		return measured{number: everything, fits: true}
	}
	d := c.names.Schema.Decl(f)
	if d.Kind != assess.KindQuantity {
		c.log.add(n.at, d.ID+" is not a number", "compare it with a word in quotes")
		return measured{number: everything, fits: true}
	}
	m := measured{number: &number{op: opFact, fact: f}, dim: d.Dimension, ok: true, reach: factReach, least: max(0, d.Bounds.Lo)}
	if d.Bounds.Bounded() {
		m.reach = max(math.Abs(d.Bounds.Lo), math.Abs(d.Bounds.Hi))
	}
	return m
}

// lookup is a figure, and not ok where the region lacks it or no figure has the id.
func (c *checker) lookup(id string) (f figure.Figure, ok bool) {
	if c.names.Figures == nil {
		return f, false
	}
	return c.names.Figures.Figure(id)
}

func (c *checker) figure(n *node) measured {
	missing := measured{number: everything, fits: true}
	var ids []string
	if c.names.Figures != nil {
		ids = c.names.Figures.IDs()
	}
	f, ok := c.lookup(n.text)
	if !ok && !slices.Contains(ids, n.text) {
		c.log.add(n.at, "there is no figure "+n.text, didYouMean(n.text, ids))
		return missing
	}
	if !slices.Contains(c.cond.figures, n.text) {
		c.cond.figures = append(c.cond.figures, n.text)
		if !ok {
			c.cond.lacks = append(c.cond.lacks, n.text)
		}
	}
	if !ok {
		missing.ok, missing.reach, missing.least = true, 1, 1
		return missing
	}
	n.value, n.dim = f.Value, f.Dimension
	return constant(f.Value, f.Dimension, false)
}

// agree is the common dimension of two numbers, or a problem.
func (c *checker) agree(n *node, a, b measured, verb string) quantity.Dimension {
	switch {
	case a.fits:
		return b.dim
	case !b.fits && a.dim != b.dim:
		c.log.add(n.sign, fmt.Sprintf("%s is %s %s", dimensionPhrase(a.dim), verb, dimensionPhrase(b.dim)), "both sides must measure the same")
	}
	return a.dim
}
