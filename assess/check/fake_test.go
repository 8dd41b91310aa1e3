package check

import (
	"maps"
	"os"
	"path/filepath"
	"slices"
	"sync"
	"testing"

	"github.com/pelletier/go-toml/v2"

	"underfoot/assess"
	"underfoot/assess/figure"
	"underfoot/assess/logic"
	"underfoot/assess/quantity"
	"underfoot/assess/result"
	"underfoot/assess/schema"
)

// A floor is a zone with its lists and one path, filled by hand.
type floor struct {
	index  schema.Index
	decls  map[string]*schema.Declaration
	region string
	zone   *thing
	path   *thing
	checks map[string]*result.Check
}

// A thing is a fake of one thing of the floor. A fact nobody has set is full,
// there, and depends on its own address.
type thing struct {
	floor *floor
	outer *thing
	id    string
	topic string
	facts map[string]schema.Fact
	lists map[schema.Scope][]*thing
	rest  map[schema.Scope]*thing
	reads []string // of the derivation that looks, nil while nobody does
}

func newFloor(_ testing.TB, region string) *floor {
	f := &floor{decls: maps.Clone(catalogue()), region: region, checks: map[string]*result.Check{}}
	f.zone = f.thing(nil, "main", "")
	f.path = f.thing(f.zone, "backer-board", "path")
	f.set("joist.live_load", quantity.Point(40)).set("joist.dead_load", quantity.Point(10))
	f.words("joist.continuity", "one-span").words("tile.setting", "thin-bed")
	return f
}

func (f *floor) thing(outer *thing, id, topic string) *thing {
	return &thing{floor: f, outer: outer, id: id, topic: topic, facts: map[string]schema.Fact{},
		lists: map[schema.Scope][]*thing{}, rest: map[schema.Scope]*thing{}}
}

func (f *floor) set(name string, r quantity.Range) *floor { f.zone.set(name, r); return f }

func (f *floor) words(name string, words ...string) *floor { f.zone.words(name, words...); return f }

func (t *thing) set(name string, r quantity.Range) *thing {
	fact := schema.Fact{Presence: logic.Proven, Set: schema.Set{Range: r}}
	if !r.IsPoint() {
		fact.Deps = t.own(name)
	}
	t.facts[name] = fact
	return t
}

func (t *thing) words(name string, words ...string) *thing {
	fact := schema.Fact{Presence: logic.Proven, Set: schema.Set{Mask: t.floor.decl(name).Mask(words...)}}
	if len(words) > 1 {
		fact.Deps = t.own(name)
	}
	t.facts[name] = fact
	return t
}

func (t *thing) text(name, text string) *thing {
	t.facts[name] = schema.Fact{Presence: logic.Proven, Set: schema.Set{Text: text}}
	return t
}

// item adds a named thing to a list, and close says that there are no more.
func (f *floor) item(list schema.Scope, id string) *thing {
	it := f.thing(f.zone, id, list.String())
	f.zone.lists[list] = append(f.zone.lists[list], it)
	return it
}

func (f *floor) open(list schema.Scope) *floor {
	f.zone.rest[list] = f.thing(f.zone, "rest", list.String())
	return f
}

func (f *floor) decl(name string) *schema.Declaration {
	d, ok := f.decls[name]
	if !ok {
		panic("no such fact: " + name)
	}
	return d
}

func (t *thing) own(name string) logic.Deps {
	a := schema.Address{Topic: t.topic, Item: t.id, Field: name}
	if t.id == "rest" {
		a.Field = "complete"
	}
	return logic.DependOn(t.floor.index.Ref(a))
}

func (t *thing) Fact(name string) schema.Fact {
	if t.reads != nil && !slices.Contains(t.reads, name) {
		panic("a derivation reads " + name + " and does not say so")
	}
	for s := t; s != nil; s = s.outer {
		if f, ok := s.facts[name]; ok {
			return f
		}
	}
	d := t.floor.decl(name)
	return schema.Fact{Presence: logic.Proven, Set: d.Full(), Deps: t.own(name)}
}

func (t *thing) top() *thing {
	for t.outer != nil {
		t = t.outer
	}
	return t
}

func (t *thing) Items(list schema.Scope) []result.Thing {
	var all []result.Thing
	for _, it := range t.top().lists[list] {
		it.reads = t.reads
		all = append(all, it)
	}
	return all
}

func (t *thing) Rest(list schema.Scope) result.Thing {
	if r := t.top().rest[list]; r != nil {
		r.reads = t.reads
		return r
	}
	return nil
}

func (t *thing) ID() string { return t.id }

func (t *thing) Visited() assess.Day { return "" }

func (t *thing) Named(d logic.Deps) []schema.Address { return t.floor.index.Addresses(d) }

// run makes every computed fact, zone first, and gives those of the path.
func (f *floor) run() *thing { return f.runWith(figure.For(f.region, quantity.US)) }

func (f *floor) runWith(t *figure.Table) *thing {
	for _, d := range All(t) {
		on := f.zone
		if d.Scope == schema.ScopePath {
			on = f.path
		}
		on.reads = append([]string{""}, d.Reads...)
		facts, c := d.Make(on)
		on.reads = nil
		for i, g := range d.Gives {
			on.facts[g.ID], f.decls[g.ID] = facts[i], &g
		}
		if c != nil {
			f.checks[c.ID] = c
		}
	}
	return f.path
}

// catalogue reads what the checks need of the question catalogue.
var catalogue = sync.OnceValue(func() map[string]*schema.Declaration {
	files, err := filepath.Glob("../question/catalogue/*.toml")
	if err != nil || len(files) == 0 {
		panic("no catalogue")
	}
	decls := map[string]*schema.Declaration{
		"layer.stays": {ID: "layer.stays", Kind: schema.KindYesNo, Choices: schema.YesNoChoices},
	}
	kinds := map[string]schema.Kind{"yes-no": schema.KindYesNo, "choice": schema.KindChoice, "quantity": schema.KindQuantity, "text": schema.KindText}
	for _, file := range files {
		data, err := os.ReadFile(file)
		if err != nil {
			panic(err)
		}
		var doc struct {
			Fact []struct {
				ID, Kind string
				Choices  []string
			}
		}
		if err := toml.Unmarshal(data, &doc); err != nil {
			panic(err)
		}
		for _, q := range doc.Fact {
			d := &schema.Declaration{ID: q.ID, Kind: kinds[q.Kind], Choices: q.Choices}
			if d.Kind == schema.KindYesNo {
				d.Choices = schema.YesNoChoices
			}
			decls[q.ID] = d
		}
	}
	return decls
})
