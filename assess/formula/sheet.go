// Package formula holds arithmetic written once as named lines, so that one
// text is evaluated over ranges, printed with its numbers, and written as the
// cells of a workbook.
package formula

import (
	"underfoot/assess/message"
	"underfoot/assess/quantity"
)

// A Line is one named quantity of a sheet: an input, or the result of an
// expression over the names above it.
type Line struct {
	Name      string          // lower snake case, unique in its sheet
	What      message.Message // what it is, for a reader
	Unit      string          // unit in which Value and Expr are, as printed: in, psf, lb/in, in^4
	Expr      string          // infix text over earlier names; empty for an input
	Value     quantity.Range
	Dimension quantity.Dimension
	Source    message.Message // where an input comes from: the title of a source, or words; or nothing
}

// A Sheet is the lines of one computation, inputs first; the last is the result.
type Sheet struct {
	Title message.Message
	Lines []Line
}

// Stated is the source of an input that has no other than what was said.
var Stated message.Message

// Input adds a stated quantity and gives its value back.
func (s *Sheet) Input(name string, what message.Message, unit string, dim quantity.Dimension, value quantity.Range, source message.Message) quantity.Range {
	s.add(Line{Name: name, What: what, Unit: unit, Dimension: dim, Value: value, Source: source})
	return value
}

// Let adds the result of an expression over the names above it and gives its
// value back. An expression that cannot be read, or that names what does not
// stand above it, is a programming error and panics.
func (s *Sheet) Let(name string, what message.Message, unit string, dim quantity.Dimension, expr string) quantity.Range {
	value := parsed(expr).eval(s)
	s.add(Line{Name: name, What: what, Unit: unit, Dimension: dim, Expr: expr, Value: value})
	return value
}

// Titled is the sheet under a title.
func (s *Sheet) Titled(title message.Message) *Sheet {
	s.Title = title
	return s
}

// Result is the value of the last line. A sheet without lines has none and panics.
func (s *Sheet) Result() quantity.Range { return s.Lines[len(s.Lines)-1].Value }

// Line is the line of a name; ok is false where the sheet has none.
func (s *Sheet) Line(name string) (line Line, ok bool) {
	for i := range s.Lines {
		if s.Lines[i].Name == name {
			return s.Lines[i], true
		}
	}
	return Line{}, false
}

// usualLines is room for the lines of most sheets.
const usualLines = 12

func (s *Sheet) add(l Line) {
	if _, twice := s.Line(l.Name); twice {
		panic("formula: two lines are named " + l.Name)
	}
	if s.Lines == nil {
		s.Lines = make([]Line, 0, usualLines)
	}
	s.Lines = append(s.Lines, l)
}

// value is the value of a line that an expression names.
func (s *Sheet) value(name string) quantity.Range {
	for i := range s.Lines {
		if s.Lines[i].Name == name {
			return s.Lines[i].Value
		}
	}
	panic("formula: " + name + " is used before it is given")
}
