package buildup

import (
	"strings"

	"underfoot/assess"
	"underfoot/assess/figure"
	"underfoot/assess/formula"
	"underfoot/assess/message"
	"underfoot/assess/quantity"
)

// Base gives path.is_base: whether tile can be laid on the path.
func Base() assess.Derivation {
	return assess.Derivation{ID: "path.is_base", Scope: assess.ScopePath,
		Gives: []assess.Declaration{assess.DerivedYesNo("path.is_base", assess.ScopePath)},
		Make: func(path assess.Thing) ([]assess.Fact, *assess.Check) {
			f := assess.Fact{Presence: assess.Proven, Set: assess.SetNo}
			if id, ok := assess.ParsePath(path.ID()); ok && id.IsBase() {
				f.Set = assess.SetYes
			}
			return []assess.Fact{f}, nil
		}}
}

// Weight gives path.added_weight in psf: tile, mortar and base, each with its
// heaviest usual product.
//
//	weight = sum of the layers; of tile, thickness x weight per inch
//
// The check beside it compares it with weight_unquestioned on a wood floor: a
// greater weight is not too much, but open until somebody has added it up.
func Weight(t *figure.Table) assess.Derivation {
	return assess.Derivation{ID: "path.added_weight", Scope: assess.ScopePath,
		Reads: []string{base.ID, tileKind.ID, tileSetting.ID, "tile.thickness"},
		Gives: []assess.Declaration{assess.DerivedQuantity("path.added_weight", assess.ScopePath, quantity.Load, quantity.AtLeast(0))},
		Make: func(path assess.Thing) ([]assess.Fact, *assess.Check) {
			all, lacks := layers(t, path)
			if len(all) == 0 {
				return []assess.Fact{assess.Absent}, nil
			}
			if lacks {
				return []assess.Fact{{Presence: assess.Proven, Set: assess.Set{Range: quantity.Everything}}}, nil
			}
			work := sum("weight", message.New("buildup/title.weight"), "psf", quantity.Load, all, func(l layer) measure { return measure{l.heaviest, l.mass} })
			fact := settled(work.Result(), buildDeps(path, tileKind.ID, tileSetting.ID, "tile.thickness"))
			return []assess.Fact{fact}, weightCheck(t, path, work, fact, all)
		}}
}

func weightCheck(t *figure.Table, path assess.Thing, work *formula.Sheet, fact assess.Fact, all []layer) *assess.Check {
	limit, ok := t.Figure("weight_unquestioned")
	if !ok || path.Fact(base.ID).Among(base.Mask("joists", "beam-and-deck")).Truth != assess.Yes {
		return nil
	}
	c := &assess.Check{ID: "path.added_weight", Title: message.New("buildup/title.weight"), Outcome: assess.CheckOpen, Value: fact.Set.Range,
		Limit: quantity.Point(limit.Value), Dimension: quantity.Load, Note: message.New("buildup/note.weight"), Work: work, Missing: path.Named(fact.Deps),
		Sources: append(sources(all, func(l layer) figure.Source { return l.mass }), limit.Source)}
	switch {
	case c.Value.Hi <= limit.Value:
		c.Outcome = assess.CheckHolds
	case c.Value.Lo > limit.Value:
		c.Note = message.New("buildup/note.heavy")
	}
	c.Margin = quantity.Point(1).Sub(c.Value.Div(c.Limit))
	return c
}

// sum is a sheet that adds up one quantity of the layers.
func sum(name string, title message.Message, unit string, dim quantity.Dimension, all []layer, of func(layer) measure) *formula.Sheet {
	s := &formula.Sheet{Title: title}
	var names []string
	for _, l := range all {
		names = append(names, l.line)
		m := of(l)
		s.Input(l.line, l.name, unit, dim, m.Range, message.Verbatim(m.source.Title))
	}
	s.Let(name, title, unit, dim, strings.Join(names, " + "))
	return s
}

// settled is a fact that is there; a point depends on nothing.
func settled(r quantity.Range, deps assess.Deps) assess.Fact {
	if r.IsPoint() {
		deps = nil
	}
	return assess.Fact{Presence: assess.Proven, Set: assess.Set{Range: r}, Deps: deps}
}

func sources(all []layer, of func(layer) figure.Source) []figure.Source {
	var list []figure.Source
	for _, l := range all {
		if s := of(l); s.Title != "" {
			list = append(list, s)
		}
	}
	return list
}
