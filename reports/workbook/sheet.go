package workbook

import (
	"fmt"
	"strings"

	"github.com/xuri/excelize/v2"

	"underfoot/reports"
)

// A sheet is one sheet being filled from the top.
type sheet struct {
	*book
	section    *reports.Section
	name, part string
	columns    []int // widths in characters
	printed    int   // how many of the columns go on paper
	row        int   // the last row used
	frozen     int   // rows that stay in sight
}

// fill writes a section: heading, lead, and its parts one below the other. The
// first has the lead of the whole before its own.
func (s *sheet) fill(first bool) {
	section := s.section
	s.printed = len(s.columns)
	for i, w := range s.columns {
		name, _ := excelize.ColumnNumberToName(i + 1)
		s.try(s.file.SetColWidth(s.name, name, name, float64(w)))
	}
	s.line(section.Heading, titleLook)
	s.frozen = s.row
	if first {
		s.paras(s.view.Lead)
	}
	s.paras(section.Lead)
	if section.ID == reports.CalculationsSection || section.ID == reports.HeightsSection {
		s.paras([]reports.Para{{Text: s.say("report/workbook.inputs")}})
	}
	for i := range section.Parts {
		s.addPart(&section.Parts[i])
	}
}

func (s *sheet) addPart(p *reports.Part) {
	s.row++
	if p.Heading != "" {
		s.line(p.Heading, headingLook)
	}
	s.paras(p.Lead)
	switch {
	case p.Calculation != nil:
		s.calculation(p.Calculation)
	case p.Build != nil:
		s.build(p.Build)
	case p.Table != nil:
		s.table(p.Table)
	}
}

// line writes one line across the sheet.
func (s *sheet) line(text string, l cellStyle) {
	s.row++
	s.text(1, text, l)
	if l.size > bodySize {
		s.try(s.file.SetRowHeight(s.name, s.row, l.size*1.5))
	}
}

// paras writes prose over the printed width, as high as it needs.
func (s *sheet) paras(list []reports.Para) {
	for _, p := range list {
		text := p.Text
		if p.Label != "" && text != "" {
			text = p.Label + ": " + strings.ReplaceAll(text, "\n", "; ")
		} else if p.Label != "" {
			text = p.Label
		}
		l := proseLook
		if p.Tone == reports.Urgent {
			l = strongLook
		}
		s.line(text, l)
		width := min(proseWidth, s.width(s.printed))
		last := 1
		for last < s.printed && s.width(last) < width {
			last++
		}
		s.try(s.file.MergeCell(s.name, s.at(1), s.at(last)))
		s.height(lines(text, s.width(last)))
	}
}

// proseWidth is how many characters a line of prose has at most.
const proseWidth = 110

// width is that of the first n columns together.
func (s *sheet) width(n int) int {
	w := 0
	for _, c := range s.columns[:n] {
		w += c
	}
	return w
}

// at is the cell of a column in the present row.
func (s *sheet) at(column int) string { return cellName(column, s.row) }

func cellName(column, row int) string {
	name, err := excelize.CoordinatesToCellName(column, row)
	if err != nil {
		panic(err) // columns and rows count from 1
	}
	return name
}

func (s *sheet) text(column int, text string, l cellStyle) {
	cell := s.at(column)
	s.try(s.file.SetCellStr(s.name, cell, cellText(text)))
	s.dress(cell, l)
}

func (s *sheet) number(column int, v float64, l cellStyle) {
	cell := s.at(column)
	s.try(s.file.SetCellFloat(s.name, cell, v, -1, 64))
	s.dress(cell, l.showing(v))
}

// formula writes a formula and remembers what it gives: a float64 or a string.
func (s *sheet) formula(column int, text string, result any, l cellStyle) {
	cell := s.at(column)
	s.try(s.file.SetCellFormula(s.name, cell, text))
	if v, ok := result.(float64); ok {
		l = l.showing(v)
	}
	s.dress(cell, l)
	s.formulas[s.part][cell] = result
}

func (s *sheet) dress(cell string, l cellStyle) {
	s.try(s.file.SetCellStyle(s.name, cell, cell, s.style(l)))
}

// lineHeight is that of the body's lines in points.
const lineHeight = 13.5

// height sets the present row as high as n lines, which the programs that open
// the file do not do by themselves for wrapped and merged cells.
func (s *sheet) height(n int) {
	s.try(s.file.SetRowHeight(s.name, s.row, min(excelize.MaxRowHeight, lineHeight*float64(max(n, 1))+2)))
}

// lines is about how many lines a text takes in a cell of the width. Widths count
// digits; the letters of a text are on average a little narrower.
func lines(text string, width int) int {
	n := 0
	width += width / 6
	for line := range strings.SplitSeq(text, "\n") {
		used := 0
		n++
		for word := range strings.FieldsSeq(line) {
			w := units(word)
			if used > 0 && used+1+w > width {
				n, used = n+1, 0
			}
			if used > 0 {
				used++
			}
			used += w
			if used > width {
				n, used = n+(used-1)/width, (used-1)%width+1
			}
		}
	}
	return n
}

// define names a cell of the sheet.
func (s *sheet) define(name string, column int) {
	letter, _ := excelize.ColumnNumberToName(column)
	s.try(s.file.SetDefinedName(&excelize.DefinedName{
		Name: name, RefersTo: fmt.Sprintf("%s!$%s$%d", reference(s.name), letter, s.row),
	}))
}
