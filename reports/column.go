package reports

import "underfoot/assess/message"

// A ColumnOf is one kind of cell of a table of things: its heading, and what it
// says of each thing. A cell is never put into a place by counting.
type ColumnOf[T any] struct {
	Head   message.Message
	Role   Role
	Width  int  // wished width in characters
	Number bool // set flush right
	Cell   func(T) Cell
}

// A TableOf says how things of one kind are listed: each becomes a row, and each
// column fills its own cell of it.
type TableOf[T any] struct {
	ID      string // lower snake case
	Shape   Shape
	Tone    func(T) Tone // of a row; nil where every row is plain
	Detail  func(T) bool // whether a short print leaves the row out; nil where it leaves none out
	Columns []ColumnOf[T]
}

// Of lists the things in their order.
func (t TableOf[T]) Of(l *message.Language, things []T) *Table {
	out := &Table{ID: t.ID, Shape: t.Shape}
	for _, c := range t.Columns {
		out.Columns = append(out.Columns, Column{Heading: l.Say(c.Head), Role: c.Role, Width: c.Width, Number: c.Number})
	}
	for _, thing := range things {
		out.Rows = append(out.Rows, t.row(thing))
	}
	return out
}

func (t TableOf[T]) row(thing T) Row {
	row := Row{Cells: make([]Cell, len(t.Columns))}
	for i, c := range t.Columns {
		row.Cells[i] = c.Cell(thing)
	}
	if t.Tone != nil {
		row.Tone = t.Tone(thing)
	}
	if t.Detail != nil {
		row.Detail = t.Detail(thing)
	}
	return row
}

// TextColumn is a column of texts under the heading of a key.
func TextColumn[T any](key string, role Role, width int, text func(T) string) ColumnOf[T] {
	return CellColumn(key, role, width, func(thing T) Cell { return Cell{Text: text(thing)} })
}

// CellColumn is a column whose cells are more than texts.
func CellColumn[T any](key string, role Role, width int, cell func(T) Cell) ColumnOf[T] {
	return ColumnOf[T]{Head: message.New(key), Role: role, Width: width, Cell: cell}
}

// numberColumn is a column of numbers, set flush right.
func numberColumn[T any](key string, width int, cell func(T) Cell) ColumnOf[T] {
	c := CellColumn(key, Detail, width, cell)
	c.Number = true
	return c
}

// amountColumn is a column of quantities with their units, set flush right.
func amountColumn[T any](key string, width int, text func(T) string) ColumnOf[T] {
	return numberColumn(key, width, func(thing T) Cell { return Cell{Text: text(thing)} })
}

// blankColumn is a column to be filled in by hand.
func blankColumn[T any](key string, width int) ColumnOf[T] {
	return CellColumn(key, Detail, width, func(T) Cell { return Cell{Blank: true} })
}
