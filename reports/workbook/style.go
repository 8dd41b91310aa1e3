package workbook

import "github.com/xuri/excelize/v2"

// A look is one way to set a cell. The library's own styles would fall to a
// serif face, so each look names its face and size.
type look struct {
	bold, center, right, wrap bool
	size                      float64
	fill, ink                 string // RRGGBB, or empty
	line                      lineKind
	format                    string // of numbers, or empty
	open                      bool   // may be filled in where a sheet is locked
}

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
	titleLook   = look{bold: true, size: 15}
	headingLook = look{bold: true, size: 12}
	proseLook   = look{wrap: true}
	strongLook  = look{wrap: true, bold: true}
	headLook    = look{wrap: true, bold: true, fill: headFill, line: thin}
	bodyLook    = look{wrap: true, line: thin}
	markLook    = look{wrap: true, bold: true, line: thin}
	numberLook  = look{right: true, line: thin, format: "General"}
	inputLook   = look{right: true, line: thin, format: "General", fill: inputFill, open: true}
	blankLook   = look{wrap: true, line: under, fill: inputFill, open: true}
	linkLook    = look{ink: linkInk}
)

// style is the number of a look, made once.
func (b *book) style(l look) int {
	if id, ok := b.styles[l]; ok {
		return id
	}
	id, err := b.file.NewStyle(l.excel())
	b.try(err)
	b.styles[l] = id
	return id
}

func (l look) excel() *excelize.Style {
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
	if l.format != "" && l.format != "General" {
		s.CustomNumFmt = &l.format
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
