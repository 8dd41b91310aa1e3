package takeoff

import (
	"strings"

	"underfoot/assess/figure"
	"underfoot/assess/quantity"
)

// note is where the figures of an amount come from, after what is to be known
// of the amount itself.
func note(first string, from []figure.Figure) string {
	parts := []string{}
	if first != "" {
		parts = append(parts, first)
	}
	for _, f := range from {
		parts = append(parts, cite(f))
	}
	return strings.Join(parts, "; ")
}

// cite is a figure in words: what it is, its value, how it is known and what
// speaks against it.
func cite(f figure.Figure) string {
	s := f.What + ": " + quantity.Write(f.Dimension, quantity.Point(f.Value), quantity.US) + " (" + known(f.Source) + ")"
	if f.Note != "" {
		s += ", " + f.Note
	}
	if f.Differs != "" {
		s += ", but " + f.Differs
	}
	return s
}

// known is how a source knows its figure.
func known(s figure.Source) string {
	switch s.Known {
	case "memory":
		return texts()["known"].Memory
	case "common-practice":
		return texts()["known"].Practice
	}
	return s.Title + ", " + s.Edition
}
