package record

import (
	"slices"

	"underfoot/assess"
	"underfoot/assess/schema"
)

// members are the facts of a scope that a family answers as a whole; none
// where the word is no family.
func members(s *schema.Schema, family string, scope schema.Scope) []*schema.Declaration {
	var out []*schema.Declaration
	for i := range s.All() {
		if d := &s.All()[i]; family != "" && d.Family == family && d.Scope == scope {
			out = append(out, d)
		}
	}
	return out
}

// families are the family names of a scope, in catalogue order.
func families(s *schema.Schema, scope schema.Scope) []string {
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
func none(d *schema.Declaration, like assess.Answer) assess.Answer {
	if like.Reply != assess.Given {
		return like
	}
	like.Text = "no"
	if bit, ok := d.ChoiceBit("none"); ok {
		like.Text, like.Set = "none", schema.Set{Mask: bit}
		return like
	}
	like.Set = schema.SetNo
	return like
}

// familyWords is the declaration by which a family's own value is read.
func familyWords(family string) *schema.Declaration {
	return &schema.Declaration{ID: family, Kind: schema.KindChoice, Choices: []string{"none"}}
}

// family gives the answers of a family's members, by name; none for a key that
// is no family. A family takes none, and the replies of one who could not tell.
func (r *reader) family(p pair, scope schema.Scope) assess.Answers {
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
