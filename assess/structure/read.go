package structure

import (
	"underfoot/assess/figure"
	"underfoot/assess/logic"
	"underfoot/assess/quantity"
	"underfoot/assess/result"
)

// inputs are the facts from which a joist is read.
var inputs = []string{"joist.size", "joist.depth", "joist.width", species.ID, grade.ID, "joist.spacing", "joist.span",
	"joist.live_load", "joist.dead_load"}

// readJoist is what the answers say of the joists, and the answers that would
// say it more narrowly.
func readJoist(region string, t result.Thing) (j Joist, deps logic.Deps) {
	take := func(name string) quantity.Range {
		f := t.Fact(name)
		deps = deps.Union(f.Deps)
		return f.Set.Range
	}
	var section logic.Deps
	j.Width, j.Depth, section = readSection(t)
	deps = deps.Union(section)
	j.SizeOrigin = sizeOrigin()
	j.Span, j.Spacing = take("joist.span"), take("joist.spacing")
	j.Live, j.Dead = take("joist.live_load"), take("joist.dead_load")
	ofSpecies, ofGrade := t.Fact(species.ID), t.Fact(grade.ID)
	var softest figure.Figure
	if j.Modulus, softest = Modulus(region, ofSpecies, ofGrade); !j.Modulus.IsPoint() {
		deps = deps.Union(ofSpecies.Deps).Union(ofGrade.Deps)
	}
	if softest.ID != "" {
		j.ModulusOrigin = origin(softest)
		j.ModulusSources = []figure.Source{softest.Source}
	}
	return j, deps
}

// readSpans are the numbers of spans that the joists may run over, the softest
// first, and the answer that would say which. Joists that may end at each
// support are softest, then those over three spans, then those over two.
func readSpans(t result.Thing) (spans []int, deps logic.Deps) {
	f := t.Fact(continuity.ID)
	for _, c := range []struct {
		spans int
		words uint64
	}{{1, continuity.Mask("one-span")}, {3, continuity.Mask("three-spans", "two-or-more-spans")}, {2, continuity.Mask("two-spans", "two-or-more-spans")}} {
		if f.Set.Mask&c.words != 0 {
			spans = append(spans, c.spans)
		}
	}
	switch len(spans) {
	case 0: // not asked here
		spans = []int{1}
	case 1:
	default:
		deps = f.Deps
	}
	return spans, deps
}

// readSection is the true width and depth of the joists: the measured one, or
// the dressed size behind the name.
func readSection(t result.Thing) (width, depth quantity.Range, deps logic.Deps) {
	size := t.Fact("joist.size")
	named := namedSection(size.Set.Text)
	side := func(name string, named quantity.Range) quantity.Range {
		f := t.Fact(name)
		r := f.Set.Range.Meet(named)
		if r.IsEmpty() { // an old joist called 2x8 may be a full 8 in deep
			r = f.Set.Range
		}
		if !r.IsPoint() {
			deps = deps.Union(f.Deps).Union(size.Deps)
		}
		return r
	}
	return side("joist.width", named.Width), side("joist.depth", named.Depth), deps
}

// namedSection is the section behind a size as it was written; one that is not
// known is Everything.
func namedSection(text string) quantity.Section {
	everything := quantity.Section{Width: quantity.Everything, Depth: quantity.Everything}
	if text == "" {
		return everything
	}
	s, err := quantity.ReadSize(text)
	if err != nil {
		return everything
	}
	if w, d, ok := figure.Dressed(s.Nominal); ok {
		s.Width, s.Depth = quantity.Point(w), quantity.Point(d)
	}
	return s
}
