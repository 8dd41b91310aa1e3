package structure

import (
	"slices"

	"underfoot/assess/logic"
	"underfoot/assess/message"
	"underfoot/assess/quantity"
	"underfoot/assess/result"
)

// A refusal is a state of the joists for which the program gives no number,
// and what is needed instead.
type refusal struct {
	when logic.Outcome
	note message.Message
}

// damage are the states of a joist that no sum stands for, by the name of their
// refusal. Those with a fact are asked for in a record, with its bad words; the
// others a caller may name.
var damage = []struct {
	state string
	fact  string
	words []string // empty: yes
}{
	{"cut", "joist.cut", nil},
	{"notched", notched.ID, []string{"beyond-limits"}},
	{"insects", "joist.insects", nil},
	{"short-bearing", "joist.short_bearing", nil},
	{"loose-posts", "joist.loose_posts", nil},
	{"support-removed", "joist.support_removed", nil},
	{"rot", "water.rot", nil},
	{"cracked", "", nil},
	{"fire", "", nil},
	{"sagging", "", nil},
	{"part-sistered", "", nil},
	{"supports-settle", "", nil},
}

// refuse is why there is no number, by the name of its sentence.
func refuse(name string) message.Message { return message.New("structure/refusal." + name) }

// Ends of the sums, in inches: the spacing at which joist tables and the factor
// for repetitive members end (NDS 4.3.9), and the greatest overhang.
const (
	widestSpacing   = 24.0
	longestOverhang = 24.0
)

// refused is why a member gets no number, or nothing.
func (m Member) refused() message.Message {
	switch {
	case m.Kind == "" || m.Kind == member.Choices[0]:
	case slices.Contains(member.Choices, m.Kind):
		return refuse("member")
	default:
		return refuse("no_joist")
	}
	for _, d := range damage {
		if slices.Contains(m.Troubles, d.state) || d.fact != "" && slices.Contains(m.Troubles, d.fact) {
			return refuse(d.state)
		}
	}
	for _, state := range m.Troubles { // a word from elsewhere is a trouble all the same
		return message.New("structure/refusal.other", "trouble", state)
	}
	switch {
	case m.Notched == "beyond-limits":
		return refuse("notched")
	case stated(m.Span).Lo > LongestSpanIn:
		return refuse("span")
	case stated(m.Spacing).Lo > widestSpacing:
		return refuse("spread")
	case m.Overhang.Hi > longestOverhang:
		return refuse("overhang")
	case m.OverhangBears:
		return refuse("bears")
	}
	return message.Message{}
}

// refusals are the states to look at before anything is computed, in the order
// in which they are told.
func refusals(t result.Thing) []refusal {
	all := []refusal{{is(t, &member, member.Choices[1:]...), refuse("member")}}
	for _, d := range damage {
		switch {
		case d.fact == "":
		case d.words != nil:
			all = append(all, refusal{is(t, &notched, d.words...), refuse(d.state)})
		default:
			all = append(all, refusal{t.Fact(d.fact).IsYes(), refuse(d.state)})
		}
	}
	return append(all, refusal{t.Fact("joist.span").Above(LongestSpanIn), refuse("span")},
		refusal{t.Fact("joist.spacing").Above(widestSpacing), refuse("spread")})
}

// refused is the first refusal that is proven, and the answers on which the
// others still wait.
func refused(t result.Thing) (note message.Message, open logic.Deps) {
	for _, r := range refusals(t) {
		switch r.when.Truth {
		case logic.Yes:
			return r.note, nil
		case logic.Open:
			open = open.Union(r.when.Deps)
		}
	}
	return message.Message{}, open
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
