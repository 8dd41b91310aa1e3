package reports

import "slices"

// A Role says what a column is for.
type Role uint8

// The roles. Group says what a row belongs to and may be printed once for
// several rows; Mark is a word or two on how things stand; Title names the row.
// An Aside is left out of a short print. A Fold is for the page alone, which
// shows it behind a line that opens it.
const (
	Detail Role = iota
	Group
	Mark
	Title
	Aside
	Fold
)

// A Shape is how rows are best printed where there is room.
type Shape uint8

// Records have long texts and read one below the other; a Grid has short cells
// that are compared down a column.
const (
	Records Shape = iota
	Grid
)

// A Table is rows under named columns.
type Table struct {
	ID      string // lower snake case
	Shape   Shape
	Columns []Column
	Rows    []Row
}

// A Column is one kind of cell of a table.
type Column struct {
	Heading string
	Role    Role
	Width   int  // wished width in characters
	Number  bool // set flush right
}

// A Row is one thing.
type Row struct {
	Tone   Tone
	Cells  []Cell
	Detail bool // left out of a short print
}

// A Cell is what one column says of a row.
type Cell struct {
	Text   string   // lines; one set in by two spaces more belongs below the one before it
	Number *float64 // the number that Text shows, or nil
	Blank  bool     // to be filled in by hand
	Code   bool     // Text is in the words of a record
	ID     string   // what links point to; of a group, of its heading
	Links  []Link   // what Text names, where that stands in the view
}

// LinkCell is a cell of links, one behind the other.
func LinkCell(links []Link) Cell { return Cell{Text: joined(links, "; "), Links: links} }

// Find is the place of the first column of a role, or -1.
func (t *Table) Find(role Role) int {
	return slices.IndexFunc(t.Columns, func(c Column) bool { return c.Role == role })
}

// Shown are the places of the columns that say anything, the group's and folds
// left out; asides are among them where they are wanted.
func (t *Table) Shown(asides bool) []int {
	var out []int
	for i, c := range t.Columns {
		if c.Role == Group || c.Role == Fold || c.Role == Aside && !asides {
			continue
		}
		if slices.ContainsFunc(t.Rows, func(r Row) bool { return r.Cells[i].Text != "" || r.Cells[i].Blank }) {
			out = append(out, i)
		}
	}
	return out
}

// Grouped are the rows in order, those that follow each other in one group
// together.
func (t *Table) Grouped() []RowGroup {
	g := t.Find(Group)
	if g < 0 {
		return []RowGroup{{Rows: t.Rows}}
	}
	var out []RowGroup
	for i, row := range t.Rows {
		if heading := row.Cells[g].Text; i == 0 || heading != out[len(out)-1].Heading {
			out = append(out, RowGroup{ID: row.Cells[g].ID, Heading: heading})
		}
		last := &out[len(out)-1]
		last.Rows = append(last.Rows, row)
	}
	return out
}

// A RowGroup is rows of one group, with its name.
type RowGroup struct {
	ID      string // what links point to; may be empty
	Heading string
	Rows    []Row
}
