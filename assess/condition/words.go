package condition

import (
	"strings"

	"underfoot/assess/logic"
	"underfoot/assess/message"
	"underfoot/assess/quantity"
	"underfoot/assess/schema"
)

// words puts comparisons into text, with values in place of figures and behind
// the names of facts.
type words struct {
	schema *schema.Schema
	show   Show
	reader schema.Reader
}

// relations are the keys of what an operator says.
var relations = [...]string{opEqual: "equal", opUnequal: "unequal", opLess: "less", opAtMost: "at_most", opMore: "more",
	opAtLeast: "at_least", opIn: "one_of", opNotIn: "none_of"}

func (w words) relation(o op, left, right any) message.Message {
	return message.New("condition/relation."+relations[o], "left", left, "right", right)
}

func (w words) comparison(n *node) message.Message {
	left, o, right := n.kids[0], n.op, n.kids[1]
	if right.op == opFact && left.op == opText {
		left, o, right = right, o.mirrored(), left // a word to the left of its fact
	}
	if left.op != opFact {
		return w.relation(o, w.side(left, 0), w.side(right, 0))
	}
	f, _ := w.schema.Lookup(left.text)
	if w.schema.Decl(f).Kind == schema.KindQuantity {
		return w.relation(o, w.fact(f), w.side(right, 0))
	}
	return w.relation(o, w.fact(f), w.choices(f, right))
}

// side is one side of a comparison of numbers.
func (w words) side(n *node, least int) any {
	s := w.bare(n)
	if n.op.strength() < least {
		return message.New("condition/arithmetic.group", "what", s)
	}
	return s
}

// bare is a text, or a message.
func (w words) bare(n *node) any {
	strength := n.op.strength()
	switch n.op {
	case opFact:
		f, _ := w.schema.Lookup(n.text)
		return w.fact(f)
	case opNumber:
		return n.text
	case opText, opFigure:
		return quantity.Write(n.dim, quantity.Point(n.value), w.show.Units)
	case opNeg:
		return message.New("condition/arithmetic.negative", "what", w.side(n.kids[0], strength+1))
	}
	return message.New("condition/arithmetic.operation", "left", w.side(n.kids[0], strength), "sign", n.op.String(), "right", w.side(n.kids[1], strength+1))
}

// manyChoices is how many words a list names to a reader who looks at one floor.
const manyChoices = 6

// choices are the words that a fact is compared with. Where there is a floor, a
// long list names those that it may have and counts the others.
func (w words) choices(f schema.FactID, n *node) any {
	if n.op == opText {
		return w.choice(f, n.text)
	}
	kids := n.kids
	if w.reader != nil && len(kids) > manyChoices {
		kids = w.possible(f, kids)
	}
	parts := make([]string, len(kids))
	for i, k := range kids {
		parts[i] = w.choice(f, k.text)
	}
	list := strings.Join(parts, "; ") // a choice's label may hold a comma
	if others := len(n.kids) - len(kids); others > 0 {
		return message.New("condition/choices.more", "list", list, "count", others)
	}
	return list
}

// possible are the words of a list that the fact may have, the first few of
// them; where it can have none, the first few of the list.
func (w words) possible(f schema.FactID, kids []*node) []*node {
	d, set := w.schema.Decl(f), w.reader.Fact(f).Set
	var out []*node
	for _, k := range kids {
		if bit, _ := d.ChoiceBit(k.text); set.Mask&bit != 0 {
			out = append(out, k)
		}
	}
	if len(out) == 0 {
		out = kids
	}
	return out[:min(len(out), manyChoices)]
}

func (w words) choice(f schema.FactID, word string) string {
	if w.show.Word == nil {
		return word
	}
	return w.show.Word(f, word)
}

// fact is a fact's name with its value behind it, where there is a floor to
// read it from.
func (w words) fact(f schema.FactID) any {
	name := w.name(f)
	if w.reader == nil {
		return name
	}
	fact := w.reader.Fact(f)
	switch fact.Presence.Truth {
	case logic.No:
		return message.New("condition/fact.absent", "name", name)
	case logic.Open:
		return message.New("condition/fact.if_present", "name", name, "value", w.value(f, fact.Set))
	}
	return message.New("condition/fact.present", "name", name, "value", w.value(f, fact.Set))
}

func (w words) value(f schema.FactID, s schema.Set) any {
	d := w.schema.Decl(f)
	if d.Kind == schema.KindQuantity {
		return quantity.Write(d.Dimension, s.Range, w.show.Units)
	}
	if s.Mask == d.Full().Mask {
		return message.New("condition/choices.unknown")
	}
	possible := s.Words(d)
	var text any
	for i, word := range possible {
		last := w.choice(f, word)
		if i == 0 {
			text = last
			continue
		}
		text = message.New("condition/choices.or", "others", text, "last", last)
	}
	return text
}
