package condition

import (
	"slices"

	"underfoot/assess"
	"underfoot/assess/quantity"
)

// Eval is what the facts say of the condition. An atom is And(presence of its
// facts, comparison), so a comparison about an absent fact is refuted. The
// logic is three-valued; where that stays open, the facts that the condition
// names in several comparisons are tried one possible value after another, and
// the outcome is settled where all agree. An open outcome depends on the
// addresses whose answers settle it. Settled facts cost no allocation.
func (c *Condition) Eval(r assess.Reader) assess.Outcome {
	if len(c.lacks) > 0 {
		return assess.Outcome{}
	}
	f := frame{reader: r}
	out := c.root.eval(&f)
	if out.Truth == assess.Open && len(c.splits) > 0 {
		if t := c.agreed(r); t != assess.Open {
			return assess.Outcome{Truth: t}
		}
	}
	return out
}

// A frame is what the facts are read from: some are held at one possibility,
// the rest are as the reader has them.
type frame struct {
	reader assess.Reader
	held   []held
	blind  bool // dependencies are of no interest
}

type held struct {
	id   assess.FactID
	fact assess.Fact
}

func (f *frame) fact(id assess.FactID) assess.Fact {
	for i := range f.held {
		if f.held[i].id == id {
			return f.held[i].fact
		}
	}
	fact := f.reader.Fact(id)
	if f.blind {
		fact.Deps, fact.Presence.Deps = nil, nil
	}
	return fact
}

func (t *term) eval(f *frame) assess.Outcome {
	switch t.op {
	case opAnd:
		return t.all(f)
	case opOr:
		return t.any(f)
	case opNot:
		return t.kids[0].eval(f).Not()
	case opIn:
		return f.fact(t.fact).Among(t.mask)
	}
	return t.compared(f)
}

func (t *term) all(f *frame) assess.Outcome {
	out := assess.Proven
	for i := range t.kids {
		if out = out.And(t.kids[i].eval(f)); out.Truth == assess.No {
			break
		}
	}
	return out
}

func (t *term) any(f *frame) assess.Outcome {
	out := assess.Refuted
	for i := range t.kids {
		if out = out.Or(t.kids[i].eval(f)); out.Truth == assess.Yes {
			break
		}
	}
	return out
}

// compared compares two numbers.
func (t *term) compared(f *frame) assess.Outcome {
	presence := assess.Proven
	var deps assess.Deps
	for _, id := range t.facts {
		fact := f.fact(id)
		if presence = presence.And(fact.Presence); presence.Truth == assess.No {
			return assess.Refuted
		}
		deps = deps.Union(fact.Deps)
	}
	switch relate(t.op, t.sides[0].eval(f), t.sides[1].eval(f)) {
	case assess.Yes:
		return presence
	case assess.No:
		return assess.Refuted
	}
	return assess.OpenOn(presence.Deps.Union(deps))
}

// relate compares every value of a with every value of b: yes or no where all
// agree, else open. Equality is proven between two points alone.
func relate(o op, a, b quantity.Range) assess.Truth {
	switch o {
	case opLess:
		return assess.TruthOf(a.Hi < b.Lo, a.Lo >= b.Hi)
	case opAtMost:
		return assess.TruthOf(a.Hi <= b.Lo, a.Lo > b.Hi)
	case opMore:
		return assess.TruthOf(a.Lo > b.Hi, a.Hi <= b.Lo)
	case opAtLeast:
		return assess.TruthOf(a.Lo >= b.Hi, a.Hi < b.Lo)
	case opEqual:
		return assess.TruthOf(a.IsPoint() && a == b, a.Hi < b.Lo || b.Hi < a.Lo)
	}
	return assess.TruthOf(a.Hi < b.Lo || b.Hi < a.Lo, a.IsPoint() && a == b)
}

// eval is interval arithmetic: the range holds every value that the expression
// takes for some values of its facts.
func (n *number) eval(f *frame) quantity.Range {
	switch n.op {
	case opNumber:
		return n.value
	case opFact:
		return f.fact(n.fact).Set.Range
	case opNeg:
		r := n.sides[0].eval(f)
		return quantity.Range{Lo: -r.Hi, Hi: -r.Lo}
	}
	a, b := n.sides[0].eval(f), n.sides[1].eval(f)
	switch n.op {
	case opAdd:
		return a.Add(b)
	case opSub:
		return a.Sub(b)
	case opMul:
		return a.Mul(b)
	}
	return a.Div(b)
}

// facts adds those that the number names and that seen does not hold yet.
func (n *number) facts(seen []assess.FactID) []assess.FactID {
	if n == nil {
		return seen
	}
	if n.op == opFact && !slices.Contains(seen, n.fact) {
		seen = append(seen, n.fact)
	}
	return n.sides[1].facts(n.sides[0].facts(seen))
}
