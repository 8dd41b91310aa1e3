package structure

import (
	"underfoot/assess"
	"underfoot/assess/quantity"
)

// A refusal is a state of the joists for which the program gives no number,
// and what is needed instead.
type refusal struct {
	when assess.Outcome
	note string
}

// damage are the facts that a refusal looks at, each with its bad words.
var damage = []struct {
	fact  string
	words []string // empty: yes
	note  string
}{
	{"joist.cut", nil, "a joist is cut, split, crushed or burnt: a licensed structural engineer looks at it and says what it carries"},
	{notched.ID, []string{"beyond-limits"}, "notches or holes are beyond the limits: a licensed structural engineer says what the joist still carries"},
	{"joist.insects", nil, "insects have eaten the wood: a licensed structural engineer, with a pest inspector, says how much sound wood is left"},
	{"joist.short_bearing", nil, "the joists rest on too little: a licensed structural engineer decides on the supports before any sum"},
	{"joist.loose_posts", nil, "posts stand without footing: a licensed structural engineer decides on the supports before any sum"},
	{"joist.support_removed", nil, "a support was taken out: a licensed structural engineer finds the true span and decides"},
	{"water.rot", nil, "wood is rotten: once it is opened up and cut back to sound wood, a licensed professional says what is left to count"},
}

const (
	noteMember = "this member is not plain sawn lumber: its stiffness is the maker's figure or an engineer's, with the document that names the member; rules for solid wood do not fit it"
	noteSpan   = "the span is over 26 ft, where the tables and this sum end: an engineer sizes such a floor"
	noteSpread = "the joists are more than 24 in apart, where the tables and this sum end: an engineer judges such a floor"
)

// widestSpacing is the spacing, in inches, at which joist tables and the
// factor for repetitive members end (NDS 4.3.9).
const widestSpacing = 24.0

// refusals are the states to look at before anything is computed, in the order
// in which they are told.
func refusals(t assess.Thing) []refusal {
	all := []refusal{{is(t, &member, member.Choices[1:]...), noteMember}}
	for _, d := range damage {
		when := t.Fact(d.fact).Among(assess.SetYes.Mask)
		if d.words != nil {
			when = is(t, &notched, d.words...)
		}
		all = append(all, refusal{when, d.note})
	}
	return append(all, refusal{over(t.Fact("joist.span"), LongestSpanIn), noteSpan},
		refusal{over(t.Fact("joist.spacing"), widestSpacing), noteSpread})
}

// over is whether a quantity is greater than a limit.
func over(f assess.Fact, limit float64) assess.Outcome {
	r := f.Set.Range
	switch {
	case r.Lo > limit:
		return f.Presence
	case r.Hi <= limit:
		return assess.Refuted
	}
	return f.Presence.And(assess.OpenOn(f.Deps))
}

// refused is the first refusal that is proven, and the answers on which the
// others still wait.
func refused(t assess.Thing) (note string, open assess.Deps) {
	for _, r := range refusals(t) {
		switch r.when.Truth {
		case assess.Yes:
			return r.note, nil
		case assess.Open:
			open = open.Union(r.when.Deps)
		}
	}
	return "", open
}

func damageFacts() []string {
	names := []string{member.ID}
	for _, d := range damage {
		names = append(names, d.fact)
	}
	return names
}

// unknown is a number of which nothing is known and nothing can be: no answer
// would narrow it.
var unknown = estimate{value: quantity.Everything}
