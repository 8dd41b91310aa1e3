package structure

import (
	"sync"

	"underfoot/assess/figure"
	"underfoot/assess/quantity"
	"underfoot/assess/schema"
)

// A modulus is one row of the lumber table in the bits of the choice facts; a
// strength class stands under every species.
type modulus struct {
	species, grade uint64
	value          figure.Figure
}

// classes are the strength classes of EN 338 among the grades.
var classes = grade.Mask(figure.Grades("")...)

var moduli = sync.OnceValue(func() []modulus {
	var all []modulus
	add := func(name string, mask uint64) {
		for _, g := range figure.Grades(name) {
			f, _ := figure.LumberValue(name, g, "", figure.Stiffness)
			if name == "" {
				f = apparent(f)
			}
			all = append(all, modulus{mask, grade.Mask(g), f})
		}
	}
	for _, s := range species.Choices {
		add(s, species.Mask(s))
	}
	add("", species.Full().Mask)
	return all
})

// apparent is the stiffness of a strength class with shear deflection in it, as
// that of the visual grades has it already: the mean E of EN 338 leaves it out.
func apparent(f figure.Figure) figure.Figure {
	shear := figure.LumberFactor("class-shear")
	f.Value /= shear.Value
	f.Source.Edition += "; " + figure.Method("class-shear").Edition
	return f
}

// Modulus is the range of the modulus of elasticity E, in psi, over every
// species and grade that is still possible, with the row that gives the low
// end: the softest wood decides. Where neither is known it runs from No.3 of
// the softest groups, 0.9 million, to the stiffest select structural, 1.9
// million; the strength classes of EN 338 lie between, so that the range
// holds in every region. Where lumber is sold by visual grade a strength
// class is a possibility only where the answer names one. Where no row fits it is Everything.
//
// A strength class counts with shear deflection in it; see apparent.
//
// Source: NDS Supplement Tables 4A and 4B, EN 338 Table 1, as lumber.csv says
// row by row.
func Modulus(region string, ofSpecies, ofGrade schema.Fact) (quantity.Range, figure.Figure) {
	grades := ofGrade.Set.Mask
	if visual := grades &^ classes; visual != 0 && figure.PracticeOf(region).VisualGrades {
		grades = visual
	}
	r := quantity.Range{Lo: quantity.Everything.Hi, Hi: quantity.Everything.Lo}
	var softest figure.Figure
	for _, m := range moduli() {
		if m.species&ofSpecies.Set.Mask == 0 || m.grade&grades == 0 {
			continue
		}
		if m.value.Value < r.Lo {
			softest = m.value
		}
		r = r.Hull(quantity.Point(m.value.Value))
	}
	if r.IsEmpty() {
		return quantity.Everything, figure.Figure{}
	}
	return r, softest
}
