package facts

import (
	"math"

	"underfoot/assess"
	"underfoot/assess/quantity"
)

// builtIn are the facts that the program itself knows of things: the order of
// layers, which of them stay, when they were laid, and ages from years.
func builtIn() []assess.Derivation {
	return []assess.Derivation{
		layerPlace, layerAbove, layerBelow, layerStays, layerTop, layerLaid, layerLabClear, layerAge, slabAge, woodLayers, woodSheets,
	}
}

// always declares a fact that every thing of its scope has.
func always(d assess.Declaration) []assess.Declaration {
	d.Always = true
	return []assess.Declaration{d}
}

var layerPlace = assess.Derivation{
	ID: "layer.place", Scope: assess.ScopeLayer,
	Gives: always(assess.DerivedQuantity("layer.place", assess.ScopeLayer, quantity.Number, quantity.Everything)),
	Make: func(t assess.Thing) ([]assess.Fact, *assess.Check) {
		items := t.Items(assess.ScopeLayer)
		for i, it := range items {
			if it.ID() == t.ID() {
				return one(number(quantity.Point(float64(i+1)), nil))
			}
		}
		return one(number(quantity.AtLeast(float64(len(items)+1)), restOf(t)))
	},
}

// layerAbove is the kind of the layer above, or none for the top layer. What
// lies above the rest is one of the named layers or another unnamed one.
var layerAbove = assess.Derivation{
	ID: "layer.above", Scope: assess.ScopeLayer, Reads: []string{"layer.kind"}, Gives: neighbour("layer.above"),
	Make: func(t assess.Thing) ([]assess.Fact, *assess.Check) {
		decl := t.(thing).floor.plan.schema.Find("layer.above")
		items := t.Items(assess.ScopeLayer)
		for i, it := range items {
			switch {
			case it.ID() != t.ID():
			case i == 0:
				none, _ := decl.ChoiceBit("none")
				return one(assess.Fact{Presence: assess.Proven, Set: assess.Set{Mask: none}})
			default:
				return one(items[i-1].Fact("layer.kind"))
			}
		}
		return one(assess.Fact{Presence: assess.Proven, Set: decl.Full(), Deps: restOf(t)})
	},
}

func neighbour(id string) []assess.Declaration {
	return []assess.Declaration{{ID: id, Scope: assess.ScopeLayer, Kind: assess.KindChoice, Like: "layer.kind",
		Choices: []string{"none"}, Nature: assess.Derived, Always: true}}
}

// layerBelow is the kind of the layer below, or none for the lowest one. Below
// the last that is named the rest of an open list may lie.
var layerBelow = assess.Derivation{
	ID: "layer.below", Scope: assess.ScopeLayer, Reads: []string{"layer.kind"}, Gives: neighbour("layer.below"),
	Make: func(t assess.Thing) ([]assess.Fact, *assess.Check) {
		decl := t.(thing).floor.plan.schema.Find("layer.below")
		items := t.Items(assess.ScopeLayer)
		for i, it := range items {
			switch {
			case it.ID() != t.ID():
			case i+1 < len(items):
				return one(items[i+1].Fact("layer.kind"))
			case len(rest(t)) == 0:
				none, _ := decl.ChoiceBit("none")
				return one(assess.Fact{Presence: assess.Proven, Set: assess.Set{Mask: none}})
			}
		}
		return one(assess.Fact{Presence: assess.Proven, Set: decl.Full(), Deps: restOf(rest(t)[0])})
	},
}

// layerStays is no for a layer that is coming out or lies above one that is.
var layerStays = assess.Derivation{
	ID: "layer.stays", Scope: assess.ScopeLayer, Reads: []string{"layer.coming_out"},
	Gives: always(assess.DerivedYesNo("layer.stays", assess.ScopeLayer)),
	Make: func(t assess.Thing) ([]assess.Fact, *assess.Check) {
		below := false
		out := assess.Refuted
		for _, it := range append(t.Items(assess.ScopeLayer), rest(t)...) {
			below = below || it.ID() == t.ID()
			if below {
				out = out.Or(it.Fact("layer.coming_out").IsYes())
			}
		}
		return one(yesNo(out.Not()))
	},
}

// layerTop is yes for the highest layer that stays.
var layerTop = assess.Derivation{
	ID: "layer.top", Scope: assess.ScopeLayer, Reads: []string{"layer.stays"},
	Gives: always(assess.DerivedYesNo("layer.top", assess.ScopeLayer)),
	Make: func(t assess.Thing) ([]assess.Fact, *assess.Check) {
		o := t.Fact("layer.stays").IsYes()
		for _, it := range append(t.Items(assess.ScopeLayer), rest(t)...) {
			if it.ID() == t.ID() {
				break
			}
			o = o.And(it.Fact("layer.stays").IsYes().Not())
		}
		return one(yesNo(o))
	},
}

// layerLaid is when the layer was laid: the stated year where a paper or a
// marking dates that very layer, else any year from the building to the visit.
var layerLaid = assess.Derivation{
	ID: "layer.laid", Scope: assess.ScopeLayer, Reads: []string{"layer.year", "site.year_built"},
	Gives: always(assess.DerivedQuantity("layer.laid", assess.ScopeLayer, quantity.Year, quantity.Everything)),
	Make: func(t assess.Thing) ([]assess.Fact, *assess.Check) {
		f := t.(thing).Frame
		latest := math.Inf(1)
		if y := f.floor.Visited.Year(); y > 0 {
			latest = float64(y)
		}
		year, built := t.Fact("layer.year"), t.Fact("site.year_built")
		if a := f.answers["layer.year"]; a.Basis == assess.Document || a.Basis == assess.Seen {
			r := year.Set.Range
			r.Hi = math.Min(r.Hi, latest)
			return one(number(r, year.Deps))
		}
		r := quantity.Range{Lo: math.Min(built.Set.Range.Lo, latest), Hi: latest}
		deps := f.own(f.floor.plan.catalogue.Find("layer.year").Decl)
		if f.rest == nil {
			deps = deps.Union(built.Deps)
		}
		if r.IsPoint() {
			deps = nil
		}
		return one(number(r, deps))
	},
}

// layerLabClear is yes where a laboratory reports nothing found for the layer
// and everything that belongs to it.
var layerLabClear = assess.Derivation{
	ID: "layer.lab_clear", Scope: assess.ScopeLayer, Reads: []string{"layer.lab_result", "layer.lab_complete"},
	Gives: always(assess.DerivedYesNo("layer.lab_clear", assess.ScopeLayer)),
	Make: func(t assess.Thing) ([]assess.Fact, *assess.Check) {
		result, complete := t.Fact("layer.lab_result"), t.Fact("layer.lab_complete")
		found := result.Among(t.(thing).floor.plan.schema.Find("layer.lab_result").Mask("none-found"))
		return one(yesNo(found.And(complete.IsYes())))
	},
}

var (
	layerAge = ageFrom("layer.year", "layer.age_days", assess.ScopeLayer)
	slabAge  = ageFrom("slab.year", "slab.age_days", assess.ScopeZone)
)

// ageFrom supplies an age in days from a year: from the first day of the year
// after it to the last day before it, counted at the visit.
func ageFrom(year, age string, scope assess.Scope) assess.Derivation {
	return assess.Derivation{
		ID: age + " from " + year, Scope: scope, Reads: []string{year},
		Gives: []assess.Declaration{{ID: age, Scope: scope, Kind: assess.KindQuantity, Dimension: quantity.Days, Nature: assess.Found}},
		Make: func(t assess.Thing) ([]assess.Fact, *assess.Check) {
			const shortYear, longYear = 365, 366
			y := t.Fact(year)
			now := float64(t.(thing).floor.Visited.Year())
			r := y.Set.Range
			if now == 0 || math.IsInf(r.Hi, 1) {
				return one(assess.Absent)
			}
			days := quantity.Range{Lo: math.Max(0, (now-r.Hi-1)*shortYear), Hi: (now - r.Lo + 1) * longYear}
			return one(assess.Fact{Presence: assess.Proven, Set: assess.Set{Range: days}, Deps: y.Deps})
		},
	}
}

// woodLayers and woodSheets count the deck and the good plywood laid on it.
var (
	woodLayers = sumOf("panel.layers", "deck.layers", "floor.plywood")
	woodSheets = sumOf("panel.panels", "deck.sheets", "floor.plywood")
)

func sumOf(id, a, b string) assess.Derivation {
	return assess.Derivation{
		ID: id, Scope: assess.ScopeZone, Reads: []string{a, b},
		Gives: always(assess.DerivedQuantity(id, assess.ScopeZone, quantity.Number, quantity.Everything)),
		Make: func(t assess.Thing) ([]assess.Fact, *assess.Check) {
			x, y := t.Fact(a), t.Fact(b)
			return one(number(x.Set.Range.Add(y.Set.Range), x.Deps.Union(y.Deps)))
		},
	}
}

func one(f assess.Fact) ([]assess.Fact, *assess.Check) { return []assess.Fact{f}, nil }

func rest(t assess.Thing) []assess.Thing {
	if r := t.Rest(assess.ScopeLayer); r != nil {
		return []assess.Thing{r}
	}
	return nil
}

func restOf(t assess.Thing) assess.Deps { return t.(thing).Frame.rest }
