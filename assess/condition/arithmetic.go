package condition

import (
	"underfoot/assess/message"
	"underfoot/assess/quantity"
)

// operation compiles a sum, difference, product or quotient.
func (c *checker) operation(n *node, want quantity.Dimension, wanted bool) measured {
	if n.op == opAdd || n.op == opSub {
		if d, ok := c.dimension(n); ok {
			want, wanted = d, true
		}
		return c.sum(n, c.number(n.kids[0], want, wanted), c.number(n.kids[1], want, wanted))
	}
	if n.op == opDiv {
		return c.quotient(n, c.divided(n.kids[0], n.kids[1], want, wanted), c.divided(n.kids[1], n.kids[0], want, wanted))
	}
	return c.product(n, c.factor(n.kids[0], want, wanted), c.factor(n.kids[1], want, wanted))
}

// divided compiles one side of a quotient; a text in it takes the dimension of
// the other side, or beside a plain number that of the whole.
func (c *checker) divided(n, other *node, want quantity.Dimension, wanted bool) measured {
	if d, ok := c.dimension(other); ok && d != quantity.Number {
		want, wanted = d, true
	}
	return c.factor(n, want, wanted)
}

// factor compiles one side of a product or quotient: it has its own dimension,
// or takes the wanted one if it holds a text, or is a plain number.
func (c *checker) factor(n *node, want quantity.Dimension, wanted bool) measured {
	if d, ok := c.dimension(n); ok {
		return c.number(n, d, true)
	}
	if holdsText(n) {
		return c.number(n, want, wanted)
	}
	return c.number(n, quantity.Number, true)
}

func holdsText(n *node) bool {
	if n.op == opText {
		return true
	}
	for _, k := range n.kids {
		if holdsText(k) {
			return true
		}
	}
	return false
}

// joined is what a and b have in common as sides of an operation.
func joined(n *node, a, b measured) measured {
	return measured{number: &number{op: n.op, sides: [2]*number{a.number, b.number}}, fits: a.fits && b.fits,
		ok: a.ok && b.ok, known: a.known && b.known}
}

func (c *checker) sum(n *node, a, b measured) measured {
	m := joined(n, a, b)
	m.dim = c.agree(n, a, b, map[op]string{opAdd: "added", opSub: "set_off"}[n.op])
	m.reach = a.reach + b.reach
	value := a.value + b.value
	if n.op == opSub {
		value = a.value - b.value
	}
	return m.fold(m.number, value)
}

func (c *checker) product(n *node, a, b measured) measured {
	m := joined(n, a, b)
	m.dim, m.reach = a.dim, a.reach*b.reach
	if a.fits || a.dim == quantity.Number {
		m.dim = b.dim
	} else if !b.fits && b.dim != quantity.Number {
		c.log.add(n.sign, message.New("condition/multiplied.what", "left", dimensionPhrase(a.dim), "right", dimensionPhrase(b.dim)),
			message.New("condition/multiplied.hint"))
	}
	return m.fold(m.number, a.value*b.value)
}

func (c *checker) quotient(n *node, a, b measured) measured {
	m := joined(n, a, b)
	switch {
	case !b.fits && b.dim == a.dim && !a.fits:
		m.dim = quantity.Number
	case b.fits || b.dim == quantity.Number:
		m.dim = a.dim
	default:
		c.log.add(n.sign, message.New("condition/divided.what", "left", dimensionPhrase(a.dim), "right", dimensionPhrase(b.dim)),
			message.New("condition/divided.hint"))
	}
	if b.ok && b.least == 0 {
		c.log.add(n.kids[1].at, message.New("condition/zero_divisor.what"), message.New("condition/zero_divisor.hint"))
		m.ok = false
		return m
	}
	m.reach = a.reach / b.least
	return m.fold(m.number, a.value/b.value)
}
