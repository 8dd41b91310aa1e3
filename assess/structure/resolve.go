package structure

import (
	"fmt"
	"math"
	"sync"

	"underfoot/assess"
	"underfoot/assess/figure"
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
	assumed         []string
}

// read turns a member and its loads into numbers; refusal is why it cannot.
func (m Member) read(loads Loads, region string) (r row, refusal string) {
	if refusal = m.refused(); refusal != "" {
		return r, refusal
	}
	section, ok := m.section()
	var okSpecies, okGrades bool
	r.species, okSpecies = mask(&species, m.Species)
	r.grades, okGrades = mask(&grade, m.Grades)
	switch {
	case !ok:
		return r, noteSize
	case !okSpecies || !okGrades:
		return r, noteWood
	}
	r.joist = Joist{Width: section.Width, Depth: section.Depth, Span: said(m.Span), Spacing: said(m.Spacing), Spans: spansOf(m.Continuity),
		Live: r.load("live", loads.Live, 40), Dead: r.load("dead", loads.Dead, 10), Point: loads.Point, Softer: m.softer(),
		SizeOrigin: figure.DressedSource().Title + "; a measured size goes before it"}
	if !r.wood(region) {
		return r, noteWood
	}
	r.measured(m)
	r.strengths(m, region, nominalOf(section))
	r.creep = figure.LumberFactor("creep-dry")
	if m.Wet {
		r.creep = figure.LumberFactor("creep-wet")
	}
	r.assume(m, section)
	return r, ""
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
	if w := said(m.Width); w != quantity.Everything {
		s.Width = w
	}
	if d := said(m.Depth); d != quantity.Everything {
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
		r.assumed = append(r.assumed, fmt.Sprintf("%s load %g psf, the usual one of a dwelling's rooms", name, usual))
	}
	return orUsual(given, usual)
}

// wood reads the stiffness of the wood; ok is false where no table has it.
func (r *row) wood(region string) bool {
	f := func(bits uint64) assess.Fact { return assess.Fact{Set: assess.Set{Mask: bits}} }
	var softest figure.Figure
	r.joist.Modulus, softest = Modulus(region, f(r.species), f(r.grades))
	if softest.ID == "" {
		return false
	}
	r.classes = r.grades&^classes == 0
	r.joist.ModulusOrigin = origin(softest)
	r.joist.ModulusSources = []figure.Source{softest.Source}
	return true
}

// measured puts a stiffness that was measured in place of that of the tables;
// wet service and incising are in it already.
func (r *row) measured(m Member) {
	e := said(m.Modulus)
	if r.tested = e != quantity.Everything; !r.tested {
		return
	}
	r.joist.Modulus, r.joist.Softer = e, nil
	r.joist.ModulusOrigin, r.joist.ModulusSources = "load test", nil
	r.assumed = append(r.assumed, "stiffness of the wood as the load test gave it")
}

// origin tells where the low end of the stiffness was read.
func origin(softest figure.Figure) string {
	return fmt.Sprintf("%s; low end: %s (%s)", softest.Source.Title, softest.ID, softest.Source.Known)
}

// softer are the factors on the stiffness of the wood.
func (m Member) softer() []Factor {
	var all []Factor
	if m.Wet {
		all = append(all, Factor{"wet", "wet service", figure.LumberFactor("wet-stiffness")})
	}
	if m.Incised {
		all = append(all, Factor{"incised", "incising", figure.LumberFactor("incised-stiffness")})
	}
	return all
}

// strengths reads bending and shear strength over every wood that is possible;
// one without them leaves both unknown.
func (r *row) strengths(m Member, region, nominal string) {
	r.bending, r.shear = quantity.Everything, quantity.Everything
	if r.classes || nominal == "" || r.grades&classes != 0 && region != "us" && region != "ca" {
		return
	}
	factor := strengthFactors(m)
	bending, shear := nothing, nothing
	for _, w := range strengthsOf(nominal) {
		if w.species&r.species == 0 || w.grade&r.grades == 0 {
			continue
		}
		if !w.strong {
			return
		}
		bending = bending.Hull(quantity.Point(w.bending * factor.bending))
		shear = shear.Hull(quantity.Point(w.shear.Value * factor.shear))
		r.strengthSources = append(r.strengthSources, w.shear.Source)
	}
	r.bending, r.shear = bending, shear
}

// A strength is what one species and grade has in a nominal size.
type strength struct {
	species, grade uint64
	bending        float64 // psi, with the factors for size and repetitive members
	shear          figure.Figure
	strong         bool // a table has both
}

var strengthsBySize sync.Map // nominal size to []strength

// strengthsOf are the strengths of every species and visual grade in a nominal
// size, looked up once.
func strengthsOf(nominal string) []strength {
	if all, ok := strengthsBySize.Load(nominal); ok {
		return all.([]strength)
	}
	var all []strength
	for _, s := range species.Choices {
		for _, g := range figure.Grades(s) {
			fb, bends := BendingStrength(s, g, nominal)
			fv, shears := figure.LumberValue(s, g, "", figure.Shear)
			all = append(all, strength{species.Mask(s), grade.Mask(g), fb, fv, bends && shears})
		}
	}
	strengthsBySize.Store(nominal, all)
	return all
}

// strengthFactors are those of wet service and incising.
func strengthFactors(m Member) (f struct{ bending, shear float64 }) {
	f.bending, f.shear = 1, 1
	if m.Wet {
		f.bending *= figure.LumberFactor("wet-bending").Value
		f.shear *= figure.LumberFactor("wet-shear").Value
	}
	if m.Incised {
		f.bending *= figure.LumberFactor("incised-strength").Value
		f.shear *= figure.LumberFactor("incised-strength").Value
	}
	return f
}

// nothing is the range that any hull replaces.
var nothing = quantity.Range{Lo: math.Inf(1), Hi: math.Inf(-1)}

func chosen(d *assess.Declaration, bits uint64) []string {
	return assess.Set{Mask: bits}.Words(d)
}

// assume tells what was taken for granted.
func (r *row) assume(m Member, section quantity.Section) {
	add := func(text string) { r.assumed = append(r.assumed, text) }
	if !r.tested && (len(m.Grades) != 1 || len(m.Species) != 1 && !r.classes) {
		add("wood: every species and grade that is still possible, the softest of them decides")
	}
	if section.Nominal != "" && said(m.Depth) == quantity.Everything {
		add("the dressed size behind the name " + section.Nominal + ": in an old house measure it")
	}
	if !m.Wet {
		add("dry in service, at most 19 percent moisture")
	}
	if m.Continuity == "" || m.Continuity == "one-span" {
		add("one span from support to support")
	} else {
		add("equal spans on supports that do not settle, live load where it bends the joists most")
	}
	add("clear span, face to face of the supports; whole, undamaged joists; three or more, at most 24 in apart under one deck")
}
