package schema

import (
	"slices"
	"testing"

	"underfoot/assess/logic"
	"underfoot/assess/quantity"
)

// TestFactsAreHeldAgainstWordsAndLimits: what every value says is proven, what
// none says is refuted, the rest is open on the fact's own addresses; a thing
// that may not be there proves nothing.
func TestFactsAreHeldAgainstWordsAndLimits(t *testing.T) {
	own, of := logic.Deps{1}, logic.Deps{2}
	size := func(lo, hi float64) Fact {
		return Fact{Presence: logic.Proven, Set: Set{Range: quantity.Range{Lo: lo, Hi: hi}}, Deps: own}
	}
	word := func(mask uint64) Fact { return Fact{Presence: logic.Proven, Set: Set{Mask: mask}, Deps: own} }
	perhaps := func(f Fact) Fact { f.Presence = logic.OpenOn(of); return f }
	open := logic.OpenOn(own)
	for name, c := range map[string]struct{ got, want logic.Outcome }{
		"among":                  {word(0b011).Among(0b111), logic.Proven},
		"not among":              {word(0b011).Among(0b100), logic.Refuted},
		"perhaps among":          {word(0b011).Among(0b010), open},
		"absent":                 {Absent.Among(0b111), logic.Refuted},
		"yes":                    {word(SetYes.Mask).IsYes(), logic.Proven},
		"no":                     {word(SetNo.Mask).IsYes(), logic.Refuted},
		"at least, exactly":      {size(3, 4).AtLeast(3), logic.Proven},
		"at least, under":        {size(1, 2.9).AtLeast(3), logic.Refuted},
		"at least, across":       {size(1, 3).AtLeast(3), open},
		"above, exactly":         {size(3, 3).Above(3), logic.Refuted},
		"above":                  {size(3.1, 4).Above(3), logic.Proven},
		"above, across":          {size(3, 4).Above(3), open},
		"absent is not above":    {Absent.Above(-1), logic.Refuted},
		"perhaps there, proven":  {perhaps(size(5, 6)).Above(3), logic.OpenOn(of)},
		"perhaps there, open":    {perhaps(size(2, 6)).Above(3), logic.OpenOn(logic.Deps{1, 2})},
		"perhaps there, refuted": {perhaps(size(1, 2)).Above(3), logic.Refuted},
	} {
		if c.got.Truth != c.want.Truth || !slices.Equal(c.got.Deps, c.want.Deps) {
			t.Errorf("%s: %v, want %v", name, c.got, c.want)
		}
	}
}

// TestYesNoFact: the fact of an outcome says what the outcome says, and depends
// on what the outcome and the thing depend on.
func TestYesNoFact(t *testing.T) {
	for _, c := range []struct {
		presence, o logic.Outcome
		mask        uint64
		deps        logic.Deps
	}{
		{logic.Proven, logic.Proven, SetYes.Mask, nil},
		{logic.Proven, logic.Refuted, SetNo.Mask, nil},
		{logic.Proven, logic.OpenOn(logic.Deps{1}), SetNo.Mask | SetYes.Mask, logic.Deps{1}},
		{logic.OpenOn(logic.Deps{2}), logic.OpenOn(logic.Deps{1}), SetNo.Mask | SetYes.Mask, logic.Deps{1, 2}},
		{logic.OpenOn(logic.Deps{2}), logic.Proven, SetYes.Mask, logic.Deps{2}},
	} {
		f := YesNoFact(c.presence, c.o)
		if f.Set.Mask != c.mask || !slices.Equal(f.Deps, c.deps) || f.Presence.Truth != c.presence.Truth {
			t.Errorf("%v of %v: %+v", c.o, c.presence, f)
		}
	}
	if f := YesNoFact(logic.Refuted, logic.Proven); f.Presence.Truth != logic.No || f.Set.Mask != 0 {
		t.Errorf("a thing that is not there says %+v", f)
	}
}
