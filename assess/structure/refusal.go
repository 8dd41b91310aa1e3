package structure

import (
	"slices"

	"underfoot/assess"
	"underfoot/assess/quantity"
)

// A refusal is a state of the joists for which the program gives no number,
// and what is needed instead.
type refusal struct {
	when assess.Outcome
	note string
}

// damage are the states of a joist that no sum stands for. Those with a fact
// are asked for in a record, with its bad words; the others a caller may name.
var damage = []struct {
	state string
	fact  string
	words []string // empty: yes
	note  string
}{
	{"cut", "joist.cut", nil, "a joist is cut, split, crushed or burnt: a licensed structural engineer looks at it and says what it carries"},
	{"notched", notched.ID, []string{"beyond-limits"}, "notches or holes are beyond the limits: a licensed structural engineer says what the joist still carries"},
	{"insects", "joist.insects", nil, "insects have eaten the wood: a licensed structural engineer, with a pest inspector, says how much sound wood is left"},
	{"short-bearing", "joist.short_bearing", nil, "the joists rest on too little: a licensed structural engineer decides on the supports before any sum"},
	{"loose-posts", "joist.loose_posts", nil, "posts stand without footing: a licensed structural engineer decides on the supports before any sum"},
	{"support-removed", "joist.support_removed", nil, "a support was taken out: a licensed structural engineer finds the true span and decides"},
	{"rot", "water.rot", nil, "wood is rotten: once it is opened up and cut back to sound wood, a licensed professional says what is left to count"},
	{"cracked", "", nil, "a joist is cracked: a licensed structural engineer looks at it and says what it carries"},
	{"fire", "", nil, "fire or long wetting has harmed the wood: a licensed structural engineer says how much of it counts"},
	{"sagging", "", nil, "the joists hang down for a cause that is not known: a licensed structural engineer finds it before any sum"},
	{"part-sistered", "", nil, "a sister that stops short of the supports changes the joist along its length: an engineer sums up each part"},
	{"supports-settle", "", nil, "a support settles: joists that run on over it take up what it gives way, and an engineer sums that up"},
}

const (
	noteMember   = "this member is not plain sawn lumber: its stiffness is the maker's figure or an engineer's, with the document that names the member; rules for solid wood do not fit it"
	noteNoJoist  = "this floor has no sawn joists: concrete, steel deck, toppings and sleepers are an engineer's or their maker's matter"
	noteSpan     = "the span is over 26 ft, where the tables and this sum end: an engineer sizes such a floor"
	noteSpread   = "the joists are more than 24 in apart, where the tables and this sum end: an engineer judges such a floor"
	noteOverhang = "the joists reach more than 2 ft past their support: an engineer sums up such a floor"
	noteBears    = "a wall or a roof stands on the overhang: an engineer sums up such a floor"
	noteSize     = "the size is not one that can be read, or that lumber has: measure thickness and depth of a joist with a tape"
	noteNoLimit  = "no limit is known for this region and tile: the local code or an engineer names one"
	noteWood     = "no table has this species or grade: read the stamp again, or leave out what is not known"
)

// Ends of the sums, in inches: the spacing at which joist tables and the factor
// for repetitive members end (NDS 4.3.9), and the greatest overhang.
const (
	widestSpacing   = 24.0
	longestOverhang = 24.0
)

// States are the words that Member.Troubles takes.
func States() []string {
	var all []string
	for _, d := range damage {
		all = append(all, d.state)
	}
	return all
}

// Kinds are the words that Member.Kind takes.
func Kinds() []string { return append(slices.Clone(member.Choices), "none") }

// refused is why a member gets no number, or empty.
func (m Member) refused() string {
	switch {
	case m.Kind == "" || m.Kind == member.Choices[0]:
	case slices.Contains(member.Choices, m.Kind):
		return noteMember
	default:
		return noteNoJoist
	}
	for _, d := range damage {
		if slices.Contains(m.Troubles, d.state) || d.fact != "" && slices.Contains(m.Troubles, d.fact) {
			return d.note
		}
	}
	for _, state := range m.Troubles { // a word from elsewhere is a trouble all the same
		return state + ": a licensed structural engineer looks at it before any sum"
	}
	switch {
	case m.Notched == "beyond-limits":
		return damage[1].note
	case said(m.Span).Lo > LongestSpanIn:
		return noteSpan
	case said(m.Spacing).Lo > widestSpacing:
		return noteSpread
	case m.Overhang.Hi > longestOverhang:
		return noteOverhang
	case m.OverhangBears:
		return noteBears
	}
	return ""
}

// refusals are the states to look at before anything is computed, in the order
// in which they are told.
func refusals(t assess.Thing) []refusal {
	all := []refusal{{is(t, &member, member.Choices[1:]...), noteMember}}
	for _, d := range damage {
		switch {
		case d.fact == "":
		case d.words != nil:
			all = append(all, refusal{is(t, &notched, d.words...), d.note})
		default:
			all = append(all, refusal{t.Fact(d.fact).Among(assess.SetYes.Mask), d.note})
		}
	}
	return append(all, refusal{beyond(t.Fact("joist.span"), LongestSpanIn), noteSpan},
		refusal{beyond(t.Fact("joist.spacing"), widestSpacing), noteSpread})
}

// beyond is whether a quantity is greater than a limit.
func beyond(f assess.Fact, limit float64) assess.Outcome {
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
		if d.fact != "" {
			names = append(names, d.fact)
		}
	}
	return names
}

// unknown is a number of which nothing is known and nothing can be: no answer
// would narrow it.
var unknown = estimate{value: quantity.Everything}
