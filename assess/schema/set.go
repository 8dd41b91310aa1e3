package schema

import (
	"math/bits"

	"underfoot/assess/quantity"
)

// A Set is what a fact may be: a mask over the declared choices, a range of
// numbers in the base unit, or a text, as the declaration's kind says.
type Set struct {
	Mask  uint64
	Range quantity.Range
	Text  string
}

// The two settled yes/no sets.
var (
	SetNo  = Set{Mask: 1}
	SetYes = Set{Mask: 2}
)

// Settled reports whether only one value is possible.
func (s Set) Settled(k Kind) bool {
	switch k {
	case KindQuantity:
		return s.Range.IsPoint()
	case KindText:
		return s.Text != ""
	}
	return bits.OnesCount64(s.Mask) == 1
}

// Within reports whether s leaves open nothing that t rules out.
func (s Set) Within(t Set, k Kind) bool {
	switch k {
	case KindQuantity:
		return s.Range.Within(t.Range)
	case KindText:
		return t.Text == "" || s.Text == t.Text
	}
	return s.Mask&^t.Mask == 0
}

// Hull is the smallest set that holds both.
func (s Set) Hull(t Set, k Kind) Set {
	switch k {
	case KindQuantity:
		return Set{Range: s.Range.Hull(t.Range)}
	case KindText:
		if s.Text != t.Text {
			return Set{}
		}
		return s
	}
	return Set{Mask: s.Mask | t.Mask}
}

// Words are the choices still possible, in declared order.
func (s Set) Words(d *Declaration) []string {
	var words []string
	for i, c := range d.Choices {
		if s.Mask&(1<<i) != 0 {
			words = append(words, c)
		}
	}
	return words
}
