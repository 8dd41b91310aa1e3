package condition

import (
	"math"
	"slices"

	"underfoot/assess/schema"
)

// Constants are the values that the fact is compared with, in rising order:
// where a number may turn the condition. A constant behind arithmetic is
// carried over to the fact's side.
func (c *Condition) Constants(f schema.FactID) []float64 {
	var atoms []*term
	c.root.atoms(func(t *term) { atoms = append(atoms, t) })
	return constants(f, atoms)
}

func constants(f schema.FactID, atoms []*term) []float64 {
	var out []float64
	for _, a := range atoms {
		if a.op == opIn {
			continue
		}
		for i, side := range a.sides {
			if other := a.sides[1-i]; other.op == opNumber && other.value.IsPoint() {
				if v, ok := side.solve(f, other.value.Lo); ok {
					out = append(out, v)
				}
			}
		}
	}
	slices.Sort(out)
	return slices.Compact(out)
}

// solve is the value of the fact at which the expression takes the value v; ok
// is false where anything else than constants stands beside the fact.
func (n *number) solve(f schema.FactID, v float64) (float64, bool) {
	switch n.op {
	case opFact:
		return v, n.fact == f && !math.IsInf(v, 0) && !math.IsNaN(v)
	case opNumber:
		return 0, false
	case opNeg:
		return n.sides[0].solve(f, -v)
	}
	if k := n.sides[1]; k.op == opNumber {
		return n.sides[0].solve(f, undoRight(n.op, v, k.value.Lo))
	}
	if k := n.sides[0]; k.op == opNumber {
		return n.sides[1].solve(f, undoLeft(n.op, v, k.value.Lo))
	}
	return 0, false
}

// undoRight is x where x o k is v.
func undoRight(o op, v, k float64) float64 {
	switch o {
	case opAdd:
		return v - k
	case opSub:
		return v + k
	case opMul:
		return v / k
	}
	return v * k
}

// undoLeft is x where k o x is v.
func undoLeft(o op, v, k float64) float64 {
	switch o {
	case opAdd:
		return v - k
	case opSub:
		return k - v
	case opMul:
		return v / k
	}
	return k / v
}
