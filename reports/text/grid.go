package text

import (
	"strings"

	"underfoot/assess/plaintext"
	"underfoot/reports"
)

const (
	between  = 2  // columns between two cells
	narrow   = 12 // a cell that has to be narrower is better printed on a line of its own
	longWord = 28 // a word that is longer may be cut
	tallest  = 5
)

// fit is the width of each shown column, with the widest ones made narrower
// until the row fits; ok is false where they would become too narrow to read.
func (p *printer) fit(t *reports.Table, shown []int) (widths []int, ok bool) {
	widths, floors := make([]int, len(shown)), make([]int, len(shown))
	total := between * len(shown) // the indent takes the place of the last gap
	for k, i := range shown {
		widths[k], floors[k] = natural(t.Columns[i].Heading, i, t.Rows)
		total += widths[k]
	}
	for total > p.width {
		widest := -1
		for k := range widths {
			if widths[k] > floors[k] && (widest < 0 || widths[k] > widths[widest]) {
				widest = k
			}
		}
		if widest < 0 {
			return nil, false
		}
		widths[widest]--
		total--
	}
	return widths, !p.tall(shown, widths, t.Rows)
}

// tall reports a row that would take so many lines that it no longer reads as one.
func (p *printer) tall(shown, widths []int, rows []reports.Row) bool {
	for _, row := range rows {
		for k, i := range shown {
			if len(plaintext.Wrap(row.Cells[i].Text, widths[k])) > tallest {
				return true
			}
		}
	}
	return false
}

// natural is the width that a column has where there is room, and the least at
// which it can be read: its longest word, within reason.
func natural(heading string, i int, rows []reports.Row) (w, least int) {
	w, least = plaintext.Width(heading), narrow
	for _, row := range rows {
		if row.Cells[i].Blank {
			w = max(w, len(blank))
		}
		for l := range strings.SplitSeq(row.Cells[i].Text, "\n") {
			w = max(w, plaintext.Width(l))
			for word := range strings.FieldsSeq(l) {
				least = max(least, min(plaintext.Width(word), longWord))
			}
		}
	}
	return w, min(w, least)
}

func (p *printer) grid(t *reports.Table, shown, widths []int, rows []reports.Row) {
	p.gap()
	heads, rules := make([]string, len(shown)), make([]string, len(shown))
	for k, i := range shown {
		heads[k], rules[k] = t.Columns[i].Heading, strings.Repeat("-", widths[k])
	}
	p.gridRow(t, shown, widths, heads, reports.Waiting)
	p.gridRow(t, shown, widths, rules, reports.Plain)
	for _, row := range rows {
		texts := make([]string, len(shown))
		for k, i := range shown {
			texts[k] = row.Cells[i].Text
			if row.Cells[i].Blank {
				texts[k] = strings.Repeat("_", widths[k])
			}
		}
		p.gridRow(t, shown, widths, texts, reports.Plain)
	}
}

// gridRow prints one row on as many lines as its longest cell needs.
func (p *printer) gridRow(t *reports.Table, shown, widths []int, texts []string, tone reports.Tone) {
	cells := make([][]string, len(texts))
	height := 0
	for k, text := range texts {
		cells[k] = plaintext.Wrap(text, widths[k])
		height = max(height, len(cells[k]))
	}
	for n := range height {
		parts := make([]string, len(cells))
		for k, lines := range cells {
			text := ""
			if n < len(lines) {
				text = lines[n]
			}
			parts[k] = pad(text, widths[k], t.Columns[shown[k]].Number)
		}
		p.line("  ", strings.TrimRight(strings.Join(parts, strings.Repeat(" ", between)), " "), styleOf(tone))
	}
}
