// Package takeoff turns a step or a base of a plan into amounts: sheets, bags,
// fasteners, feet of tape, pounds to carry. Every amount is a range, as wide as
// what is known of the room, and says where its figure comes from.
package takeoff

import (
	"underfoot/assess/figure"
	"underfoot/assess/logic"
	"underfoot/assess/quantity"
	"underfoot/assess/result"
)

// Input is what the amounts are made of. A range that nobody has stated is
// quantity.Everything; one that is not above zero counts as not stated.
type Input struct {
	Area          quantity.Range // ft2, of the floor that the step or base is for
	LongestRun    quantity.Range // in, from wall to wall
	TileLong      quantity.Range // in, long edge
	TileThickness quantity.Range // in
	TileKinds     []string       // words of tile.kind that are possible
	MortarBed     logic.Truth    // the tile is set in a mortar bed, rather than thin
	CrackLength   quantity.Range // in, of all cracks that a strip is laid over
	Depth         quantity.Range // in, mean depth of leveling
	AddsPanel     bool           // strengthening lays a layer of plywood
	Removed       []Layer        // of removal: what comes up
}

// A Layer is one layer that is taken up.
type Layer struct {
	Kinds     []string       // words of layer.kind that are possible
	Thickness quantity.Range // in
}

// For is what a step or a base takes, in the units ft2, ft, in, lb, ft3 and
// gallons, and in whole sheets, bags and pieces, rounded up. Where the area is
// not known a first line says so and the amounts are for 100 ft2, not rounded.
// Steps that only licensed people take, and those that only look or dry, have
// no amounts; neither has a step that may disturb suspect material.
func For(path result.PathID, in Input, t *figure.Table) []result.Quantity {
	l := newList(in, t)
	switch path {
	case result.Remove:
		l.remove()
	case result.Strengthen:
		l.strengthen()
	case result.Level:
		l.level()
	case result.IsolateStrip:
		l.strip()
	case result.IsolateFull:
		l.cover("membrane_sheet", "", "waste_sheets")
		l.cover("membrane_liquid", "gallon_membrane", "")
	case result.Uncouple:
		l.cover("mat", "", "waste_sheets")
		l.cover("mortar_under_mat", "bag_under_mat", "")
	case result.BackerBoard:
		l.cover("board", "sheet_board", "waste_sheets")
		l.spread("board_fasteners", "board_fasteners", "waste_sheets")
		l.spread("board_tape", "board_tape", "")
		l.cover("mortar_under_board", "bag_under_board", "")
	}
	if path.IsAssembly() {
		l.tile()
	}
	return l.finish()
}
