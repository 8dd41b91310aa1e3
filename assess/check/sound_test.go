package check

import (
	"fmt"
	"maps"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"underfoot/assess/logic"
	"underfoot/assess/quantity"
	"underfoot/assess/schema"
)

// A blur is one answer of a floor: what is true, and what has been said of it.
type blur struct {
	item    schema.Scope // of a listed thing
	id      string       // empty for the zone
	name    string
	exact   quantity.Range
	said    quantity.Range
	word    string   // of a choice
	choices []string // said to be possible
}

// A drawn floor is its answers and whether its lists are finished.
type drawn struct {
	region string
	blurs  []blur
	lists  []schema.Scope // drawn as not finished
}

// numbers are the quantities that the checks read, with the ends between which
// they are drawn: past every limit on both sides.
var numbers = map[string]quantity.Range{
	"joist.span": {Lo: 60, Hi: 340}, "joist.spacing": {Lo: 10, Hi: 30}, "joist.depth": {Lo: 5, Hi: 12}, "joist.width": {Lo: 1, Hi: 3},
	"joist.live_load": {Lo: 20, Hi: 60}, "joist.dead_load": {Lo: 5, Hi: 30}, "joist.known_ratio": {Lo: 200, Hi: 900},
	"tile.long_edge": {Lo: 10, Hi: 20}, "tile.thickness": {Lo: 0.2, Hi: 1},
}

var choiceFacts = []string{"zone.base", "joist.member", "joist.figure_from", "joist.continuity", "joist.species", "joist.grade", "joist.cut", "joist.notched",
	"joist.insects", "joist.short_bearing", "joist.loose_posts", "joist.support_removed", "water.rot", "tile.kind", "tile.setting"}

// likely are the words that leave something to compute; they are drawn more often.
var likely = map[string]string{"zone.base": "joists", "joist.member": "sawn-lumber", "joist.figure_from": "own-sum", "joist.cut": "no",
	"joist.notched": "none", "joist.insects": "no", "joist.short_bearing": "no", "joist.loose_posts": "no", "joist.support_removed": "no", "water.rot": "no"}

func drawNumber(t *rapid.T, b blur, ends quantity.Range) blur {
	at := rapid.Float64Range(ends.Lo, ends.Hi).Draw(t, b.name)
	b.exact, b.said = quantity.Point(at), quantity.Point(at)
	switch rapid.IntRange(0, 3).Draw(t, b.name+" said") {
	case 0:
		b.said = quantity.Everything
	case 1:
		wide := (ends.Hi - ends.Lo) / 4
		b.said = quantity.Range{Lo: at - rapid.Float64Range(0, wide).Draw(t, "less"), Hi: at + rapid.Float64Range(0, wide).Draw(t, "more")}
	}
	return b
}

func drawWord(t *rapid.T, f *floor, b blur) blur {
	all := f.decl(b.name).Choices
	b.word = likely[b.name]
	if b.word == "" || rapid.IntRange(0, 11).Draw(t, b.name+" odd") == 0 {
		b.word = rapid.SampledFrom(all).Draw(t, b.name)
	}
	switch b.choices = []string{b.word}; rapid.IntRange(0, 4).Draw(t, b.name+" said") {
	case 0:
		b.choices = all
	case 1:
		b.choices = append(b.choices, rapid.SampledFrom(all).Draw(t, b.name+" or"))
	}
	return b
}

// draw makes a floor whose answers do not contradict each other.
func draw(t *rapid.T, f *floor) drawn {
	d := drawn{region: rapid.SampledFrom([]string{"us", "uk"}).Draw(t, "region")}
	for _, name := range slices.Sorted(maps.Keys(numbers)) {
		d.blurs = append(d.blurs, drawNumber(t, blur{name: name}, numbers[name]))
	}
	for _, name := range choiceFacts {
		d.blurs = append(d.blurs, drawWord(t, f, blur{name: name}))
		if b := &d.blurs[len(d.blurs)-1]; name == "joist.grade" && d.region == "us" && b.word[0] == 'c' {
			*b = blur{name: name, word: "no2", choices: []string{"no2"}} // strength classes are not sold there
		}
	}
	for i := range rapid.IntRange(0, 3).Draw(t, "deck layers") {
		at := blur{item: schema.ScopeDeck, id: fmt.Sprint("d", i), name: "deck.kind"}
		d.blurs = append(d.blurs, drawWord(t, f, at))
		at.name = "deck.thickness"
		d.blurs = append(d.blurs, drawNumber(t, at, quantity.Range{Lo: 0.3, Hi: 1.2}))
	}
	for i := range rapid.IntRange(0, 2).Draw(t, "edges") {
		at := blur{item: schema.ScopeEdge, id: fmt.Sprint("e", i), name: "edge.rise_allowed"}
		d.blurs = append(d.blurs, drawNumber(t, at, quantity.Range{Lo: 0, Hi: 2}))
	}
	for i := range rapid.IntRange(0, 2).Draw(t, "layers") {
		at := blur{item: schema.ScopeLayer, id: fmt.Sprint("l", i), name: "layer.stays"}
		d.blurs = append(d.blurs, drawWord(t, f, at))
		at.name = "layer.thickness"
		d.blurs = append(d.blurs, drawNumber(t, at, quantity.Range{Lo: 0.1, Hi: 1}))
	}
	for _, list := range []schema.Scope{schema.ScopeDeck, schema.ScopeEdge, schema.ScopeLayer} {
		if rapid.Bool().Draw(t, list.String()+" not finished") {
			d.lists = append(d.lists, list)
		}
	}
	return d
}

// build fills a floor with the answers; those that exact names are the exact ones.
func build(t testing.TB, d drawn, exact func(b blur) bool, closed func(schema.Scope) bool) *floor {
	f := newFloor(t, d.region)
	items := map[string]*thing{}
	for _, b := range d.blurs {
		on := f.zone
		if b.id != "" {
			if items[b.id] == nil {
				items[b.id] = f.item(b.item, b.id)
			}
			on = items[b.id]
		}
		switch {
		case b.word != "" && exact(b):
			on.words(b.name, b.word)
		case b.word != "":
			on.choice(b.name, b.choices)
		case exact(b):
			on.set(b.name, b.exact)
		default:
			on.set(b.name, b.said)
		}
	}
	for _, list := range d.lists {
		if !closed(list) {
			f.open(list)
		}
	}
	f.run()
	return f
}

// choice sets several words, each of them once.
func (t *thing) choice(name string, words []string) {
	all := slices.Clone(words)
	slices.Sort(all)
	t.words(name, slices.Compact(all)...)
}

func (f *floor) fact(id string) schema.Fact {
	if strings.HasPrefix(id, "path.") {
		return f.path.facts[id]
	}
	return f.zone.facts[id]
}

var given = []string{"joist.ratio_live", "joist.own_ratio", "joist.ratio_total", "joist.limit", "panel.short", "panel.short_for_mat", "flat.limit",
	"path.added_weight", "path.height_left", "path.height_short", "path.ratio_total"}

// TestMoreAnswersNeverContradict: what is settled stays settled, and what is
// ranged stays within, whatever subset of the answers becomes exact.
func TestMoreAnswersNeverContradict(t *testing.T) {
	shape := newFloor(t, "us")
	rapid.Check(t, func(rt *rapid.T) {
		d := draw(rt, shape)
		some := map[string]bool{}
		for _, b := range d.blurs {
			some[b.id+b.name] = rapid.Bool().Draw(rt, "becomes exact")
		}
		shut := rapid.Bool().Draw(rt, "lists are finished")
		wide := build(t, d, func(blur) bool { return false }, func(schema.Scope) bool { return false })
		narrow := build(t, d, func(b blur) bool { return some[b.id+b.name] }, func(schema.Scope) bool { return shut })
		for _, id := range given {
			w, n, kind := wide.fact(id), narrow.fact(id), wide.decl(id).Kind
			if w.Presence.Truth != logic.Open && n.Presence.Truth != w.Presence.Truth {
				rt.Fatalf("%s: presence %v becomes %v", id, w.Presence.Truth, n.Presence.Truth)
			}
			if n.Presence.Truth != logic.No && w.Presence.Truth != logic.No && !n.Set.Within(w.Set, kind) && n.Deps != nil {
				rt.Fatalf("%s: %v becomes %v", id, w.Set, n.Set)
			}
			if n.Presence.Truth == logic.Yes && n.Deps == nil && n.Set.Settled(kind) && !n.Set.Within(w.Set, kind) {
				rt.Fatalf("%s: %v settles as %v", id, w.Set, n.Set)
			}
		}
	})
}

// TestNamedAnswersSettle: once the answers that a fact names are exact, it is
// what it would be with every answer exact.
func TestNamedAnswersSettle(t *testing.T) {
	shape := newFloor(t, "us")
	rapid.Check(t, func(rt *rapid.T) {
		d := draw(rt, shape)
		never := func(blur) bool { return false }
		wide := build(t, d, never, func(schema.Scope) bool { return false })
		all := build(t, d, func(blur) bool { return true }, func(schema.Scope) bool { return true })
		for _, id := range given {
			f := wide.fact(id)
			named := map[string]bool{}
			for _, a := range wide.zone.Named(f.Deps.Union(f.Presence.Deps)) {
				named[a.Topic+"/"+a.Item+"/"+a.Field] = true
			}
			told := build(t, d, func(b blur) bool {
				if b.id == "" {
					return named["/main/"+b.name]
				}
				return named[b.item.String()+"/"+b.id+"/"+b.name]
			}, func(list schema.Scope) bool { return named[list.String()+"/rest/complete"] })
			got, want := told.fact(id), all.fact(id)
			if got.Presence.Truth != want.Presence.Truth || got.Set != want.Set {
				rt.Fatalf("%s: %v %v with what it names, %v %v with everything; it names %v", id, got.Presence.Truth, got.Set,
					want.Presence.Truth, want.Set, slices.Sorted(maps.Keys(named)))
			}
		}
	})
}
