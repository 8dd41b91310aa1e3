// Package formula holds arithmetic written once as named lines, so that one
// text is evaluated over ranges, printed with its numbers, and written as the
// cells of a workbook.
package formula

import "underfoot/assess/quantity"

// A Line is one named quantity of a sheet: an input, or the result of an
// expression over the names above it.
type Line struct {
	Name      string // lower snake case, unique in its sheet
	What      string // what it is, for a reader
	Unit      string // unit in which Value and Expr are, as printed: in, psf, lb/in, in^4
	Expr      string // infix text over earlier names; empty for an input
	Value     quantity.Range
	Dimension quantity.Dimension
	Source    string // citation of an input figure, or empty
}

// A Sheet is the lines of one computation, inputs first; the last is the result.
type Sheet struct {
	Title string
	Lines []Line
}
