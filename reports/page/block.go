package page

import (
	"strings"

	"underfoot/reports"
)

// A block is the rows of one group of a table as the layout prints them.
type block struct {
	ID      string
	Heading string
	Level   int // of the block's heading; that of its records is one more
	Grid    bool
	Heads   []head
	Records []record
}

type head struct {
	Text   string
	Number bool
}

// A record is one row: its title, and the other cells that say anything.
type record struct {
	Tone  reports.Tone
	Mark  string
	Title reports.Cell
	Cells []cell
	Folds []cell
}

type cell struct {
	Label string
	reports.Cell
	Right, Head bool
}

// blocks are a part's table group by group. Headings go one level deeper where
// the part has a heading of its own.
func blocks(p reports.Part) []block {
	if p.Table == nil {
		return nil
	}
	level := 3
	if p.Heading != "" {
		level = 4
	}
	t := p.Table
	shown := t.Shown(true)
	var out []block
	for _, g := range t.Grouped() {
		b := block{ID: g.ID, Heading: g.Heading, Level: level, Grid: t.Shape == reports.Grid}
		for _, i := range shown {
			b.Heads = append(b.Heads, head{t.Columns[i].Heading, t.Columns[i].Number})
		}
		for _, row := range g.Rows {
			b.Records = append(b.Records, newRecord(t, shown, row, b.Grid))
		}
		out = append(out, b)
	}
	return out
}

// newRecord keeps every shown cell of a grid's row, and of a record's those
// that say anything beside its mark and title.
func newRecord(t *reports.Table, shown []int, row reports.Row, grid bool) record {
	mark, title := t.Find(reports.Mark), t.Find(reports.Title)
	r := record{Tone: row.Tone, Title: row.Cells[title]}
	if mark >= 0 {
		r.Mark = row.Cells[mark].Text
	}
	for _, i := range shown {
		c := row.Cells[i]
		if !grid && (i == mark || i == title || c.Text == "" && !c.Blank) {
			continue
		}
		r.Cells = append(r.Cells, cell{Label: t.Columns[i].Heading, Cell: c, Right: t.Columns[i].Number, Head: i == title})
	}
	for i, c := range t.Columns {
		if c.Role == reports.Fold && row.Cells[i].Text != "" {
			r.Folds = append(r.Folds, cell{Label: c.Heading, Cell: row.Cells[i]})
		}
	}
	return r
}

// Empty reports a cell with nothing to say, which a narrow page leaves out.
func (c cell) Empty() bool { return c.Text == "" && !c.Blank }

// Deeper is the level of the headings inside the block.
func (b block) Deeper() int {
	if b.Heading == "" {
		return b.Level
	}
	return b.Level + 1
}

// tone is the class of a tone's line; the words beside it say the same.
func tone(t reports.Tone) string {
	return [...]string{"plain", "urgent", "waiting", "settled", "quiet"}[t]
}

// An item is a line of a text, with the lines below it that are set in.
type item struct {
	Text  string
	Below []item
}

// outline is the lines of a text as a list; two spaces more set a line in below
// the one before it.
func outline(text string) []item {
	items, _ := nested(strings.Split(text, "\n"), 0)
	return items
}

// nested are the items at a depth, and the lines that are left behind them.
func nested(lines []string, depth int) (items []item, rest []string) {
	for len(lines) > 0 {
		text := strings.TrimLeft(lines[0], " ")
		switch set := (len(lines[0]) - len(text)) / 2; {
		case set < depth:
			return items, lines
		case set > depth && len(items) > 0:
			items[len(items)-1].Below, lines = nested(lines, depth+1)
		default:
			items, lines = append(items, item{Text: text}), lines[1:]
		}
	}
	return items, nil
}

// several reports a text of several lines, which is set as a list.
func several(text string) bool { return strings.Contains(text, "\n") }
