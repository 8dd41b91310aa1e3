package workbook

import (
	"math"

	"github.com/xuri/excelize/v2"
)

// A cellStyle is one way to set a cell. The library's own styles would fall to a
// serif face, so each look names its face and size.
type cellStyle struct {
	bold, right, wrap bool
	size              float64
	fill, ink         string // RRGGBB, or empty
	line              lineKind
	format            string // of numbers, or empty
	open              bool   // may be filled in where a sheet is locked
}

// showing is the look with as many digits as a reader needs of a number: about
// four that count, unless the look has a format of its own. The cell keeps all.
func (l cellStyle) showing(v float64) cellStyle {
	if l.format != "" {
		return l
	}
	switch size := math.Abs(v); {
	case v == math.Trunc(v) && size < 1e15:
		l.format = "0"
	case size < 0.001 || size >= 1e15:
		l.format = "0.000E+00"
	case size < 10:
		l.format = "0.0000"
	case size < 1000:
		l.format = "0.00"
	default:
		l.format = "0"
	}
	return l
}

// gap keeps a number as wide as two brackets off the next column; an indent is
// lost on some cells in one office program.
const gap = "_)_)"

type lineKind uint8

const (
	noLine lineKind = iota
	thin
	under // below the cell, where something is written by hand
)

const (
	face      = "Arial"
	bodySize  = 10
	inkColour = "1D2330"
	headFill  = "E4E7EE"
	inputFill = "FBF3DC"
	linkInk   = "2F4B75"
)

// The looks of the workbook.
var (
	titleLook   = cellStyle{bold: true, size: 15}
	headingLook = cellStyle{bold: true, size: 12}
	proseLook   = cellStyle{wrap: true}
	strongLook  = cellStyle{wrap: true, bold: true}
	headLook    = cellStyle{wrap: true, bold: true, fill: headFill, line: thin}
	numberHead  = cellStyle{wrap: true, bold: true, right: true, format: "@", fill: headFill, line: thin}
	bodyLook    = cellStyle{wrap: true, line: thin}
	markLook    = cellStyle{wrap: true, bold: true, line: thin}
	numberLook  = cellStyle{right: true, line: thin}
	unknownLook = cellStyle{right: true, wrap: true, line: thin, format: "@"}
	inputLook   = cellStyle{right: true, line: thin, fill: inputFill, open: true}
	blankLook   = cellStyle{wrap: true, line: under, fill: inputFill, open: true}
	linkLook    = cellStyle{ink: linkInk}
)

// style is the number of a look, made once.
func (b *book) style(l cellStyle) int {
	if id, ok := b.styles[l]; ok {
		return id
	}
	id, err := b.file.NewStyle(l.excel())
	b.try(err)
	b.styles[l] = id
	return id
}

func (l cellStyle) excel() *excelize.Style {
	size, ink := l.size, l.ink
	if size == 0 {
		size = bodySize
	}
	if ink == "" {
		ink = inkColour
	}
	s := &excelize.Style{
		Font:       &excelize.Font{Family: face, Size: size, Bold: l.bold, Color: ink},
		Alignment:  &excelize.Alignment{Vertical: "top", WrapText: l.wrap},
		Border:     l.line.borders(),
		Protection: &excelize.Protection{Locked: !l.open},
	}
	if l.right {
		s.Alignment.Horizontal = "right"
	}
	if l.fill != "" {
		s.Fill = excelize.Fill{Type: "pattern", Pattern: 1, Color: []string{l.fill}}
	}
	if l.format != "" {
		format := l.format + gap
		s.CustomNumFmt = &format
	}
	return s
}

func (k lineKind) borders() []excelize.Border {
	const grey, dark = "B9C0CC", inkColour
	switch k {
	case thin:
		return []excelize.Border{{Type: "bottom", Color: grey, Style: 1}}
	case under:
		return []excelize.Border{{Type: "bottom", Color: dark, Style: 1}}
	}
	return nil
}
