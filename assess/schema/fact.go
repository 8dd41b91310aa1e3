package schema

import "underfoot/assess/logic"

// A Fact is presence (does it apply here at all), a set of possible values and
// the addresses that would narrow either. A settled fact depends on nothing.
type Fact struct {
	Presence logic.Outcome
	Set      Set
	Deps     logic.Deps
}

// Absent is the fact of a thing that is proven not to be there.
var Absent = Fact{Presence: logic.Refuted}

// A Reader gives the facts that a condition or a check asks for by name.
type Reader interface {
	Fact(FactID) Fact
}
