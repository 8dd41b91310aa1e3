package text

import (
	"slices"

	"underfoot/reports"
)

// table prints a grid as columns where they fit, and anything else row by row.
func (p *printer) table(t *reports.Table) {
	t = p.wanted(t)
	shown := t.Shown(p.all)
	var widths []int
	columns := false
	if t.Shape == reports.Grid {
		widths, columns = p.fit(t, shown)
	}
	for _, group := range t.Grouped() {
		if group.Heading != "" {
			p.gap()
			p.paragraph("", group.Heading, strong)
		}
		if columns {
			p.grid(t, shown, widths, group.Rows)
			continue
		}
		for _, row := range group.Rows {
			p.record(t, shown, row)
		}
	}
}

// wanted is the table with the rows that are printed.
func (p *printer) wanted(t *reports.Table) *reports.Table {
	if p.all {
		return t
	}
	short := *t
	short.Rows = slices.DeleteFunc(slices.Clone(t.Rows), func(r reports.Row) bool { return r.Detail })
	return &short
}

// record prints a row as its title, with the mark before it, and a line for
// each further cell.
func (p *printer) record(t *reports.Table, shown []int, row reports.Row) {
	p.gap()
	mark, title := t.Find(reports.Mark), t.Find(reports.Title)
	text := row.Cells[title].Text
	if mark >= 0 && row.Cells[mark].Text != "" {
		word := "[" + row.Cells[mark].Text + "]"
		p.lead("  ", word, word+" "+text, styleOf(row.Tone))
	} else {
		p.lead("  ", "", text, plain)
	}
	for _, i := range shown {
		if i == mark || i == title {
			continue
		}
		p.cell(t.Columns[i].Heading, row.Cells[i])
	}
}

const blank = "______________"

func (p *printer) cell(heading string, c reports.Cell) {
	switch {
	case c.Blank:
		p.labelled("    ", heading, blank, plain)
	case c.Text != "":
		p.labelled("    ", heading, c.Text, plain)
	}
}
