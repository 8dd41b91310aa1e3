package schema

import (
	"underfoot/assess/quantity"
)

// A Kind is the kind of value that a fact has.
type Kind uint8

// The kinds. Yes/no is a choice between the words no and yes.
const (
	KindYesNo Kind = iota
	KindChoice
	KindQuantity
	KindText
)

// Unit is the dimension's name for a quantity, and empty for words.
func (k Kind) Unit(d quantity.Dimension) string {
	if k != KindQuantity {
		return ""
	}
	return d.String()
}

// A Nature says what a missing answer means.
type Nature uint8

// Found is a state of the floor: no answer is every possibility. Chosen is the
// owner's plan: no answer takes the declared value. Derived is never asked: a
// tally, a check's result or a fact built into the program.
const (
	Found Nature = iota
	Chosen
	Derived
)

// YesNoChoices are the words of a yes/no fact, in the order of its mask's bits.
var YesNoChoices = []string{"no", "yes"}

// A Declaration says what values a fact may have and where it belongs.
type Declaration struct {
	ID        string // topic.field
	Scope     Scope
	Kind      Kind
	Dimension quantity.Dimension // of KindQuantity
	Choices   []string           // of KindChoice and KindYesNo: bit i of a mask is Choices[i]
	Like      string             // of a derived choice: the fact whose choices come before its own
	Bounds    quantity.Range     // least and greatest value that an answer may state, base unit
	Nature    Nature
	Default   string // value where nothing is said; empty: every possibility
	Family    string // the family that `none` answers as a whole: danger, water, work, joist.trouble
	Always    bool   // relevant whatever else is known
}

// ChoiceBit is the mask of one choice word; ok is false for a word that is none.
func (d *Declaration) ChoiceBit(word string) (mask uint64, ok bool) {
	for i, c := range d.Choices {
		if c == word {
			return 1 << i, true
		}
	}
	return 0, false
}

// Full is the set of everything the fact may be.
func (d *Declaration) Full() Set {
	switch d.Kind {
	case KindQuantity:
		return Set{Range: quantity.Everything}
	case KindText:
		return Set{}
	}
	return Set{Mask: 1<<len(d.Choices) - 1}
}

// A FactID is the place of a declaration in its schema.
type FactID int32

// A Schema is every fact that there is, asked and derived, in catalogue order.
type Schema struct {
	list  []Declaration
	index map[string]FactID
}

// NewSchema makes a schema; a name that stands twice is a programming error and panics.
func NewSchema(list []Declaration) *Schema {
	s := &Schema{list: list, index: make(map[string]FactID, len(list))}
	for i, d := range list {
		if _, twice := s.index[d.ID]; twice {
			panic("schema: fact declared twice: " + d.ID)
		}
		s.index[d.ID] = FactID(i)
	}
	return s
}

// Lookup finds a fact by its short name.
func (s *Schema) Lookup(id string) (FactID, bool) {
	f, ok := s.index[id]
	return f, ok
}

// Decl is the declaration of a fact.
func (s *Schema) Decl(f FactID) *Declaration { return &s.list[f] }

// Find is Lookup and Decl in one; nil where there is no such fact.
func (s *Schema) Find(id string) *Declaration {
	if f, ok := s.index[id]; ok {
		return &s.list[f]
	}
	return nil
}

// Len is the number of facts.
func (s *Schema) Len() int { return len(s.list) }

// All are the declarations in catalogue order; the caller does not change them.
func (s *Schema) All() []Declaration { return s.list }
