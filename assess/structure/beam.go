package structure

import (
	"strconv"
	"strings"
)

// A part is a fraction of w L^4 / (E I) or P L^3 / (E I) as an expression has it.
type part struct{ over, under string }

// A beam is the greatest deflection in any span of a joist over equal spans,
// for live load on the worst spans, dead load on all, and a point load in the
// middle of an end span.
type beam struct{ live, dead, point part }

// beams are by the number of spans. Dead and live load have their greatest
// deflection at slightly different places; their sum is a little more than the
// deflection at any one place, never less.
var beams = [...]beam{
	1: {part{"5", "384"}, part{"5", "384"}, part{"", "48"}},
	2: {part{"", "109.283"}, part{"", "184.634"}, part{"", "66.6133"}},
	3: {part{"", "100.832"}, part{"", "145.260"}, part{"", "68.3650"}},
}

// A term is one load in a sum of deflections.
type term struct {
	load  string // name of its line
	of    part
	power int // of the span: 4 for a line load, 3 for a point load
}

// upon is the term as an expression with the span to a power lower by less.
func (t term) upon(stiffness string, less int) string {
	return t.over(less) + " / (" + t.of.under + " * " + stiffness + ")"
}

// over is what stands above the line.
func (t term) over(less int) string {
	text := t.load + " * span^" + strconv.Itoa(t.power-less)
	if t.of.over != "" {
		text = t.of.over + " * " + text
	}
	return text
}

// sag is the deflection of the terms together.
func sag(terms []term, stiffness string) string {
	texts := make([]string, len(terms))
	for i, t := range terms {
		texts[i] = t.upon(stiffness, 0)
	}
	return strings.Join(texts, " + ")
}

// spanOverSag is span over deflection, written so that the span stands below
// the line alone: its ends are then those that some floor within the inputs
// really has.
func spanOverSag(terms []term, stiffness string) string {
	if len(terms) == 1 {
		return terms[0].of.under + " * " + stiffness + " / (" + terms[0].over(1) + ")"
	}
	texts := make([]string, len(terms))
	for i, t := range terms {
		texts[i] = t.upon(stiffness, 1)
	}
	return "1 / (" + strings.Join(texts, " + ") + ")"
}
