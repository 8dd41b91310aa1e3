package takeoff

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"underfoot/assess/logic"
	"underfoot/assess/quantity"
	"underfoot/assess/result"
)

// draw is a room of which anything may be known or not.
func draw(t *rapid.T) Input {
	some := func(name string, most float64) quantity.Range {
		lo := rapid.Float64Range(0.1, most).Draw(t, name)
		return rapid.SampledFrom([]quantity.Range{quantity.Everything, quantity.Point(lo), between(lo, lo+rapid.Float64Range(0, most).Draw(t, name+" width"))}).Draw(t, name+" range")
	}
	kinds := func(name string) []string {
		return rapid.SliceOfN(rapid.SampledFrom([]string{"ceramic", "mosaic", "sheet-vinyl", "gypsum-poured", "rubber"}), 0, 2).Draw(t, name)
	}
	return Input{Area: between(100, 100), LongestRun: some("run", 600), TileLong: some("long", 48), TileThickness: some("thick", 2),
		TileKinds: kinds("tile"), MortarBed: rapid.SampledFrom([]logic.Truth{logic.Yes, logic.No, logic.Open}).Draw(t, "bed"),
		CrackLength: some("crack", 600), Depth: some("depth", 2), AddsPanel: rapid.Bool().Draw(t, "panel"),
		Removed: []Layer{{kinds("layer"), some("layer thickness", 2)}}}
}

func TestLargerRoomNeverTakesLess(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := draw(t)
		path := rapid.SampledFrom(result.Paths()).Draw(t, "path")
		in.Area = quantity.Point(rapid.Float64Range(1, 1000).Draw(t, "area"))
		small := For(path, in, us)
		in.Area = quantity.Point(in.Area.Lo + rapid.Float64Range(0, 500).Draw(t, "more"))
		large := For(path, in, us)
		for i := range small {
			if large[i].Text.String() != small[i].Text.String() || large[i].Value.Lo < small[i].Value.Lo || large[i].Value.Hi < small[i].Value.Hi {
				t.Fatalf("%v: %v in the small room, %v in the large one", small[i].Text, small[i].Value, large[i].Value)
			}
		}
	})
}

func TestWiderKnowledgeHoldsTheNarrower(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := draw(t)
		path := rapid.SampledFrom(result.Paths()).Draw(t, "path")
		lo, wide := rapid.Float64Range(1, 1000).Draw(t, "area"), rapid.Float64Range(0, 500).Draw(t, "width")
		in.Area = between(lo, lo+wide)
		open := For(path, in, us)
		in.Area = quantity.Point(lo + wide*rapid.Float64Range(0, 1).Draw(t, "where"))
		for i, q := range For(path, in, us) {
			const near = 1e-6
			if q.Value.Lo < open[i].Value.Lo-near || q.Value.Hi > open[i].Value.Hi+near {
				t.Fatalf("%v: %v is not within %v", q.Text, q.Value, open[i].Value)
			}
		}
	})
}

// Bags, sheets and pieces are whole, and no fewer than the floor takes.
func TestWholeOnesAreRoundedUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		area := rapid.Float64Range(1, 5000).Draw(t, "area")
		q, _ := find(For(result.BackerBoard, Input{Area: quantity.Point(area)}, us), "board")
		need := area * 1.1 / 15 // a sheet of 3 by 5 ft, recalled; 10 % waste, practice
		if q.Value.Lo != math.Trunc(q.Value.Lo) || q.Value.Lo < need-1e-6 || q.Value.Lo >= need+1 {
			t.Fatalf("%v sheets for %v ft2, which take %v", q.Value.Lo, area, need)
		}
	})
}
