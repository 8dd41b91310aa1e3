package result

import (
	"underfoot/assess"
	"underfoot/assess/logic"
	"underfoot/assess/schema"
)

// A Derivation makes facts from other facts: a tally over a list, a computed
// check, a fact built into the program. It says what it reads and gives, so
// that the loader can put all of them in order and find a cycle.
type Derivation struct {
	ID    string
	Scope schema.Scope         // of the things it is made for
	Reads []string             // short names of the facts it looks at, items' facts included
	Gives []schema.Declaration // facts of its scope, in the order in which Make returns them
	Make  func(Thing) ([]schema.Fact, *Check)
}

// A Thing is what a derivation sees of one thing: its own facts and those of
// what encloses it.
type Thing interface {
	// Fact is a fact by short name, of the thing or of what encloses it.
	// A name that the derivation did not list in Reads panics in tests.
	Fact(name string) schema.Fact
	// Items are the named things of a list of the zone, top first.
	Items(list schema.Scope) []Thing
	// Rest is the stand-in for all things of the list that nobody has named,
	// or nil where the list is closed. Its facts depend on the list's
	// completeness alone.
	Rest(list schema.Scope) Thing
	// Visited is the day to which ages count; empty where it is not known.
	Visited() assess.Day
	// ID is the item's id, the path's word, or the zone's id.
	ID() string
	// Named turns a set of dependencies into addresses, for a Check.
	Named(logic.Deps) []schema.Address
}
