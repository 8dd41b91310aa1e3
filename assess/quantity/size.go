package quantity

import (
	"fmt"
	"slices"

	"underfoot/assess/message"
)

// A Section is the size across of a piece of lumber. Nominal is the trade's
// name, 2x10, where one was given: the dressed size behind it is found in a
// table, and Width and Depth are Everything. Otherwise they are the measured
// sizes in inches, the greater one the depth, since a joist stands on edge.
type Section struct {
	Nominal      string
	Width, Depth Range
}

// nominalWidths and nominalDepths are the whole inches in which dimension
// lumber and timbers are named.
var (
	nominalWidths = []int{1, 2, 3, 4, 6, 8}
	nominalDepths = []int{2, 3, 4, 5, 6, 8, 10, 12, 14, 16}
)

// deepest is the greatest depth in inches that is read as a size of lumber.
const deepest = 30

// ReadSize reads the size of a joist or beam: a nominal one such as 2x10,
// 2"x10" or 2 by 10, or a measured one such as 1.5x9.25, 1-1/2 x 9-1/4 in,
// 47x220mm or, for old full-sawn wood, full 2x10. Two bare numbers of 20 and
// more are millimetres. A nominal size that no lumber has, such as 2x9, is
// *Unclear with the sizes beside it; anything else is *Malformed.
func ReadSize(text string) (Section, error) {
	s, ok := clean(text)
	if !ok {
		return Section{}, notSize(text)
	}
	p := &reader{scanner: scanner{s: s}, d: Length, text: text}
	full := p.oneOf("full-sawn", "full sawn", "full", "rough", "true", "actual")
	a, ok1 := p.edge()
	ok = ok1 && p.oneOf("x", "by", "*")
	b, ok2 := p.edge()
	if !ok || !ok2 || !p.done() {
		return Section{}, notSize(text)
	}
	if !full && a.isNominal() && b.isNominal() {
		return nominal(text, int(a.number.value), int(b.number.value))
	}
	return measured(text, a, b)
}

// edge passes one side of a size.
func (p *reader) edge() (m measure, ok bool) {
	m.number, ok = p.number()
	m.unit = p.unit(Length)
	return m, ok && !m.number.grouped
}

// isNominal reports whether the side may belong to a nominal size: whole
// inches, below the numbers that are millimetres.
func (m measure) isNominal() bool {
	v := m.number.value
	return (m.unit == nil || m.unit == inch) && !m.number.fraction && v == float64(int(v)) && v < smallestMillimetres
}

// smallestMillimetres is the bare whole number from which a side is in
// millimetres: no lumber is 20 in by 20 in, and none is thinner than 20 mm.
const smallestMillimetres = 20

// nominal is the section of a nominal size.
func nominal(text string, a, b int) (Section, error) {
	width, depth := min(a, b), max(a, b)
	if slices.Contains(nominalWidths, width) && slices.Contains(nominalDepths, depth) {
		return Section{fmt.Sprintf("%dx%d", width, depth), Everything, Everything}, nil
	}
	if width < 1 || width > 8 || depth > 16 {
		return Section{}, notSize(text)
	}
	return Section{}, &Unclear{shown(text), beside(width, depth)}
}

// beside are the sizes next to one that no lumber has, and the measured size
// that may have been meant.
func beside(width, depth int) []string {
	w := nearest(nominalWidths, width)[0]
	var texts []string
	for _, d := range nearest(nominalDepths, depth) {
		texts = append(texts, fmt.Sprintf("%dx%d", w, d))
	}
	if width == 2 {
		return append(texts, fmt.Sprintf("1-1/2 x %d in", depth))
	}
	return append(texts, fmt.Sprintf("full %dx%d", width, depth))
}

// nearest are the members of a rising list on both sides of v, which is not
// above its last, or v alone.
func nearest(list []int, v int) []int {
	i, found := slices.BinarySearch(list, v)
	switch {
	case found:
		return []int{v}
	case i == 0:
		return list[:1]
	}
	return list[i-1 : i+1]
}

// measured is the section of two measured sides. A bare side takes the unit of
// the other.
func measured(text string, a, b measure) (Section, error) {
	ua, ub := a.unit, b.unit
	if ua == nil && ub == nil {
		ua = inch
		if a.number.value >= smallestMillimetres && b.number.value >= smallestMillimetres {
			ua = millimetre
		}
	}
	if ua == nil {
		ua = ub
	}
	if ub == nil {
		ub = ua
	}
	x, y := ua.base(a.number.value), ub.base(b.number.value)
	if min(x, y) <= 0 || max(x, y) > deepest {
		return Section{}, notSize(text)
	}
	return Section{"", Point(min(x, y)), Point(max(x, y))}, nil
}

// notSize is the refusal of a text that is no size of lumber.
func notSize(text string) error {
	return &Malformed{shown(text), message.New("quantity/want.size"), []string{"2x10", "1-1/2 x 9-1/4 in", "47x220mm"}}
}
