package buildup

import (
	"math"

	"underfoot/assess/figure"
	"underfoot/assess/logic"
	"underfoot/assess/quantity"
	"underfoot/assess/result"
	"underfoot/assess/schema"
)

// The choice facts that the checks read, with their words in the order of the
// question catalogue; a test holds the two together.
var (
	substrate = schema.Declaration{ID: "zone.base", Choices: []string{"joists", "beam-and-deck", "slab-on-ground", "suspended-slab",
		"precast-plank", "sleepers-on-slab", "brick-or-flagstone"}}
	tileKind = schema.Declaration{ID: "tile.kind", Choices: []string{"ceramic", "porcelain", "mosaic", "quarry-tile", "terracotta",
		"glass-tile", "natural-stone", "porcelain-panel"}}
	tileSetting = schema.Declaration{ID: "tile.setting", Choices: []string{"thin-bed", "mortar-bed"}}
)

// overKinds is the range of a figure over the kinds of tile that are possible.
// A kind without a row among the weights lacks its figures.
func (b *book) overKinds(kinds uint64, id func(figure.Weight) string) measure {
	m := measure{Range: quantity.Range{Lo: math.Inf(1), Hi: math.Inf(-1)}}
	for _, kind := range (schema.Set{Mask: kinds}).Words(&tileKind) {
		w, _ := figure.WeightOf(kind)
		f := b.figure(id(w))
		m = measure{m.Hull(quantity.Point(f.Value)), f.Source}
	}
	return m
}

// tile is the layer of tile. A thickness that nobody has said is everything
// above zero where something is decided, and the usual one of the kind where
// a reader looks.
func (b *book) tile(path result.Thing) layer {
	kinds := path.Fact(tileKind.ID).Set.Mask
	heavy := b.overKinds(kinds, func(w figure.Weight) string { return w.Heaviest })
	light := b.overKinds(kinds, func(w figure.Weight) string { return w.Lightest })
	said := path.Fact("tile.thickness").Set.Range.Meet(quantity.AtLeast(0))
	l := layer{name: named("tile"), line: "tile", thickness: said, thinnest: said, heaviest: said.Mul(heavy.Range), mass: heavy.source}
	if !said.Bounded() {
		usual := b.overKinds(kinds, func(w figure.Weight) string { return w.Thickness })
		l.name, l.thickness, l.size = named("usual_tile"), usual.Range, usual.source
	}
	l.weight = l.thickness.Mul(light.Hull(heavy.Range))
	return l
}

// bed is the mortar under the tile: thin, or a mortar bed.
func (b *book) bed(path result.Thing) layer {
	set := path.Fact(tileSetting.ID).Set.Mask
	switch {
	case set == tileSetting.Mask("thin-bed"):
		return b.thinBed()
	case set == tileSetting.Mask("mortar-bed"):
		return b.mortarBed()
	}
	return b.thinBed().either(b.mortarBed(), named("either_bed"))
}

// layers are what a path adds, from the top. lacks says that a figure is missing.
func layers(t *figure.Table, path result.Thing) (all []layer, lacks bool) {
	b := &book{table: t}
	id, ok := result.ParsePath(path.ID())
	if !ok || !id.IsAssembly() {
		return nil, false
	}
	all = append([]layer{b.tile(path), b.bed(path)}, b.onBase(id)...)
	return all, b.lacks
}

// buildDeps are the answers that would narrow height or weight of a build.
func buildDeps(path result.Thing, names ...string) (deps logic.Deps) {
	for _, n := range names {
		deps = deps.Union(path.Fact(n).Deps)
	}
	return deps
}

// Of is what a path adds, for a reader: every layer with the usual range of
// its products. A path that is no base adds nothing.
func Of(t *figure.Table, path result.Thing) result.BuildUp {
	id, _ := result.ParsePath(path.ID())
	b := result.BuildUp{Path: id}
	all, _ := layers(t, path)
	for _, l := range all {
		b.Layers = append(b.Layers, result.BuiltLayer{Name: l.name, Thickness: l.thickness, Weight: l.weight, Source: l.source()})
		b.Height, b.Weight = b.Height.Add(l.thickness), b.Weight.Add(l.weight)
	}
	return b
}

// source is where thickness and weight of the layer were read, in one: known
// no better than the less well known of the two.
func (l layer) source() figure.Source {
	if l.size == l.mass || l.size.Title == "" {
		return l.mass
	}
	return figure.Source{Title: "thickness: " + l.size.Title + "; weight: " + l.mass.Title,
		Edition: l.size.Edition + "; " + l.mass.Edition, Known: weaker(l.size, l.mass).Known}
}
