package buildup

import (
	"strings"

	"underfoot/assess/figure"
	"underfoot/assess/formula"
	"underfoot/assess/logic"
	"underfoot/assess/message"
	"underfoot/assess/quantity"
	"underfoot/assess/result"
	"underfoot/assess/schema"
)

// IsAssembly gives path.is_base: whether tile can be laid on the path.
func IsAssembly() result.Derivation {
	return result.Derivation{ID: "path.is_base", Scope: schema.ScopePath,
		Gives: []schema.Declaration{schema.DerivedYesNo("path.is_base", schema.ScopePath)},
		Make: func(path result.Thing) ([]schema.Fact, *result.Check) {
			f := schema.Fact{Presence: logic.Proven, Set: schema.SetNo}
			if id, ok := result.ParsePath(path.ID()); ok && id.IsAssembly() {
				f.Set = schema.SetYes
			}
			return []schema.Fact{f}, nil
		}}
}

// Weight gives path.added_weight in psf: tile, mortar and base, each with its
// heaviest usual product.
//
//	weight = sum of the layers; of tile, thickness x weight per inch
//
// The check beside it compares it with weight_unquestioned on a wood floor: a
// greater weight is not too much, but open until somebody has added it up.
func Weight(t *figure.Table) result.Derivation {
	return result.Derivation{ID: "path.added_weight", Scope: schema.ScopePath,
		Reads: []string{substrate.ID, tileKind.ID, tileSetting.ID, "tile.thickness"},
		Gives: []schema.Declaration{schema.DerivedQuantity("path.added_weight", schema.ScopePath, quantity.Load, quantity.AtLeast(0))},
		Make: func(path result.Thing) ([]schema.Fact, *result.Check) {
			all, lacks := layers(t, path)
			if len(all) == 0 {
				return []schema.Fact{schema.Absent}, nil
			}
			if lacks {
				return []schema.Fact{{Presence: logic.Proven, Set: schema.Set{Range: quantity.Everything}}}, nil
			}
			work := sum("weight", message.New("buildup/title.weight"), "psf", quantity.Load, all, func(l layer) measure { return measure{l.heaviest, l.mass} })
			fact := settled(work.Result(), buildDeps(path, tileKind.ID, tileSetting.ID, "tile.thickness"))
			return []schema.Fact{fact}, weightCheck(t, path, work, fact, all)
		}}
}

func weightCheck(t *figure.Table, path result.Thing, work *formula.Sheet, fact schema.Fact, all []layer) *result.Check {
	limit, ok := t.Figure("weight_unquestioned")
	if !ok || path.Fact(substrate.ID).Among(substrate.Mask("joists", "beam-and-deck")).Truth != logic.Yes {
		return nil
	}
	c := &result.Check{ID: "path.added_weight", Title: message.New("buildup/title.weight"), Outcome: result.CheckOpen, Value: fact.Set.Range,
		Limit: quantity.Point(limit.Value), Dimension: quantity.Load, Note: message.New("buildup/note.weight"), Work: work, Missing: path.Named(fact.Deps),
		Sources: append(sources(all, func(l layer) figure.Source { return l.mass }), limit.Source)}
	switch {
	case c.Value.Hi <= limit.Value:
		c.Outcome = result.CheckHolds
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
func settled(r quantity.Range, deps logic.Deps) schema.Fact {
	if r.IsPoint() {
		deps = nil
	}
	return schema.Fact{Presence: logic.Proven, Set: schema.Set{Range: r}, Deps: deps}
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
