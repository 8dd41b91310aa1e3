// Package facts turns answers into facts: what applies, what is possible, and
// which answers would narrow it. Questions, tallies and derivations are put in
// one order once; a job is then filled in along it.
package facts

import (
	"fmt"
	"slices"
	"strings"

	"underfoot/assess"
	"underfoot/assess/condition"
	"underfoot/assess/question"
	"underfoot/assess/result"
	"underfoot/assess/schema"
)

// A Plan is the order in which facts are made, and where each stands.
type Plan struct {
	catalogue *question.Catalogue
	schema    *schema.Schema
	slots     []slot
	sizes     [schema.ScopePath + 1]int
	order     []maker
	lists     [schema.ScopePath]schema.FactID // the fact that closes each list
}

type slot struct {
	scope schema.Scope
	slot  int
}

// A maker makes one fact, or the facts of one derivation, for all things of its
// scope in a zone, or for an area or the job.
type maker struct {
	scope schema.Scope
	gives []schema.FactID
	reads []schema.FactID
	make  func([]*Frame)
}

// each makes facts for one thing after the other.
func each(one func(*Frame)) func([]*Frame) {
	return func(list []*Frame) {
		for _, f := range list {
			one(f)
		}
	}
}

// Derived are the declarations of the facts that the program itself gives, to
// be handed to question.Open beside those of the checks.
func Derived(derivations []result.Derivation) []schema.Declaration {
	var all []schema.Declaration
	for _, f := range layerFacts() {
		all = append(all, f.gives)
	}
	for _, d := range append(builtIn(), derivations...) {
		for _, g := range d.Gives {
			if g.Nature == schema.Derived {
				all = append(all, g)
			}
		}
	}
	return all
}

// NewPlan puts questions, tallies and derivations in order; an unknown name or
// a cycle is an error that prints the chain. A derivation that gives an asked
// fact supplies it where nobody has answered.
func NewPlan(c *question.Catalogue, derivations []result.Derivation) (*Plan, error) {
	p := &Plan{catalogue: c, schema: c.Schema()}
	for i := range p.schema.Len() {
		s := p.schema.Decl(schema.FactID(i)).Scope
		p.slots = append(p.slots, slot{s, p.sizes[s]})
		p.sizes[s]++
	}
	for _, list := range schema.ListScopes {
		p.lists[list], _ = p.schema.Lookup(assess.CompleteField(list))
	}
	makers, err := p.makers(append(builtIn(), derivations...))
	if err != nil {
		return nil, err
	}
	p.order, err = p.sort(makers)
	return p, err
}

func (p *Plan) makers(derivations []result.Derivation) ([]maker, error) {
	var all []maker
	for _, f := range layerFacts() {
		m, err := p.listFact(&f)
		if err != nil {
			return nil, err
		}
		all = append(all, m)
	}
	supplies := map[schema.FactID]*result.Derivation{}
	for i := range derivations {
		d := &derivations[i]
		m, asked, err := p.derivation(d)
		if err != nil {
			return nil, err
		}
		for _, f := range asked {
			supplies[f] = d
		}
		if len(asked) == 0 {
			all = append(all, m)
		}
	}
	for i := range p.catalogue.Questions {
		m, err := p.question(&p.catalogue.Questions[i], supplies[schema.FactID(i)])
		if err != nil {
			return nil, err
		}
		all = append(all, m)
	}
	for i := range p.catalogue.Tallies {
		all = append(all, p.tally(&p.catalogue.Tallies[i]))
	}
	for i := range all {
		if all[i].scope.Listed() {
			all[i].reads = append(all[i].reads, p.lists[all[i].scope])
		}
	}
	return all, nil
}

func (p *Plan) derivation(d *result.Derivation) (m maker, asked []schema.FactID, err error) {
	m = maker{scope: d.Scope}
	if m.reads, err = p.ids(d.ID, d.Reads); err != nil {
		return m, nil, err
	}
	for _, g := range d.Gives {
		id, ok := p.schema.Lookup(g.ID)
		if !ok {
			return m, nil, fmt.Errorf("%s gives %s, which is not declared", d.ID, g.ID)
		}
		m.gives = append(m.gives, id)
		if p.catalogue.Question(id) != nil {
			asked = append(asked, id)
		}
	}
	m.make = each(func(f *Frame) {
		made, check := d.Make(thing{f})
		for i, id := range m.gives {
			f.put(id, made[i])
		}
		if check != nil {
			f.floor.addCheck(f, check)
		}
	})
	return m, asked, nil
}

func (p *Plan) listFact(f *listFact) (maker, error) {
	reads, err := p.ids(f.gives.ID, f.reads)
	id, ok := p.schema.Lookup(f.gives.ID)
	if err == nil && !ok {
		err = fmt.Errorf("%s is made, and not declared", f.gives.ID)
	}
	return maker{scope: f.gives.Scope, gives: []schema.FactID{id}, reads: reads,
		make: func(list []*Frame) { f.make(list, id) }}, err
}

func (p *Plan) ids(who string, names []string) ([]schema.FactID, error) {
	out := make([]schema.FactID, len(names))
	for i, n := range names {
		id, ok := p.schema.Lookup(n)
		if !ok {
			return nil, fmt.Errorf("%s reads %s, which is not declared", who, n)
		}
		out[i] = id
	}
	return out, nil
}

// sort orders makers so that each stands after what it reads.
func (p *Plan) sort(all []maker) ([]maker, error) {
	by := make([]int, p.schema.Len())
	for i := range by {
		by[i] = -1
	}
	for i, m := range all {
		for _, g := range m.gives {
			by[g] = i
		}
	}
	var order []maker
	const (
		new = iota
		open
		done
	)
	state := make([]int, len(all))
	var chain []string
	var visit func(i int) error
	visit = func(i int) error {
		switch state[i] {
		case done:
			return nil
		case open:
			round := append(chain[slices.Index(chain, p.name(all[i])):], p.name(all[i]))
			return fmt.Errorf("facts go round in a circle: %s", strings.Join(round, " reads "))
		}
		state[i] = open
		chain = append(chain, p.name(all[i]))
		for _, r := range all[i].reads {
			if by[r] < 0 {
				return fmt.Errorf("nothing makes the fact %s", p.schema.Decl(r).ID)
			}
			if by[r] == i {
				continue
			}
			if err := visit(by[r]); err != nil {
				return err
			}
		}
		chain = chain[:len(chain)-1]
		state[i] = done
		order = append(order, all[i])
		return nil
	}
	for i := range all {
		if err := visit(i); err != nil {
			return nil, err
		}
	}
	return order, nil
}

func (p *Plan) name(m maker) string { return p.schema.Decl(m.gives[0]).ID }

// reads lists what conditions name, nil ones left out.
func reads(conditions ...*condition.Condition) []schema.FactID {
	var all []schema.FactID
	for _, c := range conditions {
		if c != nil {
			all = append(all, c.Reads()...)
		}
	}
	return all
}
