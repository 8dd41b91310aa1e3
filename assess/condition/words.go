package condition

import (
	"fmt"
	"strings"

	"underfoot/assess"
	"underfoot/assess/quantity"
)

// words puts comparisons into text, with values in place of figures and behind
// the names of facts.
type words struct {
	schema *assess.Schema
	show   Show
	reader assess.Reader
}

var comparisonWords = [...]string{opEqual: "is", opUnequal: "is not", opLess: "is less than", opAtMost: "is at most", opMore: "is more than",
	opAtLeast: "is at least", opIn: "is one of"}

func (w words) comparison(n *node) string {
	left, o, right := n.kids[0], n.op, n.kids[1]
	if right.op == opFact && left.op == opText {
		left, o, right = right, o.mirrored(), left // a word to the left of its fact
	}
	if left.op != opFact {
		return w.side(left, 0) + " " + comparisonWords[o] + " " + w.side(right, 0)
	}
	f, _ := w.schema.Lookup(left.text)
	if w.schema.Decl(f).Kind == assess.KindQuantity {
		return w.fact(f) + " " + comparisonWords[o] + " " + w.side(right, 0)
	}
	return w.fact(f) + " " + comparisonWords[o] + " " + w.choices(f, right)
}

// side is one side of a comparison of numbers.
func (w words) side(n *node, least int) string {
	s := w.bare(n)
	if n.op.strength() < least {
		return "(" + s + ")"
	}
	return s
}

func (w words) bare(n *node) string {
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
		return "-" + w.side(n.kids[0], strength+1)
	}
	return w.side(n.kids[0], strength) + " " + n.op.String() + " " + w.side(n.kids[1], strength+1)
}

// manyChoices is how many words a list names to a reader who looks at one floor.
const manyChoices = 6

// choices are the words that a fact is compared with. Where there is a floor, a
// long list names those that it may have and counts the others.
func (w words) choices(f assess.FactID, n *node) string {
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
	if others := len(n.kids) - len(kids); others > 0 {
		parts = append(parts, fmt.Sprintf("and %d more", others))
	}
	return strings.Join(parts, "; ") // a choice's label may hold a comma
}

// possible are the words of a list that the fact may have, the first few of
// them; where it can have none, the first few of the list.
func (w words) possible(f assess.FactID, kids []*node) []*node {
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

func (w words) choice(f assess.FactID, word string) string {
	if w.show.Word == nil {
		return word
	}
	return w.show.Word(f, word)
}

// fact is a fact's name with its value behind it, where there is a floor to
// read it from.
func (w words) fact(f assess.FactID) string {
	name := w.name(f)
	if w.reader == nil {
		return name
	}
	fact := w.reader.Fact(f)
	switch fact.Presence.Truth {
	case assess.No:
		return name + " (does not apply)"
	case assess.Open:
		return name + " (" + w.value(f, fact.Set) + ", if it applies)"
	}
	return name + " (" + w.value(f, fact.Set) + ")"
}

func (w words) value(f assess.FactID, s assess.Set) string {
	d := w.schema.Decl(f)
	if d.Kind == assess.KindQuantity {
		return quantity.Write(d.Dimension, s.Range, w.show.Units)
	}
	if s.Mask == d.Full().Mask {
		return "not known"
	}
	possible := s.Words(d)
	for i, word := range possible {
		possible[i] = w.choice(f, word)
	}
	return strings.Join(possible, " or ")
}
