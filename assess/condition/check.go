package condition

import (
	"fmt"
	"strings"

	"underfoot/assess"
)

// A checker turns a syntax tree into a compiled condition.
type checker struct {
	names Names
	log   *problemLog
	cond  *Condition
}

var broken = term{op: opBad}

// condition compiles a node that must be true or false.
func (c *checker) condition(n *node) term {
	switch {
	case n.op == opBad:
		c.mentions(n)
		return broken
	case n.op.isLogic():
		return c.logic(n)
	case n.op.isComparison():
		return c.comparison(n)
	}
	c.bare(n)
	return broken
}

func (c *checker) logic(n *node) term {
	t := term{op: n.op, kids: make([]term, len(n.kids)), from: n}
	for i, k := range n.kids {
		t.kids[i] = c.condition(k)
	}
	if n.op == opNot {
		c.mayNegate(n, &t)
	}
	return t
}

// mayNegate refuses to negate what is also false where its fact does not
// apply: 'not tight' would hold for a layer that cannot be tight at all.
func (c *checker) mayNegate(n *node, t *term) {
	t.atoms(func(atom *term) {
		for _, f := range atom.facts {
			if d := c.names.Schema.Decl(f); !d.Always {
				c.log.add(n.at, fmt.Sprintf("%s does not always apply, so this would also hold where it does not", d.ID), "write the trouble positively, with == or in")
				return
			}
		}
	})
}

// bare refuses a value where a comparison should stand.
func (c *checker) bare(n *node) {
	what, hint := "this is a value, not a comparison", "compare it"
	if n.op == opFact {
		if f, ok := c.fact(n); !ok {
			return
		} else if d := c.names.Schema.Decl(f); d.Kind == assess.KindYesNo {
			hint = fmt.Sprintf("write %s == \"yes\", or \"no\"", d.ID)
		}
		what = n.text + " is compared with nothing"
	}
	c.log.add(n.at, what, hint)
}

func (c *checker) comparison(n *node) term {
	left, right := n.kids[0], n.kids[1]
	if c.broken(n) {
		c.mentions(n)
		return broken
	}
	for _, k := range n.kids {
		if k.op.isLogic() || k.op.isComparison() {
			hint := "join comparisons with && and ||"
			if k.op == opNot {
				hint = "put what ! negates in brackets"
			}
			c.log.add(k.at, "a comparison cannot be compared", hint)
			c.mentions(n)
			return broken
		}
	}
	if n.op == opIn {
		return c.choice(n, left, opIn, right.kids)
	}
	if c.isChoice(left) {
		return c.choice(n, left, n.op, []*node{right})
	}
	if c.isChoice(right) {
		return c.choice(n, right, n.op, []*node{left})
	}
	return c.numbers(n)
}

// isChoice reports whether the node is a fact that is not a number.
func (c *checker) isChoice(n *node) bool {
	if n.op != opFact {
		return false
	}
	d := c.names.Schema.Find(n.text)
	return d != nil && d.Kind != assess.KindQuantity
}

// choice compiles the test of a choice against words.
func (c *checker) choice(n, factNode *node, o op, words []*node) term {
	f, ok := c.fact(factNode)
	if !ok {
		return broken
	}
	d := c.names.Schema.Decl(f)
	switch {
	case d.Kind == assess.KindQuantity:
		c.log.add(n.sign, d.ID+" is a number: in is for words", "write >= and <= joined by &&")
		return broken
	case d.Kind == assess.KindText:
		c.log.add(factNode.at, d.ID+" is free text, which no condition can test", "use a fact with choices or a number")
		return broken
	case o != opEqual && o != opUnequal && o != opIn:
		c.log.add(n.sign, fmt.Sprintf("the words of %s have no order", d.ID), "use == for one word, or in for several")
		return broken
	}
	mask := c.mask(d, words)
	if o == opUnequal {
		mask = d.Full().Mask &^ mask
	}
	return term{op: opIn, fact: f, mask: mask, facts: []assess.FactID{f}, from: n}
}

// mask is the set of the words.
func (c *checker) mask(d *assess.Declaration, words []*node) uint64 {
	var mask uint64
	for _, w := range words {
		if w.op != opText {
			c.log.add(w.at, fmt.Sprintf("%s is compared with a word in quotes", d.ID), "its words: "+strings.Join(d.Choices, ", "))
			c.mentions(w)
			continue
		}
		bit, ok := d.ChoiceBit(w.text)
		switch {
		case !ok:
			c.log.add(w.at, fmt.Sprintf("%s is never %q", d.ID, w.text), meantWord(d, w.text))
		case mask&bit != 0:
			c.log.add(w.at, fmt.Sprintf("%q stands twice in this list", w.text), "remove one of them")
		}
		mask |= bit
	}
	return mask
}

// meantWord is a hint for a word that is no choice.
func meantWord(d *assess.Declaration, word string) string {
	if near := nearest(word, d.Choices); near != "" {
		return fmt.Sprintf("did you mean %q?", near)
	}
	return "its words: " + strings.Join(d.Choices, ", ")
}
