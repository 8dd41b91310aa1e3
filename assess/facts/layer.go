package facts

import (
	"math"

	"underfoot/assess"
	"underfoot/assess/logic"
	"underfoot/assess/quantity"
	"underfoot/assess/schema"
)

// A listFact is a fact that the program itself makes for every layer of a zone
// at once, from the top, the rest of an open list last: what is said of one
// layer rests on those above or below it, and going through the list once keeps
// the time linear in its length.
type listFact struct {
	gives schema.Declaration
	reads []string
	make  func(layers []*Frame, id schema.FactID)
}

// layerFacts are the order of layers, which of them stay, and when they were laid.
func layerFacts() []listFact {
	yesNo := func(id string) schema.Declaration { return always(schema.DerivedYesNo(id, schema.ScopeLayer))[0] }
	number := func(id string, d quantity.Dimension) schema.Declaration {
		return always(schema.DerivedQuantity(id, schema.ScopeLayer, d, quantity.Everything))[0]
	}
	return []listFact{
		{number("layer.place", quantity.Number), nil, layerPlace},
		{neighbor("layer.above"), []string{"layer.kind"}, layerAbove},
		{neighbor("layer.below"), []string{"layer.kind"}, layerBelow},
		{yesNo("layer.stays"), []string{"layer.coming_out"}, layerStays},
		{yesNo("layer.top"), []string{"layer.stays"}, layerTop},
		{number("layer.laid", quantity.Year), []string{"layer.year", "site.year_built"}, layerLaid},
		{yesNo("layer.lab_clear"), []string{"layer.lab_result", "layer.lab_complete"}, layerLabClear},
	}
}

func neighbor(id string) schema.Declaration {
	return schema.Declaration{ID: id, Scope: schema.ScopeLayer, Kind: schema.KindChoice, Like: "layer.kind",
		Choices: []string{"none"}, Nature: schema.Derived, Always: true}
}

// layerPlace counts from the top. What nobody has named lies somewhere below.
func layerPlace(layers []*Frame, id schema.FactID) {
	for i, f := range layers {
		place := quantity.Point(float64(i + 1))
		if f.IsRest() {
			place = quantity.AtLeast(float64(i + 1))
		}
		f.put(id, number(place, f.rest))
	}
}

// layerAbove is the kind of the layer above, or none for the top layer. What
// lies above the rest is one of the named layers or another unnamed one.
func layerAbove(layers []*Frame, id schema.FactID) {
	for i, f := range layers {
		switch {
		case f.IsRest():
			f.put(id, f.anyKind(id, f.rest))
		case i == 0:
			f.put(id, f.noKind(id))
		default:
			f.put(id, layers[i-1].named("layer.kind"))
		}
	}
}

// layerBelow is the kind of the layer below, or none for the lowest one. Below
// the last that is named the rest of an open list may lie.
func layerBelow(layers []*Frame, id schema.FactID) {
	for i, f := range layers {
		last := i+1 == len(layers)
		switch {
		case f.IsRest():
			f.put(id, f.anyKind(id, f.rest))
		case last:
			f.put(id, f.noKind(id))
		case layers[i+1].IsRest():
			f.put(id, f.anyKind(id, layers[i+1].rest))
		default:
			f.put(id, layers[i+1].named("layer.kind"))
		}
	}
}

func (f *Frame) anyKind(id schema.FactID, deps logic.Deps) schema.Fact {
	return schema.Fact{Presence: logic.Proven, Set: f.floor.plan.schema.Decl(id).Full(), Deps: deps}
}

func (f *Frame) noKind(id schema.FactID) schema.Fact {
	return schema.Fact{Presence: logic.Proven, Set: schema.Set{Mask: f.floor.plan.schema.Decl(id).Mask("none")}}
}

// layerStays is no for a layer that is coming out or lies above one that is.
func layerStays(layers []*Frame, id schema.FactID) {
	comes := logic.Refuted
	for i := len(layers) - 1; i >= 0; i-- {
		comes = comes.Or(layers[i].named("layer.coming_out").IsYes())
		layers[i].put(id, yesNo(comes.Not()))
	}
}

// layerTop is yes for the highest layer that stays.
func layerTop(layers []*Frame, id schema.FactID) {
	aboveGoes := logic.Proven
	for _, f := range layers {
		stays := f.Stays()
		f.put(id, yesNo(stays.And(aboveGoes)))
		aboveGoes = aboveGoes.And(stays.Not())
	}
}

// layerLaid is when the layer was laid: the stated year where a paper or a
// marking dates that very layer, else any year from the building to the visit.
func layerLaid(layers []*Frame, id schema.FactID) {
	for _, f := range layers {
		f.put(id, f.laid())
	}
}

func (f *Frame) laid() schema.Fact {
	latest := math.Inf(1)
	if y := f.floor.Visited.Year(); y > 0 {
		latest = float64(y)
	}
	year, built := f.named("layer.year"), f.named("site.year_built")
	if a := f.answers["layer.year"]; a.Basis == assess.Document || a.Basis == assess.Seen {
		r := year.Set.Range
		r.Hi = math.Min(r.Hi, latest)
		return number(r, year.Deps)
	}
	r := quantity.Range{Lo: math.Min(built.Set.Range.Lo, latest), Hi: latest}
	deps := f.own(f.floor.plan.catalogue.Find("layer.year").Decl)
	if f.rest == nil {
		deps = deps.Union(built.Deps)
	}
	if r.IsPoint() {
		deps = nil
	}
	return number(r, deps)
}

// layerLabClear is yes where a laboratory reports nothing found for the layer
// and everything that belongs to it.
func layerLabClear(layers []*Frame, id schema.FactID) {
	for _, f := range layers {
		noneFound := f.floor.plan.schema.Find("layer.lab_result").Mask("none-found")
		found := f.named("layer.lab_result").Among(noneFound)
		f.put(id, yesNo(found.And(f.named("layer.lab_complete").IsYes())))
	}
}
