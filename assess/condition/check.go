package condition

import (
	"strconv"
	"strings"

	"underfoot/assess"
	"underfoot/assess/message"
	"underfoot/assess/schema"
)

// A checker turns a syntax tree into a compiled condition.
type checker struct {
	names Names
	log   *problemLog
	cond  *Condition
	nodes int // put in the place of names
}

var broken = term{op: opBad}

// condition compiles a node that must be true or false.
func (c *checker) condition(n *node) term {
	switch {
	case n.op == opBad:
		c.mentions(n)
		return broken
	case n.op == opPart:
		c.part(n)
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
				c.log.add(n.at, message.New("condition/negated.what", "fact", d.ID), message.New("condition/negated.hint"))
				return
			}
		}
	})
}

// bare refuses a value where a comparison should stand.
func (c *checker) bare(n *node) {
	what, hint := message.New("condition/bare_value.what"), message.New("condition/bare_value.hint")
	if n.op == opFact {
		if f, ok := c.fact(n); !ok {
			return
		} else if d := c.names.Schema.Decl(f); d.Kind == schema.KindYesNo {
			hint = message.New("condition/bare_fact.yes_no", "fact", d.ID)
		}
		what = message.New("condition/bare_fact.what", "fact", n.text)
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
			hint := message.New("condition/compared_comparison.hint")
			if k.op == opNot {
				hint = message.New("condition/compared_comparison.negation")
			}
			c.log.add(k.at, message.New("condition/compared_comparison.what"), hint)
			c.mentions(n)
			return broken
		}
	}
	if n.op == opIn || n.op == opNotIn {
		return c.choice(n, left, n.op, right.kids)
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
	return d != nil && d.Kind != schema.KindQuantity
}

// choice compiles the test of a choice against words.
func (c *checker) choice(n, factNode *node, o op, words []*node) term {
	f, ok := c.fact(factNode)
	if !ok {
		return broken
	}
	d := c.names.Schema.Decl(f)
	switch {
	case d.Kind == schema.KindQuantity:
		c.log.add(n.sign, message.New("condition/number_in_list.what", "fact", d.ID), message.New("condition/number_in_list.hint"))
		return broken
	case d.Kind == schema.KindText:
		c.log.add(factNode.at, message.New("condition/free_text.what", "fact", d.ID), message.New("condition/free_text.hint"))
		return broken
	case o == opIn, o == opNotIn:
		words = c.spread(d, words)
		n.kids[1].kids = words
	case o != opEqual && o != opUnequal:
		c.log.add(n.sign, message.New("condition/no_order.what", "fact", d.ID), message.New("condition/no_order.hint"))
		return broken
	}
	mask := c.mask(d, words)
	if o == opUnequal || o == opNotIn {
		mask = d.Full().Mask &^ mask
	}
	return term{op: opIn, fact: f, mask: mask, facts: []schema.FactID{f}, from: n}
}

// mask is the set of the words.
func (c *checker) mask(d *schema.Declaration, words []*node) uint64 {
	var mask uint64
	for _, w := range words {
		if w.op != opText {
			c.log.add(w.at, message.New("condition/needs_word.what", "fact", d.ID), itsWords(d))
			c.mentions(w)
			continue
		}
		bit, ok := d.ChoiceBit(w.text)
		switch {
		case !ok:
			c.log.add(w.at, message.New("condition/never.what", "fact", d.ID, "word", strconv.Quote(w.text)), meantWord(d, w.text))
		case mask&bit != 0:
			c.log.add(w.at, message.New("condition/word_twice.what", "word", strconv.Quote(w.text)), message.New("condition/word_twice.hint"))
		}
		mask |= bit
	}
	return mask
}

// meantWord is a hint for a word that is no choice.
func meantWord(d *schema.Declaration, word string) message.Message {
	if near := assess.Nearest(word, d.Choices); near != "" {
		return message.New("condition/never.near", "word", strconv.Quote(near))
	}
	return itsWords(d)
}

func itsWords(d *schema.Declaration) message.Message {
	return message.New("condition/needs_word.hint", "words", strings.Join(d.Choices, ", "))
}
