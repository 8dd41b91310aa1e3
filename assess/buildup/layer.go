// Package buildup reckons what a new floor adds to the old one on each base:
// its layers, its height against the places where height counts, and its weight.
package buildup

import (
	"underfoot/assess"
	"underfoot/assess/figure"
	"underfoot/assess/quantity"
)

// A layer is one layer that a base adds. Products come in several sizes:
// thickness and weight run over the usual ones, for a reader. What is decided
// is decided with the thinnest for height, which the setter may choose, and
// with the heaviest for weight, which the framing may have to carry.
type layer struct {
	name              string
	line              string // its name in a sheet
	thickness, weight quantity.Range
	thinnest          quantity.Range // in; a range only where an answer would narrow it
	heaviest          quantity.Range // psf; likewise
	source            figure.Source
}

// product is a layer whose size the setter chooses.
func product(name, line string, thickness, weight quantity.Range, source figure.Source) layer {
	return layer{name, line, thickness, weight, quantity.Point(thickness.Lo), quantity.Point(weight.Hi), source}
}

// either is the layer where it is not said which of two it will be.
func (l layer) either(m layer) layer {
	return layer{l.name + " or " + m.name, l.line, l.thickness.Hull(m.thickness), l.weight.Hull(m.weight),
		l.thinnest.Hull(m.thinnest), l.heaviest.Hull(m.heaviest), m.source}
}

// A book is the figures of build-ups, looked up by id. It counts what it lacks.
type book struct {
	table *figure.Table
	lacks bool
}

func (b *book) figure(id string) figure.Figure {
	f, ok := b.table.Figure(id)
	b.lacks = b.lacks || !ok
	return f
}

// between is the range from one figure to another.
func (b *book) between(least, most string) (quantity.Range, figure.Source) {
	f := b.figure(least)
	return quantity.Range{Lo: f.Value, Hi: b.figure(most).Value}, f.Source
}

// thinBed is the mortar that the tile is set in: its weight is stated for the
// thickest usual bed and taken in proportion below it.
func (b *book) thinBed() layer {
	thick, source := b.between("build_mortar_least", "build_mortar_most")
	full := b.figure("weight_thin_bed").Value
	return product("Thin mortar bed", "mortar", thick, quantity.Range{Lo: full * thick.Lo / thick.Hi, Hi: full}, source)
}

func (b *book) mortarBed() layer {
	thick, source := b.between("build_mortar_bed_least", "build_mortar_bed_most")
	return product("Mortar bed", "mortar", thick, thick.Mul(quantity.Point(b.figure("weight_mortar_bed_inch").Value)), source)
}

func (b *book) board() []layer {
	thick, source := b.between("build_board_least", "build_board_most")
	weight, _ := b.between("weight_board_quarter", "weight_board_half")
	bed := b.figure("build_board_bed")
	return []layer{product("Cement backer board", "board", thick, weight, source),
		product("Mortar bed under the board", "bed", quantity.Point(bed.Value), quantity.Point(b.figure("weight_thin_bed").Value), bed.Source)}
}

func (b *book) sheet(name, least, most, weight string) []layer {
	thick, source := b.between(least, most)
	return []layer{product(name, "membrane", thick, quantity.Point(b.figure(weight).Value), source)}
}

// onBase are the layers between the old floor and the mortar of the tile.
func (b *book) onBase(path assess.PathID) []layer {
	switch path {
	case assess.BackerBoard:
		return b.board()
	case assess.Uncouple:
		return b.sheet("Uncoupling membrane with its mortar", "build_mat_least", "build_mat_most", "weight_mat")
	case assess.IsolateStrip, assess.IsolateFull:
		return b.sheet("Crack isolation membrane", "build_membrane_least", "build_membrane_most", "weight_membrane")
	}
	return nil
}
