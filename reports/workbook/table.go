package workbook

import (
	"fmt"
	"slices"

	"github.com/xuri/excelize/v2"

	"underfoot/reports"
)

// shown are the places of a table's columns that say anything in it, or in a
// table of the section with the same columns, so that the two stand in line. The
// group is among them, those that stay off paper are last.
func shown(section *reports.Section, t *reports.Table) (places []int, printed int) {
	alike := &reports.Table{Columns: t.Columns}
	for _, p := range section.Parts {
		if p.Table != nil && slices.Equal(p.Table.Columns, t.Columns) {
			alike.Rows = append(alike.Rows, p.Table.Rows...)
		}
	}
	if g := t.Find(reports.Group); g >= 0 {
		places = append(places, g)
	}
	var asides []int
	for _, i := range alike.Shown(true) {
		if t.Columns[i].Role == reports.Aside {
			asides = append(asides, i)
			continue
		}
		places = append(places, i)
	}
	return append(places, asides...), len(places)
}

// columnsOf are the widths of a section's columns: for each the widest that one
// of its tables wishes.
func columnsOf(s *reports.Section) []int {
	var widths []int
	for _, p := range s.Parts {
		var wished []int
		switch {
		case p.Calculation != nil:
			wished = sumWidths
		case p.Build != nil:
			wished = buildWidths
		case p.Table != nil:
			places, _ := shown(s, p.Table)
			for _, i := range places {
				wished = append(wished, p.Table.Columns[i].Width)
			}
		}
		for k, w := range wished {
			if k == len(widths) {
				widths = append(widths, 0)
			}
			widths[k] = max(widths[k], w)
		}
	}
	if widths == nil {
		return []int{proseWidth}
	}
	return widths
}

// table writes a table that can be sorted and filtered. Its columns keep off
// paper what is only for looking things up.
func (s *sheet) table(t *reports.Table) {
	places, printed := shown(s.section, t)
	s.row++
	first := s.row
	for k, i := range places {
		head := headLook
		if t.Columns[i].Number {
			head = numberHead
		}
		s.text(k+1, t.Columns[i].Heading, head)
	}
	s.height(s.tallest(t, places, nil))
	if s.frozen == 1 && first <= 6 {
		s.frozen = first
	}
	if s.printed == len(s.columns) && printed > 1 {
		s.printed = printed
	}
	for r := range t.Rows {
		s.row++
		for k, i := range places {
			s.cell(k+1, &t.Columns[i], &t.Rows[r].Cells[i])
		}
		s.height(s.tallest(t, places, &t.Rows[r]))
	}
	striped := false
	s.try(s.file.AddTable(s.name, &excelize.Table{
		Range: fmt.Sprintf("A%d:%s", first, s.at(len(places))),
		Name:  "list_" + t.ID, StyleName: "TableStyleLight1", ShowRowStripes: &striped,
	}))
}

func (s *sheet) cell(column int, c *reports.Column, cell *reports.Cell) {
	switch {
	case cell.Blank:
		s.text(column, "", blankLook)
	case cell.Number != nil:
		s.number(column, *cell.Number, numberLook)
	case c.Number:
		s.text(column, cell.Text, unknownLook)
	case c.Role == reports.Mark || c.Role == reports.Title:
		s.text(column, cell.Text, markLook)
	default:
		s.text(column, cell.Text, bodyLook)
	}
}

// tallest is the number of lines of a row's tallest cell, or of the headings
// for no row. A row with room for writing is at least two lines high.
func (s *sheet) tallest(t *reports.Table, places []int, row *reports.Row) int {
	most := 1
	for k, i := range places {
		text := t.Columns[i].Heading
		if row != nil {
			text = row.Cells[i].Text
			if row.Cells[i].Blank {
				most = max(most, 2)
			}
		}
		most = max(most, lines(text, s.columns[k]))
	}
	return most
}
