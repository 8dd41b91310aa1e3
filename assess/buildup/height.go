package buildup

import (
	"fmt"
	"math"
	"strings"

	"underfoot/assess"
	"underfoot/assess/figure"
	"underfoot/assess/formula"
	"underfoot/assess/message"
	"underfoot/assess/quantity"
)

// Height gives path.height_left and path.height_short. The first is the room
// that the thinnest usual build leaves at the tightest place, in inches:
//
//	left = min over the edges of (rise allowed) - sum of the layers
//
// Nought is enough. An edge that somebody has checked by hand against the
// build is what he found: enough, or the path is short. An edge list that is
// not finished leaves both open. Where no edge limits the height, height_left
// is anything from nought up and nothing is short.
func Height(t *figure.Table) assess.Derivation {
	return assess.Derivation{ID: "path.height_left", Scope: assess.ScopePath,
		Reads: []string{tileKind.ID, tileSetting.ID, "tile.thickness", "edge.rise_allowed", "edge.rise_with_removal", "edge.enough",
			"edge.complete", "layer.stays", "layer.thickness", "layer.complete"},
		Gives: []assess.Declaration{assess.DerivedQuantity("path.height_left", assess.ScopePath, quantity.Length, quantity.Everything),
			assess.DerivedYesNo("path.height_short", assess.ScopePath)},
		Make: func(path assess.Thing) ([]assess.Fact, *assess.Check) {
			all, lacks := layers(t, path)
			switch {
			case len(all) == 0:
				return []assess.Fact{assess.Absent, assess.Absent}, nil
			case lacks:
				return []assess.Fact{{Presence: assess.Proven, Set: assess.Set{Range: quantity.Everything}}, assess.YesNoFact(assess.Proven, assess.Outcome{})}, nil
			}
			h := survey(path, sum("build", message.New("buildup/title.build"), "in", quantity.Length, all, func(l layer) measure { return measure{l.thinnest, l.size} }))
			return []assess.Fact{settled(h.left, h.deps), assess.YesNoFact(assess.Proven, h.short)}, h.check(path, all)
		}}
}

// A height is the tightest place of a zone against one build.
type height struct {
	work  *formula.Sheet // the build, then the edges
	build quantity.Range
	plan  assess.Deps // what would narrow the build
	left  quantity.Range
	deps  assess.Deps // what would narrow left
	edges []string    // names in the sheet of those whose room is bounded
	short assess.Outcome
}

// survey goes round the edges.
func survey(path assess.Thing, work *formula.Sheet) *height {
	h := &height{work: work, build: work.Result(), plan: buildDeps(path, tileSetting.ID, "tile.thickness"),
		left: quantity.Point(math.Inf(1)), short: assess.Refuted}
	gone := readRemoval(path)
	for _, edge := range path.Items(assess.ScopeEdge) {
		h.add(edge, gone.at(edge))
	}
	switch rest := path.Rest(assess.ScopeEdge); {
	case rest != nil:
		deps := rest.Fact("edge.rise_allowed").Deps
		h.narrow(quantity.Everything, deps)
		h.short = h.short.Or(assess.OpenOn(deps))
	case math.IsInf(h.left.Lo, 1):
		h.left.Lo = 0
	}
	return h
}

// add takes in one edge: what its room leaves, and what a hand check found.
func (h *height) add(edge assess.Thing, r room) {
	h.show(edge, r)
	left, deps := r.rise.Sub(h.build), r.deps.Union(h.plan)
	switch enough := edge.Fact("edge.enough"); {
	case enough.Set == assess.SetYes:
		h.narrow(agreed(left, quantity.AtLeast(0)), deps)
	case enough.Set == assess.SetNo:
		h.narrow(agreed(left, quantity.AtMost(0)), deps)
		h.short = assess.Proven
	case left.Hi < 0:
		h.narrow(left, deps)
		h.short = assess.Proven
	default:
		h.narrow(left, deps)
		if left.Lo < 0 {
			h.short = h.short.Or(assess.OpenOn(deps.Union(enough.Deps)))
		}
	}
}

// agreed is what both the sum and the hand check allow; where they contradict
// each other the hand check has the word.
func agreed(sum, hand quantity.Range) quantity.Range {
	if both := sum.Meet(hand); !both.IsEmpty() {
		return both
	}
	return hand
}

// narrow takes in what one place leaves: the tightest decides.
func (h *height) narrow(left quantity.Range, deps assess.Deps) {
	h.left = quantity.Range{Lo: math.Min(h.left.Lo, left.Lo), Hi: math.Min(h.left.Hi, left.Hi)}
	h.deps = h.deps.Union(deps)
}

// show puts the room of an edge into the sheet.
func (h *height) show(edge assess.Thing, r room) {
	if !r.rise.Bounded() {
		return
	}
	name := fmt.Sprintf("edge_%d", len(h.edges)+1)
	h.work.Input(name, message.New("buildup/line.rise", "edge", edge.ID()), "in", quantity.Length, r.rise, formula.Stated)
	h.edges = append(h.edges, name)
}

// check is the sum at the measured edges, or nil where none is measured.
func (h *height) check(path assess.Thing, all []layer) *assess.Check {
	if len(h.edges) == 0 {
		return nil
	}
	h.work.Let("left", message.New("buildup/title.height"), "in", quantity.Length, "min("+strings.Join(h.edges, ", ")+") - build")
	c := &assess.Check{ID: "path.height_left", Title: message.New("buildup/title.height"), Outcome: assess.CheckOpen, Value: h.left, Limit: quantity.Point(0),
		Dimension: quantity.Length, AtLeast: true, Margin: h.left.Div(h.build), Note: message.New("buildup/note.height"), Work: h.work,
		Missing: path.Named(h.short.Deps), Sources: sources(all, func(l layer) figure.Source { return l.size })}
	switch h.short.Truth {
	case assess.No:
		c.Outcome = assess.CheckHolds
	case assess.Yes:
		c.Outcome = assess.CheckFails
	}
	return c
}
