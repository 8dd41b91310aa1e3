package structure

import (
	"math"

	"underfoot/assess/figure"
	"underfoot/assess/quantity"
)

// A Bound is what the joists are held to: a least span over deflection under
// one load, and for long spans under stone an absolute cap.
type Bound struct {
	Ratio   float64 // N of L/N
	Load    Load    // the load under which it is compared
	Cap     float64 // in, greatest deflection; zero: none
	CapFrom float64 // in, the span above which the cap counts
	Sources []figure.Source
}

// The absolute cap under stone: 7/32 in on spans over 14 ft.
const (
	stoneCap     = 7.0 / 32
	stoneCapFrom = 14 * 12.0
)

// BoundFor is the bound for a kind of tile, a word of tile.kind: that of stone
// under total load, with its cap; every other under live load, and where the
// practice says so under total load. Sources differ on the load that is meant under stone; the
// stricter is taken.
func BoundFor(tile string, t *figure.Table) Bound {
	id, b := "ceramic_limit", Bound{}
	switch {
	case tile == "natural-stone":
		id, b = "stone_limit", Bound{Load: TotalLoad, Cap: stoneCap, CapFrom: stoneCapFrom, Sources: []figure.Source{figure.Method("stone-cap")}}
	case figure.PracticeOf(t.Region).TotalLoad:
		b.Load = TotalLoad
	}
	f, _ := t.Figure(id)
	b.Ratio, b.Sources = f.Value, append([]figure.Source{f.Source}, b.Sources...)
	return b
}

// Least is the least ratio for a clear span, in inches: on a span beyond
// CapFrom the cap may ask for more than the ratio. A span that is not known
// asks for the ratio at least.
func (b Bound) Least(span quantity.Range) quantity.Range {
	least := func(span float64) float64 {
		if b.Cap > 0 && span > b.CapFrom && !math.IsInf(span, 0) {
			return math.Max(b.Ratio, span/b.Cap)
		}
		return b.Ratio
	}
	return quantity.Range{Lo: least(span.Lo), Hi: least(math.Min(span.Hi, LongestSpanIn))}
}
