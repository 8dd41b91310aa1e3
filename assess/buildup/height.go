package buildup

import (
	"fmt"
	"math"
	"strings"

	"underfoot/assess/figure"
	"underfoot/assess/formula"
	"underfoot/assess/logic"
	"underfoot/assess/message"
	"underfoot/assess/quantity"
	"underfoot/assess/result"
	"underfoot/assess/schema"
)

// Height gives path.height_left and path.height_short. The first is the room
// that the thinnest usual build leaves at the tightest place, in inches:
//
//	left = min over the edges of (rise allowed) - sum of the layers
//
// Zero is enough. An edge that somebody has checked by hand against the
// build is what he found: enough, or the path is short. An edge list that is
// not finished leaves both open. Where no edge limits the height, height_left
// is anything from zero up and nothing is short.
func Height(t *figure.Table) result.Derivation {
	return result.Derivation{ID: "path.height_left", Scope: schema.ScopePath,
		Reads: []string{tileKind.ID, tileSetting.ID, "tile.thickness", "edge.rise_allowed", "edge.rise_with_removal", "edge.enough",
			"edge.complete", "layer.stays", "layer.thickness", "layer.complete"},
		Gives: []schema.Declaration{schema.DerivedQuantity("path.height_left", schema.ScopePath, quantity.Length, quantity.Everything),
			schema.DerivedYesNo("path.height_short", schema.ScopePath)},
		Make: func(path result.Thing) ([]schema.Fact, *result.Check) {
			all, lacks := layers(t, path)
			switch {
			case len(all) == 0:
				return []schema.Fact{schema.Absent, schema.Absent}, nil
			case lacks:
				return []schema.Fact{{Presence: logic.Proven, Set: schema.Set{Range: quantity.Everything}}, schema.YesNoFact(logic.Proven, logic.Outcome{})}, nil
			}
			h := survey(path, sum("build", message.New("buildup/title.build"), "in", quantity.Length, all, func(l layer) measure { return measure{l.thinnest, l.size} }))
			return []schema.Fact{settled(h.left, h.deps), schema.YesNoFact(logic.Proven, h.short)}, h.check(path, all)
		}}
}

// A height is the tightest place of a zone against one build.
type height struct {
	work  *formula.Sheet // the build, then the edges
	build quantity.Range
	plan  logic.Deps // what would narrow the build
	left  quantity.Range
	deps  logic.Deps // what would narrow left
	edges []string   // names in the sheet of those whose room is bounded
	short logic.Outcome
}

// survey goes round the edges.
func survey(path result.Thing, work *formula.Sheet) *height {
	h := &height{work: work, build: work.Result(), plan: buildDeps(path, tileSetting.ID, "tile.thickness"),
		left: quantity.Point(math.Inf(1)), short: logic.Refuted}
	gone := readRemoval(path)
	for _, edge := range path.Items(schema.ScopeEdge) {
		h.add(edge, gone.at(edge))
	}
	switch rest := path.Rest(schema.ScopeEdge); {
	case rest != nil:
		deps := rest.Fact("edge.rise_allowed").Deps
		h.narrow(quantity.Everything, deps)
		h.short = h.short.Or(logic.OpenOn(deps))
	case math.IsInf(h.left.Lo, 1):
		h.left.Lo = 0
	}
	return h
}

// add takes in one edge: what its room leaves, and what a hand check found.
func (h *height) add(edge result.Thing, r room) {
	h.show(edge, r)
	left, deps := r.rise.Sub(h.build), r.deps.Union(h.plan)
	switch enough := edge.Fact("edge.enough"); {
	case enough.Set == schema.SetYes:
		h.narrow(agreed(left, quantity.AtLeast(0)), deps)
	case enough.Set == schema.SetNo:
		h.narrow(agreed(left, quantity.AtMost(0)), deps)
		h.short = logic.Proven
	case left.Hi < 0:
		h.narrow(left, deps)
		h.short = logic.Proven
	default:
		h.narrow(left, deps)
		if left.Lo < 0 {
			h.short = h.short.Or(logic.OpenOn(deps.Union(enough.Deps)))
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
func (h *height) narrow(left quantity.Range, deps logic.Deps) {
	h.left = quantity.Range{Lo: math.Min(h.left.Lo, left.Lo), Hi: math.Min(h.left.Hi, left.Hi)}
	h.deps = h.deps.Union(deps)
}

// show puts the room of an edge into the sheet.
func (h *height) show(edge result.Thing, r room) {
	if !r.rise.Bounded() {
		return
	}
	name := fmt.Sprintf("edge_%d", len(h.edges)+1)
	h.work.Input(name, message.New("buildup/line.rise", "edge", edge.ID()), "in", quantity.Length, r.rise, formula.Stated)
	h.edges = append(h.edges, name)
}

// check is the sum at the measured edges, or nil where none is measured.
func (h *height) check(path result.Thing, all []layer) *result.Check {
	if len(h.edges) == 0 {
		return nil
	}
	h.work.Let("left", message.New("buildup/title.height"), "in", quantity.Length, "min("+strings.Join(h.edges, ", ")+") - build")
	c := &result.Check{ID: "path.height_left", Title: message.New("buildup/title.height"), Outcome: result.CheckOpen, Value: h.left, Limit: quantity.Point(0),
		Dimension: quantity.Length, AtLeast: true, Margin: h.left.Div(h.build), Note: message.New("buildup/note.height"), Work: h.work,
		Missing: path.Named(h.short.Deps), Sources: sources(all, func(l layer) figure.Source { return l.size })}
	switch h.short.Truth {
	case logic.No:
		c.Outcome = result.CheckHolds
	case logic.Yes:
		c.Outcome = result.CheckFails
	}
	return c
}
