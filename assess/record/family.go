package record

import (
	"slices"

	"underfoot/assess"
)

// members are the facts of a scope that a family answers as a whole; none
// where the word is no family.
func members(s *assess.Schema, family string, scope assess.Scope) []*assess.Declaration {
	var out []*assess.Declaration
	for i := range s.All() {
		if d := &s.All()[i]; family != "" && d.Family == family && d.Scope == scope {
			out = append(out, d)
		}
	}
	return out
}

// families are the family names of a scope, in catalogue order.
func families(s *assess.Schema, scope assess.Scope) []string {
	var out []string
	for i := range s.All() {
		if d := &s.All()[i]; d.Family != "" && d.Scope == scope && !slices.Contains(out, d.Family) {
			out = append(out, d.Family)
		}
	}
	return out
}

// none is the answer by which a family's none answers a member: no, or the
// choice none where the member has it.
func none(d *assess.Declaration, like assess.Answer) assess.Answer {
	if like.Reply != assess.Given {
		return like
	}
	like.Text = "no"
	if bit, ok := d.ChoiceBit("none"); ok {
		like.Text, like.Set = "none", assess.Set{Mask: bit}
		return like
	}
	like.Set = assess.SetNo
	return like
}

// familyWords is the declaration by which a family's own value is read.
func familyWords(family string) *assess.Declaration {
	return &assess.Declaration{ID: family, Kind: assess.KindChoice, Choices: []string{"none"}}
}

// family gives the answers of a family's members, by name; none for a key that
// is no family. A family takes none, and the replies of one who could not tell.
func (r *reader) family(p pair, scope assess.Scope) assess.Answers {
	if r.values.Schema().Find(p.key.Value) != nil {
		return nil
	}
	ms := members(r.values.Schema(), p.key.Value, scope)
	if len(ms) == 0 {
		return nil
	}
	like, ok := r.answer(familyWords(p.key.Value), p.value)
	if !ok {
		return nil
	}
	out := make(assess.Answers, len(ms))
	for _, d := range ms {
		out[d.ID] = none(d, like)
	}
	return out
}
