package condition

import (
	"underfoot/assess/message"
	"underfoot/assess/quantity"
	"underfoot/assess/schema"
)

// dimension is that of the first fact or figure that gives the node one.
func (c *checker) dimension(n *node) (quantity.Dimension, bool) {
	switch n.op {
	case opFact:
		if d := c.names.Schema.Find(n.text); d != nil && d.Kind == schema.KindQuantity {
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
	if n.op == opDiv {
		a, okA = takes(n.kids[0], a, okA, b, okB)
		b, okB = takes(n.kids[1], b, okB, a, okA)
	}
	switch {
	case n.op == opDiv && okA && okB && a == b:
		return quantity.Number, true
	case okA && (a != quantity.Number || !okB || n.op == opDiv):
		return a, true
	}
	return b, okB && n.op == opMul
}

// takes is the dimension of one side of a quotient: its own, or that of the
// other side where it holds a text and that has a unit.
func takes(n *node, own quantity.Dimension, ok bool, other quantity.Dimension, otherOK bool) (quantity.Dimension, bool) {
	if !ok && holdsText(n) && other != quantity.Number {
		return other, otherOK
	}
	return own, ok
}

// counted reports whether values of the dimension are whole and can be equal.
func counted(d quantity.Dimension) bool {
	return d == quantity.Number || d == quantity.Year || d == quantity.Days
}

// hasUnit reports whether a number of the dimension means nothing without a unit.
func hasUnit(d quantity.Dimension) bool {
	switch d {
	case quantity.Length, quantity.Area, quantity.Load, quantity.Weight, quantity.Strength:
		return true
	}
	return false
}

// dimensionPhrase is the dimension with its article.
func dimensionPhrase(d quantity.Dimension) message.Message {
	return message.New("condition/dimension." + d.String())
}

// exampleOf is a text in quotes that can be read as a quantity of a dimension
// that has a unit.
func exampleOf(d quantity.Dimension) string {
	switch d {
	case quantity.Length:
		return `"12 ft"`
	case quantity.Area:
		return `"10 ft2"`
	case quantity.Load:
		return `"40 psf"`
	case quantity.Weight:
		return `"300 lb"`
	}
	return `"2000 psi"`
}
