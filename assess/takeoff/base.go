package takeoff

import (
	"math"

	"underfoot/assess/figure"
	"underfoot/assess/logic"
	"underfoot/assess/quantity"
)

// tile adds the tile itself, what it is set in, its weight and its joints.
func (l *list) tile() {
	l.cover("tile", "", "waste_straight")
	l.cuts()
	if l.in.MortarBed != logic.Yes {
		l.underTile()
	}
	if l.in.MortarBed != logic.No {
		l.mortarBed()
	}
	l.tileWeight()
	l.joints()
}

// cuts names the waste of other layouts in the note of the tile.
func (l *list) cuts() {
	if from, ok := l.figures("waste_diagonal", "waste_pattern"); ok {
		last := &l.lines[len(l.lines)-1]
		last.Note = note(last.Note, from)
	}
}

// underTile adds the mortar that the tile is set in: a large tile takes a
// deeper notch, and a tile of unknown size may be one.
func (l *list) underTile() {
	from, ok := l.figures("bag_small_tile", "bag_large_tile", "large_tile_edge")
	if !ok {
		return
	}
	small, large, edge := from[0], from[1], from[2].Value
	covers := quantity.Range{Lo: math.Min(small.Value, large.Value), Hi: math.Max(small.Value, large.Value)}
	switch long := l.in.TileLong; {
	case long.Lo >= edge:
		covers, from = quantity.Point(large.Value), from[1:2]
	case stated(long) && long.Hi < edge:
		covers, from = quantity.Point(small.Value), from[:1]
	}
	l.perArea("mortar_under_tile", l.area.Div(covers), from...)
}

// mortarBed adds the volume of a mortar bed: area x depth / 12.
func (l *list) mortarBed() {
	if from, ok := l.figures("build_mortar_bed_least", "build_mortar_bed_most"); ok {
		deep := quantity.Range{Lo: from[0].Value, Hi: from[1].Value}
		l.perArea("mortar_bed", l.area.Mul(deep).Div(quantity.Point(inchesPerFoot)), from...)
	}
}

// tileWeight adds what the tile weighs, for those who carry it.
func (l *list) tileWeight() {
	if psf, from := l.weight(Layer{l.in.TileKinds, l.in.TileThickness}); len(from) > 0 {
		l.perArea("tile_weight", l.withWaste(l.area, "waste_straight").Mul(psf), from...)
	}
}

// joints adds the movement joints across the longest run, walls aside: the run
// over the greatest distance, less one. The distance is that of a dry room
// without sun at the one end and of sun, moisture or heating at the other.
func (l *list) joints() {
	from, ok := l.figures("joint_inside", "joint_sun")
	if !ok || !stated(l.in.LongestRun) {
		return
	}
	run := l.in.LongestRun.Meet(quantity.AtLeast(0))
	between := func(run float64, f figure.Figure) float64 { return math.Max(0, roundUp(run/f.Value)-1) }
	l.add(amount{id: "joints", value: quantity.Range{Lo: between(run.Lo, from[0]), Hi: between(run.Hi, from[1])}, from: from})
}

// strip adds a strip of crack isolation membrane: strip_width_tiles times the
// long edge of the tile wide, never under strip_width_min, and as long as the
// crack; a soft joint runs along each side of it.
func (l *list) strip() {
	from, ok := l.figures("strip_width_tiles", "strip_width_min", "membrane_standard", "membrane_high")
	if !ok {
		return
	}
	width := quantity.AtLeast(from[1].Value)
	if stated(l.in.TileLong) {
		w := l.in.TileLong.Mul(quantity.Point(from[0].Value))
		width = quantity.Range{Lo: math.Max(width.Lo, w.Lo), Hi: math.Max(width.Lo, w.Hi)}
	}
	l.add(amount{id: "strip_width", value: width, from: from})
	run, per := quantity.Point(sampleRun), "run"
	if stated(l.in.CrackLength) {
		run, per = l.in.CrackLength.Meet(quantity.AtLeast(0)).Div(quantity.Point(inchesPerFoot)), ""
	}
	waste, _ := l.figures("waste_sheets")
	long := l.withWaste(run, "waste_sheets")
	l.add(amount{id: "strip_length", value: long, per: per, from: waste})
	l.add(amount{id: "strip_area", value: long.Mul(width).Div(quantity.Point(inchesPerFoot)), per: per, from: waste})
	const sides = 2
	l.add(amount{id: "soft_joint", value: run.Mul(quantity.Point(sides)), per: per})
}
