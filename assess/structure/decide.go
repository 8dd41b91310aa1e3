package structure

import (
	"math"
	"strings"

	"underfoot/assess/figure"
	"underfoot/assess/message"
	"underfoot/assess/quantity"
	"underfoot/assess/result"
)

// Deciding is the fact that settles an open result.
type Deciding struct {
	Facts     []string // short names, such as joist.grade; none where the result is not open
	Flip      float64  // value of the uncertain quantity at which the result turns
	Dimension quantity.Dimension
	AtLeast   bool            // the joists hold from Flip upwards, rather than up to it
	Alone     bool            // it settles the result whatever else turns out
	Text      message.Message // a clause
	Sentence  message.Message // the same as a sentence
}

// A doubt is one uncertain input of a joist.
type doubt struct {
	name   string // of its sentences
	facts  []string
	dim    quantity.Dimension
	rising bool // more of it makes the joists stiffer
	input  func(*Joist) *quantity.Range
}

// doubts are the inputs that may be uncertain, in the order in which they are
// the cheapest to settle.
func doubts(r row) []doubt {
	return []doubt{
		{"spacing", []string{"joist.spacing"}, quantity.Length, false, func(j *Joist) *quantity.Range { return &j.Spacing }},
		{"span", []string{"joist.span"}, quantity.Length, false, func(j *Joist) *quantity.Range { return &j.Span }},
		{"depth", []string{"joist.depth"}, quantity.Length, true, func(j *Joist) *quantity.Range { return &j.Depth }},
		{"width", []string{"joist.width"}, quantity.Length, true, func(j *Joist) *quantity.Range { return &j.Width }},
		{"wood", woodFacts(r), quantity.Strength, true, func(j *Joist) *quantity.Range { return &j.Modulus }},
		{"dead", []string{"joist.dead_load"}, quantity.Load, false, func(j *Joist) *quantity.Range { return &j.Dead }},
		{"live", []string{"joist.live_load"}, quantity.Load, false, func(j *Joist) *quantity.Range { return &j.Live }},
	}
}

func woodFacts(r row) []string {
	var names []string
	if r.tested {
		return []string{"joist.known_ratio"}
	}
	if len(chosen(&species, r.species)) > 1 && !r.classes {
		names = append(names, species.ID)
	}
	if len(chosen(&grade, r.grades)) > 1 {
		names = append(names, grade.ID)
	}
	return names
}

// decide finds the uncertain input that moves the result most: first one that
// settles it by itself with everything else at its worst.
func decide(r row, b Bound, outcome result.CheckOutcome) Deciding {
	if outcome != result.CheckOpen {
		return Deciding{}
	}
	all := uncertain(r)
	if len(all) == 0 {
		return Deciding{}
	}
	worst, best := r.joist, r.joist
	for _, d := range all {
		d.fix(&worst, r.joist, false)
		d.fix(&best, r.joist, true)
	}
	top, most := all[0], 0.0
	for _, d := range all {
		alone := worst
		d.fix(&alone, r.joist, true)
		if reach := b.reach(alone); reach > most*(1+1e-9) {
			top, most = d, reach
		}
	}
	rest := worst
	if most < 1 {
		rest = best
	}
	out := top.deciding(r, rest, b)
	out.Alone = most >= 1
	out.Text, out.Sentence = top.describe(r, out, len(all) > 1)
	return out
}

// reach is the ratio of a joist over what the bound asks of it.
func (b Bound) reach(j Joist) float64 { return j.Ratio(b.Load).Lo / b.Least(j.Span).Hi }

// uncertain are the inputs with more than one possible value, all with known ends.
func uncertain(r row) []doubt {
	var all []doubt
	for _, d := range doubts(r) {
		j := r.joist
		if in := d.input(&j); bounded(*in) && !in.IsPoint() {
			all = append(all, d)
		}
	}
	return all
}

// fix sets the input to its good or its bad end.
func (d doubt) fix(j *Joist, from Joist, good bool) {
	ends := *d.input(&from)
	*d.input(j) = quantity.Point(ends.Lo)
	if good == d.rising {
		*d.input(j) = quantity.Point(ends.Hi)
	}
}

// halvings of a range leave less than a billionth of it.
const halvings = 36

// deciding finds by bisection the value at which the bound is just met, with
// the other inputs as rest has them.
func (d doubt) deciding(r row, rest Joist, b Bound) Deciding {
	j := r.joist
	ends := *d.input(&j)
	bad, good := ends.Lo, ends.Hi
	if !d.rising {
		bad, good = good, bad
	}
	for range halvings {
		middle := (bad + good) / 2
		*d.input(&rest) = quantity.Point(middle)
		if b.reach(rest) >= 1 {
			good = middle
		} else {
			bad = middle
		}
	}
	return Deciding{Facts: d.facts, Flip: good, Dimension: d.dim, AtLeast: d.rising}
}

// describe says what settles the result and where it turns, as a clause and as a
// sentence; others is whether further inputs are uncertain.
func (d doubt) describe(r row, at Deciding, others bool) (clause, whole message.Message) {
	name, flip, holes := d.name, at.Flip, []any{}
	if d.name == "wood" {
		flip = math.Ceil(flip/1000) * 1000
		if names := r.reaching(at.Flip); len(names) > 0 {
			name, holes = "wood_from", append(holes, "grades", strings.Join(names, ", "))
		}
	}
	holes = append(holes, "flip", both(d.dim, quantity.Point(flip)), "rest", settles(others, at.Alone))
	return message.New("structure/deciding."+name, holes...), message.New("structure/decided."+name, holes...)
}

// both is a quantity in the units of either system.
func both(d quantity.Dimension, r quantity.Range) string {
	return quantity.Write(d, r, quantity.US) + " (" + quantity.Write(d, r, quantity.Metric) + ")"
}

// settles is what is said of the other inputs.
func settles(others, alone bool) message.Message {
	switch {
	case !others:
		return message.Message{}
	case alone:
		return message.New("structure/rest.alone")
	}
	return message.New("structure/rest.together")
}

// reaching names, for each species that is possible, the softest of the
// possible grades that is stiff enough.
func (r row) reaching(flip float64) (names []string) {
	if r.tested {
		return nil
	}
	for _, s := range chosen(&species, r.species) {
		if g := r.softestGrade(s, flip); g != "" {
			names = append(names, s+" "+g)
		}
	}
	return names
}

// softestGrade is the softest possible grade of a species that reaches a
// stiffness, or empty.
func (r row) softestGrade(name string, flip float64) string {
	least, at := "", math.Inf(1)
	for _, g := range chosen(&grade, r.grades) {
		f, ok := figure.LumberValue(name, g, "", figure.Stiffness)
		if ok && f.Value >= flip && f.Value <= at {
			least, at = g, f.Value
		}
	}
	return least
}
