package text

import (
	"strings"

	"underfoot/reports"
)

// table prints a grid as columns where they fit, and anything else row by row.
func (p *printer) table(t *reports.Table) {
	shown := p.shown(t)
	group := ""
	for start := 0; start < len(t.Rows); {
		end := start + 1
		if g := column(t, reports.Group); g >= 0 {
			for end < len(t.Rows) && t.Rows[end].Cells[g].Text == t.Rows[start].Cells[g].Text {
				end++
			}
			group = t.Rows[start].Cells[g].Text
		} else {
			end = len(t.Rows)
		}
		if group != "" {
			p.gap()
			p.paragraph("", group, strong)
		}
		p.rows(t, shown, t.Rows[start:end])
		start = end
	}
}

func (p *printer) rows(t *reports.Table, shown []int, rows []reports.Row) {
	if t.Shape == reports.Grid {
		if widths, ok := p.fit(t, shown, rows); ok {
			p.grid(t, shown, widths, rows)
			return
		}
	}
	for _, row := range rows {
		p.record(t, shown, row)
	}
}

// shown are the columns that have something to say, without the group, and
// without the asides of a short print.
func (p *printer) shown(t *reports.Table) []int {
	var out []int
	for i, c := range t.Columns {
		if c.Role == reports.Group || c.Role == reports.Aside && !p.all {
			continue
		}
		for _, row := range t.Rows {
			if row.Cells[i].Text != "" || row.Cells[i].Blank {
				out = append(out, i)
				break
			}
		}
	}
	return out
}

// column is the place of the first column of a role, or -1.
func column(t *reports.Table, role reports.Role) int {
	for i, c := range t.Columns {
		if c.Role == role {
			return i
		}
	}
	return -1
}

// record prints a row as its title, with the mark before it, and a line for
// each further cell.
func (p *printer) record(t *reports.Table, shown []int, row reports.Row) {
	p.gap()
	mark, title := column(t, reports.Mark), column(t, reports.Title)
	text := row.Cells[title].Text
	if mark >= 0 && row.Cells[mark].Text != "" {
		p.marked(row.Cells[mark].Text, text, row.Tone)
	} else {
		p.hanging("  ", text, 4, plain)
	}
	for _, i := range shown {
		if i == mark || i == title {
			continue
		}
		p.cell(t.Columns[i].Heading, row.Cells[i])
	}
}

func (p *printer) marked(mark, title string, tone reports.Tone) {
	mark = "[" + mark + "]"
	for i, l := range wrap(mark+" "+title, p.width-4) {
		if rest, ok := strings.CutPrefix(l, mark); ok && i == 0 {
			p.out.WriteString("  " + p.styled(mark, styleOf(tone)) + rest + "\n")
			continue
		}
		p.line("    ", l, plain)
	}
}

const blank = "______________"

func (p *printer) cell(heading string, c reports.Cell) {
	switch {
	case c.Blank:
		p.labelled("    ", heading, blank, plain)
	case strings.Contains(c.Text, "\n"):
		p.line("    ", heading+":", plain)
		for l := range strings.SplitSeq(c.Text, "\n") {
			p.hanging("      - ", l, 8, plain)
		}
	case c.Text != "":
		p.labelled("    ", heading, c.Text, plain)
	}
}
