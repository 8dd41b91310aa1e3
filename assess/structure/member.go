package structure

import (
	"underfoot/assess/quantity"
	"underfoot/assess/schema"
)

// A Member is a row of equal joists under one deck, as far as it is known. A
// range that is zero was not said, and a list of words that is empty leaves
// every word possible.
type Member struct {
	Kind          string         // word of joist.member; empty: sawn-lumber
	Size          string         // as written, 2x10 or 1-1/2 x 9-1/4 in; empty: Width and Depth alone
	Width, Depth  quantity.Range // true size, in; goes before the size behind a nominal name
	Species       []string       // possible words of joist.species
	Grades        []string       // possible words of joist.grade
	Modulus       quantity.Range // measured E, psi, as the wood is; goes before that of Species and Grades
	Span          quantity.Range // clear, face to face of the supports, in
	Spacing       quantity.Range // centre to centre, in
	Continuity    string         // word of joist.continuity; empty: one-span
	Overhang      quantity.Range // past the last support, in; zero: none
	OverhangBears bool           // a wall or a roof stands on the overhang
	Wet           bool           // in service above 19 percent moisture
	Incised       bool           // cut with small slits for preservative
	Notched       string         // word of joist.notched; empty: none
	Troubles      []string       // words of States, or the facts joist.cut, water.rot ...
}

// Loads are what lies on the joists.
type Loads struct {
	Live, Dead quantity.Range // psf; zero: 40 and 10
	Point      quantity.Range // lb at mid span of one joist, counted with the total load; zero: none
	Heavy      []string       // words of load.kind for what no uniform load stands for
}

// LoadKinds are the words of load.kind, each a matter for an engineer.
var LoadKinds = []string{"mortar-bed", "tub", "stone-island", "hearth", "safe", "aquarium", "wall"}

// stated is a range of a Member: zero is one that nobody has said.
func stated(r quantity.Range) quantity.Range {
	if r == (quantity.Range{}) {
		return quantity.Everything
	}
	return r
}

// orUsual is a load, or the usual one where none was said.
func orUsual(r quantity.Range, usual float64) quantity.Range {
	if r == (quantity.Range{}) {
		return quantity.Point(usual)
	}
	return r
}

// mask are the bits of words, or all where there are none; ok is false for a
// word that is none of the choices.
func mask(d *schema.Declaration, words []string) (bits uint64, ok bool) {
	if len(words) == 0 {
		return d.Full().Mask, true
	}
	ok = true
	for _, w := range words {
		bit, known := d.ChoiceBit(w)
		bits, ok = bits|bit, ok && known
	}
	return bits, ok
}
