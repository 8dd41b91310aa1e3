package condition

import (
	"slices"

	"underfoot/assess/logic"
	"underfoot/assess/quantity"
	"underfoot/assess/schema"
)

// Eval is what the facts say of the condition. An atom is And(presence of its
// facts, comparison), so a comparison about an absent fact is refuted. The
// logic is three-valued; where that stays open, the facts that the condition
// names in several comparisons are tried one possible value after another, and
// the outcome is settled where all agree. An open outcome depends on the
// addresses whose answers settle it. Settled facts cost no allocation.
func (c *Condition) Eval(r schema.Reader) logic.Outcome {
	if len(c.lacks) > 0 {
		return logic.Outcome{}
	}
	f := frame{reader: r}
	out := c.root.eval(&f)
	if out.Truth == logic.Open && len(c.splits) > 0 {
		if t := c.agreed(r); t != logic.Open {
			return logic.Outcome{Truth: t}
		}
	}
	return out
}

// A frame is what the facts are read from: some are held at one possibility,
// the rest are as the reader has them.
type frame struct {
	reader schema.Reader
	held   []held
	blind  bool // dependencies are of no interest
}

type held struct {
	id   schema.FactID
	fact schema.Fact
}

func (f *frame) fact(id schema.FactID) schema.Fact {
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

func (t *term) eval(f *frame) logic.Outcome {
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

func (t *term) all(f *frame) logic.Outcome {
	out := logic.Proven
	for i := range t.kids {
		if out = out.And(t.kids[i].eval(f)); out.Truth == logic.No {
			break
		}
	}
	return out
}

func (t *term) any(f *frame) logic.Outcome {
	out := logic.Refuted
	for i := range t.kids {
		if out = out.Or(t.kids[i].eval(f)); out.Truth == logic.Yes {
			break
		}
	}
	return out
}

// compared compares two numbers.
func (t *term) compared(f *frame) logic.Outcome {
	presence := logic.Proven
	var deps logic.Deps
	for _, id := range t.facts {
		fact := f.fact(id)
		if presence = presence.And(fact.Presence); presence.Truth == logic.No {
			return logic.Refuted
		}
		deps = deps.Union(fact.Deps)
	}
	switch relate(t.op, t.sides[0].eval(f), t.sides[1].eval(f)) {
	case logic.Yes:
		return presence
	case logic.No:
		return logic.Refuted
	}
	return logic.OpenOn(presence.Deps.Union(deps))
}

// relate compares every value of a with every value of b: yes or no where all
// agree, else open. Equality is proven between two points alone.
func relate(o op, a, b quantity.Range) logic.Truth {
	switch o {
	case opLess:
		return logic.TruthOf(a.Hi < b.Lo, a.Lo >= b.Hi)
	case opAtMost:
		return logic.TruthOf(a.Hi <= b.Lo, a.Lo > b.Hi)
	case opMore:
		return logic.TruthOf(a.Lo > b.Hi, a.Hi <= b.Lo)
	case opAtLeast:
		return logic.TruthOf(a.Lo >= b.Hi, a.Hi < b.Lo)
	case opEqual:
		return logic.TruthOf(a.IsPoint() && a == b, a.Hi < b.Lo || b.Hi < a.Lo)
	}
	return logic.TruthOf(a.Hi < b.Lo || b.Hi < a.Lo, a.IsPoint() && a == b)
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
func (n *number) facts(seen []schema.FactID) []schema.FactID {
	if n == nil {
		return seen
	}
	if n.op == opFact && !slices.Contains(seen, n.fact) {
		seen = append(seen, n.fact)
	}
	return n.sides[1].facts(n.sides[0].facts(seen))
}
