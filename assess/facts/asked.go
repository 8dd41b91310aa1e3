package facts

import (
	"underfoot/assess"
	"underfoot/assess/logic"
	"underfoot/assess/question"
	"underfoot/assess/result"
	"underfoot/assess/schema"
)

// question makes the maker of an asked fact. The supply, where there is one,
// gives the value from other facts while nobody has answered.
func (p *Plan) question(q *question.Question, supply *result.Derivation) (maker, error) {
	m := maker{scope: q.Decl.Scope, gives: []schema.FactID{q.ID}, reads: reads(q.Relevant)}
	for _, im := range q.Implied {
		m.reads = append(m.reads, reads(im.When)...)
	}
	if supply != nil {
		more, err := p.ids(supply.ID, supply.Reads)
		if err != nil {
			return m, err
		}
		m.reads = append(m.reads, more...)
	}
	byDefault, err := p.byDefault(q)
	if err != nil {
		return m, err
	}
	m.make = each(func(f *Frame) { f.put(q.ID, f.asked(q, supply, byDefault)) })
	return m, nil
}

// byDefault is what the fact is where nobody has said anything: the declared
// value, or everything.
func (p *Plan) byDefault(q *question.Question) (schema.Set, error) {
	if q.Decl.Default == "" {
		return q.Decl.Full(), nil
	}
	return p.catalogue.Read(q.Decl, q.Decl.Default, 0)
}

func (f *Frame) asked(q *question.Question, supply *result.Derivation, byDefault schema.Set) schema.Fact {
	fact := schema.Fact{Presence: f.relevance(q)}
	if fact.Presence.Truth == logic.No {
		return schema.Absent
	}
	answer, said := f.answers[q.Decl.ID]
	switch {
	case said && answer.Reply == assess.DoesNotApply && fact.Presence.Truth == logic.Open && !f.closesItems(q.ID):
		return schema.Absent
	case said && answer.Reply == assess.Given:
		fact.Set = answer.Set
	case said:
		fact.Set = f.followed(q, supply, q.Decl.Full())
	default:
		fact.Set = f.followed(q, supply, byDefault)
	}
	if !fact.Set.Settled(q.Decl.Kind) {
		fact.Deps = f.own(q.Decl)
	}
	return fact
}

// closesItems reports whether the question closes a list in which things are
// named: what is named is there, whatever is said of the list.
func (f *Frame) closesItems(question schema.FactID) bool {
	for _, list := range schema.ListScopes {
		if f.scope == schema.ScopeZone && f.floor.plan.lists[list] == question && len(f.zone.items[list]) > 0 {
			return true
		}
	}
	return false
}

// relevance is whether the question applies. Of things nobody has named it is
// never proven that it does.
func (f *Frame) relevance(q *question.Question) logic.Outcome {
	o := logic.Proven
	if q.Relevant != nil {
		o = q.Relevant.Eval(f)
	}
	if f.rest != nil && o.Truth != logic.No {
		return logic.OpenOn(f.rest)
	}
	return o
}

// followed is what an unanswered fact may be: what other facts supply or
// imply, else the set given.
func (f *Frame) followed(q *question.Question, supply *result.Derivation, otherwise schema.Set) schema.Set {
	if supply != nil {
		made, _ := supply.Make(thing{f})
		for i, g := range supply.Gives {
			if g.ID == q.Decl.ID && made[i].Presence.Truth == logic.Yes {
				return made[i].Set
			}
		}
	}
	var possible schema.Set
	some := false
	for _, im := range q.Implied {
		o := im.When.Eval(f)
		if o.Truth == logic.No {
			continue
		}
		if some {
			possible = possible.Hull(im.Then, q.Decl.Kind)
		} else {
			possible, some = im.Then, true
		}
		if o.Truth == logic.Yes {
			return possible
		}
	}
	if some {
		return possible.Hull(otherwise, q.Decl.Kind)
	}
	return otherwise
}

// own is the dependency on the thing's own answer; of the rest of a list it is
// the answer that closes the list.
func (f *Frame) own(d *schema.Declaration) logic.Deps {
	if f.rest != nil {
		return f.rest
	}
	return logic.DependOn(f.ref(d))
}

// put stores a made fact, or what a plan takes as done in its place.
func (f *Frame) put(id schema.FactID, fact schema.Fact) {
	if f.assumed != nil {
		if set, ok := f.assumed[f.floor.plan.schema.Decl(id).ID]; ok {
			fact.Set, fact.Deps = set, nil
		}
	}
	f.facts[f.floor.plan.slots[id].slot] = fact
}
