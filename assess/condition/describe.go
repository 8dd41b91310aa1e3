package condition

import (
	"underfoot/assess/message"
	"underfoot/assess/schema"
)

// Describe is the whole condition in words, for a reader who sees no floor yet: the
// tree as it was written, with names and units as show says and without values.
// No part of it has a truth, and its leaves name no facts.
func (c *Condition) Describe(show Show) Explanation {
	return words{schema: c.schema, show: show}.describe(c.syntax)
}

var joints = map[op]Joint{opAnd: All, opOr: Any, opNot: Not}

func (w words) describe(n *node) Explanation {
	joint, chain := joints[n.op]
	if !chain {
		return Explanation{Text: w.comparison(n)}
	}
	x := Explanation{Joint: joint, Parts: make([]Explanation, len(n.kids))}
	for i, k := range n.kids {
		x.Parts[i] = w.describe(k)
	}
	return x
}

// Message is the phrase that stands before the parts, such as `all of these`;
// for a Leaf, which has none, it says nothing.
func (j Joint) Message() message.Message {
	if j == Leaf {
		return message.Message{}
	}
	return message.New("condition/joint." + jointKeys[j])
}

// name is what the reader calls a fact.
func (w words) name(f schema.FactID) string {
	if w.show.Label != nil {
		return w.show.Label(f)
	}
	return w.schema.Decl(f).ID
}
