package structure

import (
	"underfoot/assess/figure"
	"underfoot/assess/quantity"
)

// A Bound is what the joists are held to: a least span over deflection under
// one load, and for long spans under stone an absolute cap.
type Bound struct {
	Ratio   float64 // N of L/N
	Load    Load    // the load under which it is compared
	Cap     float64 // in, greatest deflection; nought: none
	CapFrom float64 // in, the span above which the cap counts
	Sources []figure.Source
}

// BoundFor is the bound for a kind of tile, a word of tile.kind: that of stone
// under total load, with its cap; every other under live load, and in Canada
// under total load.
func BoundFor(tile string, t *figure.Table) Bound {
	id, b := "ceramic_limit", Bound{}
	if tile == "natural-stone" {
		id, b.Load = "stone_limit", TotalLoad
	}
	f, _ := t.Figure(id)
	b.Ratio, b.Sources = f.Value, []figure.Source{f.Source}
	return b
}

// Least is the least ratio for a clear span, in inches: the cap asks for more
// than the ratio on a long one.
func (b Bound) Least(span quantity.Range) quantity.Range { return quantity.Point(b.Ratio) }
