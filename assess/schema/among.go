package schema

import (
	"underfoot/assess/logic"
	"underfoot/assess/quantity"
)

// Mask is the mask of several choice words. A word that is none of the
// declaration's choices is a programming error and panics.
func (d *Declaration) Mask(words ...string) uint64 {
	var mask uint64
	for _, w := range words {
		bit, ok := d.ChoiceBit(w)
		if !ok {
			panic("schema: " + d.ID + " has no choice " + w)
		}
		mask |= bit
	}
	return mask
}

// Among is the truth of: the fact is there, and its choice is one of the mask.
func (f Fact) Among(mask uint64) logic.Outcome {
	return f.and(logic.TruthOf(f.Set.Mask&^mask == 0, f.Set.Mask&mask == 0))
}

// IsYes is the truth of: the yes/no fact is there, and it is yes.
func (f Fact) IsYes() logic.Outcome { return f.Among(SetYes.Mask) }

// AtLeast is the truth of: the fact is there, and its quantity, in the base
// unit, is no less than a limit.
func (f Fact) AtLeast(limit float64) logic.Outcome {
	return f.and(logic.TruthOf(f.Set.Range.Lo >= limit, f.Set.Range.Hi < limit))
}

// Above is the truth of: the fact is there, and its quantity, in the base unit,
// is greater than a limit.
func (f Fact) Above(limit float64) logic.Outcome {
	return f.and(logic.TruthOf(f.Set.Range.Lo > limit, f.Set.Range.Hi <= limit))
}

// and is the truth of: the fact is there, and what is said of its value is so.
func (f Fact) and(t logic.Truth) logic.Outcome {
	switch t {
	case logic.Yes:
		return f.Presence
	case logic.No:
		return logic.Refuted
	}
	return f.Presence.And(logic.OpenOn(f.Deps))
}

// YesNoFact is an outcome as a yes/no fact of a thing that may be there.
func YesNoFact(presence, o logic.Outcome) Fact {
	f := Fact{Presence: presence, Set: Set{Mask: SetNo.Mask | SetYes.Mask}, Deps: o.Deps.Union(presence.Deps)}
	switch {
	case presence.Truth == logic.No:
		return Absent
	case o.Truth == logic.Yes:
		f.Set = SetYes
	case o.Truth == logic.No:
		f.Set = SetNo
	}
	return f
}

// DerivedYesNo declares a yes/no fact that the program works out.
func DerivedYesNo(id string, scope Scope) Declaration {
	return Declaration{ID: id, Scope: scope, Kind: KindYesNo, Choices: YesNoChoices, Nature: Derived}
}

// DerivedQuantity declares a quantity that the program works out; the bounds
// are in the base unit of its dimension.
func DerivedQuantity(id string, scope Scope, dim quantity.Dimension, bounds quantity.Range) Declaration {
	return Declaration{ID: id, Scope: scope, Kind: KindQuantity, Dimension: dim, Bounds: bounds, Nature: Derived}
}
