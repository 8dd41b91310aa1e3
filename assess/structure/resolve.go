package structure

import (
	"fmt"

	"underfoot/assess/figure"
	"underfoot/assess/message"
	"underfoot/assess/quantity"
)

// A row is a member read: the joist, its strengths, and what was taken for granted.
type row struct {
	joist           Joist
	bending, shear  quantity.Range // psi, all factors in; Everything where no table has them
	strengthSources []figure.Source
	tested          bool // the stiffness was measured
	classes         bool // every wood that is possible is a strength class
	species, grades uint64
	creep           figure.Figure
	assumed         []message.Message
}

// read turns a member and its loads into numbers; refusal is why it cannot.
func (m Member) read(loads Loads, region string) (r row, refusal message.Message) {
	if refusal = m.refused(); !refusal.IsZero() {
		return r, refusal
	}
	section, ok := m.section()
	var okSpecies, okGrades bool
	r.species, okSpecies = mask(&species, m.Species)
	r.grades, okGrades = mask(&grade, m.Grades)
	switch {
	case !ok:
		return r, refuse("size")
	case !okSpecies || !okGrades:
		return r, refuse("wood")
	}
	r.joist = Joist{Width: section.Width, Depth: section.Depth, Span: stated(m.Span), Spacing: stated(m.Spacing), Spans: spansOf(m.Continuity),
		Live: r.load("live", loads.Live, 40), Dead: r.load("dead", loads.Dead, 10), Point: loads.Point, Softer: m.softer(),
		SizeOrigin: sizeOrigin()}
	if !r.wood(region) {
		return r, refuse("wood")
	}
	r.measured(m)
	r.strengths(m, region, nominalOf(section))
	r.creep = figure.LumberFactor("creep-dry")
	if m.Wet {
		r.creep = figure.LumberFactor("creep-wet")
	}
	r.assume(m, section)
	return r, message.Message{}
}

// section is the size of the joists; the nominal name stays with it. ok is
// false for a text that is no size.
func (m Member) section() (s quantity.Section, ok bool) {
	s = quantity.Section{Width: quantity.Everything, Depth: quantity.Everything}
	if m.Size != "" {
		read, err := quantity.ReadSize(m.Size)
		if err != nil {
			return s, false
		}
		if s = read; s.Nominal != "" {
			w, d, dressed := figure.Dressed(s.Nominal)
			if !dressed {
				return s, false
			}
			s.Width, s.Depth = quantity.Point(w), quantity.Point(d)
		}
	}
	if w := stated(m.Width); w != quantity.Everything {
		s.Width = w
	}
	if d := stated(m.Depth); d != quantity.Everything {
		s.Depth = d
	}
	return s, true
}

// nominalOf is the nominal size whose factors a section has: its own name, or
// for a measured one the next nominal depth that is not less, whose factor is
// not more. Empty while the depth is not known.
func nominalOf(s quantity.Section) string {
	if s.Nominal != "" || !s.Depth.Bounded() || !s.Width.Bounded() {
		return s.Nominal
	}
	thickness := "2"
	if s.Width.Lo >= 3.5 {
		thickness = "4"
	}
	for _, deep := range []int{4, 5, 6, 8, 10, 12} {
		if s.Depth.Hi <= float64(deep) {
			return fmt.Sprintf("%sx%d", thickness, deep)
		}
	}
	return thickness + "x14"
}

// spansOf is the number of spans that a word of joist.continuity counts as;
// two or more counts as three, whose live load bends it more.
func spansOf(word string) int {
	switch word {
	case "two-spans":
		return 2
	case "three-spans", "two-or-more-spans":
		return 3
	}
	return 1
}

// load is a load, or the usual one, which is then told.
func (r *row) load(name string, given quantity.Range, usual float64) quantity.Range {
	if given == (quantity.Range{}) {
		r.assumed = append(r.assumed, message.New("structure/assumed."+name, "load", usual))
	}
	return orUsual(given, usual)
}

// assume tells what was taken for granted.
func (r *row) assume(m Member, section quantity.Section) {
	add := func(name string, holes ...any) {
		r.assumed = append(r.assumed, message.New("structure/assumed."+name, holes...))
	}
	if !r.tested && (len(m.Grades) != 1 || len(m.Species) != 1 && !r.classes) {
		add("wood")
	}
	if section.Nominal != "" && stated(m.Depth) == quantity.Everything {
		add("dressed", "name", section.Nominal)
	}
	if !m.Wet {
		add("dry")
	}
	if m.Continuity == "" || m.Continuity == "one-span" {
		add("one_span")
	} else {
		add("spans")
	}
	add("clear")
}
