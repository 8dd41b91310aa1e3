package facts

import (
	"underfoot/assess"
	"underfoot/assess/logic"
	"underfoot/assess/quantity"
	"underfoot/assess/result"
	"underfoot/assess/schema"
)

// RestID is the id of the stand-in for all items of a list nobody has named.
const RestID = "rest"

// A Frame is the facts of one thing: the job, an area, a zone, a listed item,
// the rest of a list, or a path. It gives the facts of what encloses it too.
type Frame struct {
	floor   *Floor
	parent  *Frame
	scope   schema.Scope
	id      string
	where   schema.Address // area and zone
	facts   []schema.Fact  // by slot
	answers assess.Answers
	assumed map[string]schema.Set
	rest    logic.Deps // of a rest frame: what would close the list
	zone    *zoneLists // of a zone frame
}

// zoneLists are the things below a zone.
type zoneLists struct {
	items [schema.ScopePath][]*Frame
	rest  [schema.ScopePath]*Frame // nil where the list is closed
	paths []*Frame
}

// Fact is a fact of the thing or of what encloses it.
func (f *Frame) Fact(id schema.FactID) schema.Fact {
	s := f.floor.plan.slots[id]
	for f.scope != s.scope {
		f = f.parent
	}
	return f.facts[s.slot]
}

// Scope is the kind of thing.
func (f *Frame) Scope() schema.Scope { return f.scope }

// ID is the item's id, the path's word, or the zone's or area's id.
func (f *Frame) ID() string { return f.id }

// IsRest reports whether the frame stands for items nobody has named.
func (f *Frame) IsRest() bool { return f.rest != nil }

// RestDeps are the answers that would close the list of a rest.
func (f *Frame) RestDeps() logic.Deps { return f.rest }

// Above is the thing of an outer scope that encloses this one.
func (f *Frame) Above(scope schema.Scope) *Frame {
	for f.scope != scope {
		f = f.parent
	}
	return f
}

// Number is what a quantity fact may be, by name.
func (f *Frame) Number(name string) quantity.Range { return f.named(name).Set.Range }

// Words are the words that a choice fact may still be, by name.
func (f *Frame) Words(name string) []string {
	return f.named(name).Set.Words(f.floor.plan.schema.Find(name))
}

// HasChoice reports whether a fact is proven to be one of the words. A word that
// is none of its choices panics.
func (f *Frame) HasChoice(name string, words ...string) bool {
	return f.named(name).Among(f.floor.plan.schema.Find(name).Mask(words...)).Truth == logic.Yes
}

// Stays is whether a layer stays on the floor.
func (f *Frame) Stays() logic.Outcome { return f.named("layer.stays").IsYes() }

// Applies reports whether a question is known to apply, asked from a thing of
// the same zone: a closed gate before it is a question of its own.
func (f *Frame) Applies(a schema.Address) bool {
	id, ok := f.floor.plan.schema.Lookup(a.Short())
	if !ok {
		return false
	}
	d := f.floor.plan.schema.Decl(id)
	from := f
	if z := f.Zone(); z != nil {
		from = z
	}
	for _, t := range from.All(d.Scope) {
		if (a.Item == "" || t.id == a.Item) && t.Fact(id).Presence.Truth == logic.Yes {
			return true
		}
	}
	return false
}

// Zone is the enclosing zone; nil for an area or the job.
func (f *Frame) Zone() *Frame {
	for f != nil && f.scope != schema.ScopeZone {
		f = f.parent
	}
	return f
}

// Things are the named items of a list of the zone and, last, the rest where
// the list is open; for ScopePath the zone's base paths; for ScopeZone itself.
func (f *Frame) Things(scope schema.Scope) []*Frame {
	switch {
	case scope == f.scope:
		return []*Frame{f}
	case scope == schema.ScopePath:
		return f.zone.paths
	case f.zone.rest[scope] != nil:
		items := f.zone.items[scope]
		return append(items[:len(items):len(items)], f.zone.rest[scope])
	}
	return f.zone.items[scope]
}

// All are the things of a scope that enclose the zone or stand in it.
func (f *Frame) All(scope schema.Scope) []*Frame {
	if scope < f.scope {
		return []*Frame{f.Above(scope)}
	}
	return f.Things(scope)
}

// Address is where the thing's answer to a question stands.
func (f *Frame) Address(d *schema.Declaration) schema.Address {
	topic, field := split(d.ID)
	a := schema.Address{Topic: topic, Field: field}
	if f.scope >= schema.ScopeArea {
		a.Area = f.where.Area
	}
	if f.scope >= schema.ScopeZone {
		a.Zone = f.where.Zone
	}
	if f.scope.Listed() {
		a.Item = f.id
	}
	return a
}

// Named turns dependencies into addresses.
func (f *Frame) Named(d logic.Deps) []schema.Address { return f.floor.Index.Addresses(d) }

// ref is the number of the address of the thing's own answer.
func (f *Frame) ref(d *schema.Declaration) logic.Ref { return f.floor.Index.Ref(f.Address(d)) }

func split(id string) (topic, field string) {
	for i := range id {
		if id[i] == '.' {
			return id[:i], id[i+1:]
		}
	}
	return id, ""
}

// named is a fact by name; a name that there is not is a programming error and panics.
func (f *Frame) named(name string) schema.Fact {
	id, ok := f.floor.plan.schema.Lookup(name)
	if !ok {
		panic("facts: a derivation reads an unknown fact: " + name)
	}
	return f.Fact(id)
}

// A thing is a frame as a derivation sees it: by name, lists beside it.
type thing struct{ *Frame }

// Thing is the frame as a derivation sees it.
func (f *Frame) Thing() result.Thing { return thing{f} }

func (t thing) Fact(name string) schema.Fact { return t.named(name) }

func (t thing) Visited() assess.Day { return t.floor.Visited }

func (t thing) Items(list schema.Scope) []result.Thing {
	frames := t.Zone().zone.items[list]
	out := make([]result.Thing, len(frames))
	for i, f := range frames {
		out[i] = thing{f}
	}
	return out
}

func (t thing) Rest(list schema.Scope) result.Thing {
	if r := t.Zone().zone.rest[list]; r != nil {
		return thing{r}
	}
	return nil
}
