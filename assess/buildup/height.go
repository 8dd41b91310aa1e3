package buildup

import (
	"fmt"
	"math"
	"strings"

	"underfoot/assess"
	"underfoot/assess/figure"
	"underfoot/assess/formula"
	"underfoot/assess/quantity"
)

const (
	titleHeight = "Height left at the tightest place"
	noteHeight  = "with the thinnest usual product of each layer; places checked by hand are left out"
)

// Height gives path.height_left and path.height_short. The first is the room
// that the thinnest usual build leaves at the tightest place, in inches:
//
//	left = min over the edges of (rise allowed) - sum of the layers
//
// Nought is enough. An edge that somebody has checked by hand against the
// build is what he found: enough, and it asks nothing more; or not, and the
// path is short. An edge list that is not finished leaves both open. Where no
// edge limits the height, height_left is absent and nothing is short.
func Height(t *figure.Table) assess.Derivation {
	return assess.Derivation{ID: "path.height_left", Scope: assess.ScopePath,
		Reads: []string{tileKind.ID, tileSetting.ID, "tile.thickness", "edge.rise_allowed", "edge.rise_with_removal", "edge.enough",
			"edge.complete", "layer.stays", "layer.thickness", "layer.complete"},
		Gives: append(number("path.height_left", quantity.Length, quantity.Everything), assess.Declaration{ID: "path.height_short",
			Scope: assess.ScopePath, Kind: assess.KindYesNo, Choices: assess.YesNoChoices, Nature: assess.Derived}),
		Make: func(path assess.Thing) ([]assess.Fact, *assess.Check) {
			all, lacks := layers(t, path)
			switch {
			case len(all) == 0:
				return []assess.Fact{assess.Absent, assess.Absent}, nil
			case lacks:
				return []assess.Fact{{Presence: assess.Proven, Set: assess.Set{Range: quantity.Everything}}, truth(assess.Outcome{})}, nil
			}
			h := survey(path, sum("build", "thinnest build", "in", quantity.Length, all, func(l layer) quantity.Range { return l.thinnest }))
			return []assess.Fact{h.left(), truth(h.short)}, h.check(path, all)
		}}
}

// A height is the tightest place of a zone against one build.
type height struct {
	work  *formula.Sheet // the build, then the edges
	build quantity.Range
	rise  quantity.Range // the least room over the edges that are measured or may be
	edges []string       // names of those whose room is bounded
	some  bool           // an edge limits the height, or may
	short assess.Outcome
	deps  assess.Deps
}

// survey goes round the edges.
func survey(path assess.Thing, work *formula.Sheet) *height {
	h := &height{work: work, build: work.Result(), rise: quantity.Point(math.Inf(1)), short: assess.Refuted,
		deps: buildDeps(path, tileSetting.ID, "tile.thickness")}
	gone := readRemoval(path)
	for _, edge := range path.Items(assess.ScopeEdge) {
		h.add(edge, gone.at(edge))
	}
	if rest := path.Rest(assess.ScopeEdge); rest != nil {
		deps := rest.Fact("edge.rise_allowed").Deps
		h.some, h.rise.Lo = true, math.Inf(-1)
		h.deps = h.deps.Union(deps)
		h.short = h.short.Or(assess.OpenOn(deps))
	}
	return h
}

// add takes in one edge.
func (h *height) add(edge assess.Thing, r room) {
	enough := edge.Fact("edge.enough")
	switch enough.Set {
	case assess.SetYes:
		return
	case assess.SetNo:
		h.some, h.short = true, assess.Proven
		h.narrow(quantity.AtMost(h.build.Hi))
		return
	}
	h.some = true
	h.narrow(r.rise)
	h.deps = h.deps.Union(r.deps)
	if r.rise.Bounded() {
		name := fmt.Sprintf("edge_%d", len(h.edges)+1)
		h.work.Input(name, "rise allowed at "+edge.ID(), "in", quantity.Length, r.rise, "")
		h.edges = append(h.edges, name)
	}
	switch left := r.rise.Sub(h.build); {
	case left.Hi < 0:
		h.short = assess.Proven
	case left.Lo < 0:
		h.short = h.short.Or(assess.OpenOn(r.deps.Union(enough.Deps).Union(h.deps)))
	}
}

func (h *height) narrow(r quantity.Range) {
	h.rise = quantity.Range{Lo: math.Min(h.rise.Lo, r.Lo), Hi: math.Min(h.rise.Hi, r.Hi)}
}

// left is path.height_left.
func (h *height) left() assess.Fact {
	if !h.some {
		return assess.Absent
	}
	r := h.rise.Sub(h.build)
	if math.IsNaN(r.Lo) || math.IsNaN(r.Hi) {
		r = quantity.Everything
	}
	return settled(r, h.deps)
}

// check is the sum at the measured edges, or nil where none is measured.
func (h *height) check(path assess.Thing, all []layer) *assess.Check {
	if len(h.edges) == 0 {
		return nil
	}
	h.work.Let("left", titleHeight, "in", quantity.Length, "min("+strings.Join(h.edges, ", ")+") - build")
	left := h.left()
	c := &assess.Check{ID: "path.height_left", Title: titleHeight, Outcome: assess.CheckOpen, Value: left.Set.Range, Limit: quantity.Point(0),
		Dimension: quantity.Length, AtLeast: true, Margin: left.Set.Range.Div(h.build), Note: noteHeight, Work: h.work,
		Missing: path.Named(h.short.Deps), Sources: sources(all)}
	switch h.short.Truth {
	case assess.No:
		c.Outcome = assess.CheckHolds
	case assess.Yes:
		c.Outcome = assess.CheckFails
	}
	return c
}

// truth is an outcome as a yes/no fact that is there.
func truth(o assess.Outcome) assess.Fact {
	f := assess.Fact{Presence: assess.Proven, Set: assess.Set{Mask: assess.SetNo.Mask | assess.SetYes.Mask}, Deps: o.Deps}
	switch o.Truth {
	case assess.Yes:
		f.Set = assess.SetYes
	case assess.No:
		f.Set = assess.SetNo
	}
	return f
}
