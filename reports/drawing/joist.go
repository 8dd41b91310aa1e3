// Package drawing draws what a report shows: a bent joist against its limit.
package drawing

import (
	"math"
	"strings"
)

// A Joist is a joist on two supports under load, lengths in inches.
type Joist struct {
	Span  float64 // clear
	Low   float64 // least sag at mid span
	High  float64 // greatest sag
	Limit float64 // sag that the limit allows
}

// rows is how many lines the larger of sag and limit is drawn deep. A character
// is about twice as high as it is wide.
const (
	rows   = 6
	height = 2
)

// Text draws the joist in characters of one width: `-` the straight line
// between the supports, `.` the sag that the limit allows, `=` the sag of the
// stiffest and `#` that of the softest joist that is possible. Depth is drawn
// `times` larger than length. Without a sag the drawing is empty.
func (j Joist) Text(width int) (picture string, times float64) {
	columns := max(20, width-4)
	deepest := math.Max(j.High, j.Limit)
	if !(deepest > 0) || math.IsInf(deepest, 0) || !(j.Span > 0) {
		return "", 0
	}
	g := newGrid(columns)
	for x := range columns {
		at := float64(x) / float64(columns-1)
		for _, line := range []struct {
			sag  float64
			mark rune
		}{{0, '-'}, {j.Limit, '.'}, {j.High, '#'}, {j.Low, '='}} {
			g[depth(line.sag, at, deepest)][x] = line.mark
		}
	}
	var b strings.Builder
	for _, row := range g {
		b.WriteString("  " + strings.TrimRight(string(row), " ") + "\n")
	}
	return b.String(), rows * height / deepest / (float64(columns) / j.Span)
}

// depth is the row in which a sag stands at a place along the span, which runs
// from 0 to 1: the shape of a simple beam under uniform load,
// y/y_mid = 16/5 (x - 2x^3 + x^4), the integral of the moment of a uniform
// load twice over (Wood Handbook FPL-GTR-190, chapter 9, gives y_mid).
func depth(sag, at, deepest float64) int {
	y := 16.0 / 5 * (at - 2*math.Pow(at, 3) + math.Pow(at, 4))
	return int(math.Round(sag * y / deepest * rows))
}

func newGrid(columns int) [rows + 1][]rune {
	var g [rows + 1][]rune
	for y := range g {
		g[y] = []rune(strings.Repeat(" ", columns))
	}
	return g
}
