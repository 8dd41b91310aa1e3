package structure

import (
	"math"
	"sync"

	"underfoot/assess/figure"
	"underfoot/assess/message"
	"underfoot/assess/quantity"
	"underfoot/assess/schema"
)

// wood reads the stiffness of the wood; ok is false where no table has it.
func (r *row) wood(region string) bool {
	f := func(bits uint64) schema.Fact { return schema.Fact{Set: schema.Set{Mask: bits}} }
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
	e := stated(m.Modulus)
	if r.tested = e != quantity.Everything; !r.tested {
		return
	}
	r.joist.Modulus, r.joist.Softer = e, nil
	r.joist.ModulusOrigin, r.joist.ModulusSources = message.New("structure/origin.tested"), nil
	r.assumed = append(r.assumed, message.New("structure/assumed.tested"))
}

// origin tells where the low end of the stiffness was read.
func origin(softest figure.Figure) message.Message {
	return message.New("structure/origin.low_end", "title", softest.Source.Title, "id", softest.ID, "known", softest.Source.Known)
}

// sizeOrigin tells where a dressed size was read.
func sizeOrigin() message.Message {
	return message.New("structure/origin.size", "title", figure.DressedSource().Title)
}

// softer are the factors on the stiffness of the wood.
func (m Member) softer() []Factor {
	var all []Factor
	if m.Wet {
		all = append(all, Factor{"wet", message.New("structure/line.wet"), figure.LumberFactor("wet-stiffness")})
	}
	if m.Incised {
		all = append(all, Factor{"incised", message.New("structure/line.incised"), figure.LumberFactor("incised-stiffness")})
	}
	return all
}

// strengths reads bending and shear strength over every wood that is possible;
// one without them leaves both unknown.
func (r *row) strengths(m Member, region, nominal string) {
	r.bending, r.shear = quantity.Everything, quantity.Everything
	if r.classes || nominal == "" || r.grades&classes != 0 && !figure.PracticeOf(region).VisualGrades {
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

func chosen(d *schema.Declaration, bits uint64) []string {
	return schema.Set{Mask: bits}.Words(d)
}
