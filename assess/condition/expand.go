package condition

import (
	"slices"

	"underfoot/assess"
	"underfoot/assess/message"
	"underfoot/assess/schema"
)

// Mentions are the names of sets and conditions in the text of a condition, in
// order of first mention. A text that is no condition may give fewer.
func Mentions(src string) []string {
	if len(src) > maxBytes {
		return nil
	}
	var out []string
	var walk func(*node)
	walk = func(n *node) {
		if (n.op == opSet || n.op == opPart) && !slices.Contains(out, n.text) {
			out = append(out, n.text)
		}
		for _, k := range n.kids {
			walk(k)
		}
	}
	walk(parse(src, &problemLog{src: src}))
	return out
}

// expand puts the condition behind each name in its place. What is written and
// what a name stands for are the same tree from there on, so that a name never
// changes an outcome nor an explanation.
func (c *checker) expand(n *node) *node {
	if n.op == opPart {
		part := c.names.Words.part(n.text)
		if part == nil {
			return n
		}
		return c.copied(part.syntax, n.at)
	}
	for i, k := range n.kids {
		n.kids[i] = c.expand(k)
	}
	if n.op == opAnd || n.op == opOr {
		return flat(n, n.op)
	}
	return n
}

// copied is a tree of its own, all of it at the place of the name.
func (c *checker) copied(n *node, at int) *node {
	if c.nodes++; c.nodes == maxNodes+1 {
		c.log.add(at, message.New("condition/bound.parts", "most", maxNodes), message.New("condition/bound.hint"))
	}
	out := *n
	out.at, out.sign, out.kids = at, at, nil
	if c.nodes > maxNodes {
		out.op = opBad
		return &out
	}
	for _, k := range n.kids {
		out.kids = append(out.kids, c.copied(k, at))
	}
	return &out
}

// part refuses a name that stands for no condition.
func (c *checker) part(n *node) {
	what, hint := message.New("condition/part.none", "name", n.text), oneWord(n.text)
	if s := c.names.Words.set(n.text); s != nil {
		what, hint = message.New("condition/part.is_set", "name", n.text), message.New("condition/part.is_set_hint", "name", n.text, "fact", s.Of)
	} else if near := assess.DidYouMean(n.text, c.names.Words.partIDs()); !near.IsZero() {
		hint = near
	}
	c.log.add(n.at, what, hint)
}

func oneWord(w string) message.Message {
	if w == "yes" || w == "no" {
		return message.New("condition/part.word_hint", "word", w)
	}
	return message.New("condition/name.hint")
}

// set refuses a name that stands for no set.
func (c *checker) set(n *node) {
	what := message.New("condition/set.none", "name", n.text)
	if c.names.Words.part(n.text) != nil {
		what = message.New("condition/set.is_part", "name", n.text)
	}
	c.log.add(n.at, what, assess.DidYouMean(n.text, c.names.Words.setIDs()))
}

// spread puts the words of each set in the place of its name.
func (c *checker) spread(d *schema.Declaration, list []*node) []*node {
	var out []*node
	for _, n := range list {
		if n.op != opSet {
			out = append(out, n)
			continue
		}
		s := c.names.Words.set(n.text)
		if !s.fits(d) {
			c.log.add(n.at, message.New("condition/set.foreign", "name", n.text, "of", s.Of, "fact", d.ID), noHint)
			continue
		}
		for _, w := range s.Words {
			out = append(out, &node{op: opText, at: n.at, sign: n.at, text: w})
		}
	}
	return out
}
