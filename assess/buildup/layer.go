// Package buildup reckons what a new floor adds to the old one on each base:
// its layers, its height against the places where height counts, and its weight.
package buildup

import (
	"underfoot/assess/figure"
	"underfoot/assess/message"
	"underfoot/assess/quantity"
	"underfoot/assess/result"
)

// A layer is one layer that a base adds. Products come in several sizes:
// thickness and weight run over the usual ones, for a reader. What is decided
// is decided with the thinnest for height, which the setter may choose, and
// with the heaviest for weight, which the framing may have to carry.
type layer struct {
	name              message.Message
	line              string // its name in a sheet
	thickness, weight quantity.Range
	thinnest          quantity.Range // in; a range only where an answer would narrow it
	heaviest          quantity.Range // psf; likewise
	size, mass        figure.Source  // of the thickness and of the weight; size is empty for an answer
}

// A measure is a range of a figure with its source.
type measure struct {
	quantity.Range
	source figure.Source
}

// named is what a layer is called.
func named(name string) message.Message { return message.New("buildup/layer." + name) }

// product is a layer whose size the setter chooses.
func product(name message.Message, line string, thickness, weight measure) layer {
	return layer{name, line, thickness.Range, weight.Range, quantity.Point(thickness.Lo), quantity.Point(weight.Hi), thickness.source, weight.source}
}

// either is the layer where it is not said which of two it will be.
func (l layer) either(m layer, name message.Message) layer {
	return layer{name, l.line, l.thickness.Hull(m.thickness), l.weight.Hull(m.weight),
		l.thinnest.Hull(m.thinnest), l.heaviest.Hull(m.heaviest), m.size, m.mass}
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

// between is the range from one figure to another, with the source of the less
// well known of the two.
func (b *book) between(least, most string) measure {
	f, g := b.figure(least), b.figure(most)
	return measure{quantity.Range{Lo: f.Value, Hi: g.Value}, weaker(f.Source, g.Source)}
}

// weaker is the source that is known less well: what was read is known best.
func weaker(a, b figure.Source) figure.Source {
	if a.Known == "lookup" {
		return b
	}
	return a
}

// thinBed is the mortar that the tile is set in: its weight is stated for the
// thickest usual bed and taken in proportion below it.
func (b *book) thinBed() layer {
	thick, full := b.between("build_mortar_least", "build_mortar_most"), b.between("weight_thin_bed", "weight_thin_bed")
	full.Lo *= thick.Lo / thick.Hi
	return product(named("thin_bed"), "mortar", thick, full)
}

func (b *book) mortarBed() layer {
	thick, inch := b.between("build_mortar_bed_least", "build_mortar_bed_most"), b.between("weight_mortar_bed_inch", "weight_mortar_bed_inch")
	return product(named("mortar_bed"), "mortar", thick, measure{thick.Mul(inch.Range), inch.source})
}

func (b *book) board() []layer {
	return []layer{
		product(named("board"), "board", b.between("build_board_least", "build_board_most"), b.between("weight_board_quarter", "weight_board_half")),
		product(named("board_bed"), "bed", b.between("build_board_bed", "build_board_bed"), b.between("weight_thin_bed", "weight_thin_bed")),
	}
}

func (b *book) sheet(name message.Message, least, most, weight string) []layer {
	return []layer{product(name, "membrane", b.between(least, most), b.between(weight, weight))}
}

// onBase are the layers between the old floor and the mortar of the tile.
func (b *book) onBase(path result.PathID) []layer {
	switch path {
	case result.BackerBoard:
		return b.board()
	case result.Uncouple:
		return b.sheet(named("mat"), "build_mat_least", "build_mat_most", "weight_mat")
	case result.IsolateStrip, result.IsolateFull:
		return b.sheet(named("membrane"), "build_membrane_least", "build_membrane_most", "weight_membrane")
	}
	return nil
}
