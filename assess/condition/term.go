package condition

import (
	"underfoot/assess/quantity"
	"underfoot/assess/schema"
)

// A term is a compiled condition or a part of it: a chain of && or ||, a
// negation, a choice that is tested against a mask of words, or two numbers
// that are compared.
type term struct {
	op    op              // opAnd, opOr, opNot, opIn for a choice, or a comparison of numbers
	kids  []term          // of opAnd, opOr, opNot
	fact  schema.FactID   // of opIn
	mask  uint64          // of opIn: the words that prove it
	sides [2]*number      // of a comparison
	facts []schema.FactID // of an atom: each fact that it names, once
	from  *node
}

// A number is a compiled expression over ranges in base units.
type number struct {
	op    op             // opNumber, opFact, opNeg or an operation
	value quantity.Range // of opNumber
	fact  schema.FactID  // of opFact
	sides [2]*number     // of an operation; opNeg has the first alone
}

// atoms calls visit for each comparison of the condition.
func (t *term) atoms(visit func(*term)) {
	switch t.op {
	case opAnd, opOr, opNot:
		for i := range t.kids {
			t.kids[i].atoms(visit)
		}
	case opBad:
	default:
		visit(t)
	}
}
