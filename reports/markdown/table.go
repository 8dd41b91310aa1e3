package markdown

import (
	"strings"

	"underfoot/reports"
)

// table prints a grid as a table with pipes, and records as lists under headings,
// group by group.
func (p *printer) table(t *reports.Table, level int) {
	shown := t.Shown(true)
	for _, g := range t.Grouped() {
		under := level
		if g.Heading != "" {
			p.heading(level, g.ID, g.Heading)
			under++
		}
		if t.Shape == reports.Grid {
			p.grid(t, shown, g.Rows)
			continue
		}
		for _, row := range g.Rows {
			p.record(t, shown, row, under)
		}
	}
}

func (p *printer) record(t *reports.Table, shown []int, row reports.Row, level int) {
	mark, title := t.Find(reports.Mark), t.Find(reports.Title)
	heading := row.Cells[title].Text
	if mark >= 0 && row.Cells[mark].Text != "" {
		heading = row.Cells[mark].Text + ": " + heading
	}
	p.heading(level, row.Cells[title].ID, heading)
	p.gap()
	for _, i := range shown {
		if c := row.Cells[i]; i != mark && i != title && (c.Text != "" || c.Blank) {
			p.labelled(t.Columns[i].Heading, marked(c))
		}
	}
}

func (p *printer) grid(t *reports.Table, shown []int, rows []reports.Row) {
	p.gap()
	heads, rules := make([]string, len(shown)), make([]string, len(shown))
	for k, i := range shown {
		heads[k], rules[k] = literal(t.Columns[i].Heading), "---"
		if t.Columns[i].Number {
			rules[k] = "---:"
		}
	}
	p.row(heads)
	p.row(rules)
	for _, row := range rows {
		cells := make([]string, len(shown))
		for k, i := range shown {
			c := row.Cells[i]
			cells[k] = strings.ReplaceAll(marked(c), "\n", "<br>")
			if c.ID != "" {
				cells[k] = anchor(c.ID) + cells[k]
			}
		}
		p.row(cells)
	}
}

func (p *printer) row(cells []string) {
	for i, c := range cells {
		cells[i] = strings.ReplaceAll(c, "|", `\|`)
	}
	p.line("| " + strings.Join(cells, " | ") + " |")
}
