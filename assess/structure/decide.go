package structure

import (
	"fmt"
	"math"
	"strings"

	"underfoot/assess"
	"underfoot/assess/figure"
	"underfoot/assess/quantity"
)

// Deciding is the fact that settles an open result.
type Deciding struct {
	Facts     []string // short names, such as joist.grade; none where the result is not open
	Flip      float64  // value of the uncertain quantity at which the result turns
	Dimension quantity.Dimension
	AtLeast   bool // the joists hold from Flip upwards, rather than up to it
	Alone     bool // it settles the result whatever else turns out
	Text      string
}

// A doubt is one uncertain input of a joist.
type doubt struct {
	facts   []string
	what    string
	dim     quantity.Dimension
	rising  bool // more of it makes the joists stiffer
	input   func(*Joist) *quantity.Range
	options func(flip float64) string
}

// doubts are the inputs that may be uncertain, in the order in which they are
// the cheapest to settle.
func doubts(r row) []doubt {
	return []doubt{
		{[]string{"joist.spacing"}, "the spacing of the joists", quantity.Length, false, func(j *Joist) *quantity.Range { return &j.Spacing }, nil},
		{[]string{"joist.span"}, "the clear span", quantity.Length, false, func(j *Joist) *quantity.Range { return &j.Span }, nil},
		{[]string{"joist.depth"}, "the depth of a joist", quantity.Length, true, func(j *Joist) *quantity.Range { return &j.Depth }, nil},
		{[]string{"joist.width"}, "the thickness of a joist", quantity.Length, true, func(j *Joist) *quantity.Range { return &j.Width }, nil},
		{woodFacts(r), "the wood", quantity.Strength, true, func(j *Joist) *quantity.Range { return &j.Modulus }, r.reaching},
		{[]string{"joist.dead_load"}, "the dead load", quantity.Load, false, func(j *Joist) *quantity.Range { return &j.Dead }, nil},
		{[]string{"joist.live_load"}, "the live load", quantity.Load, false, func(j *Joist) *quantity.Range { return &j.Live }, nil},
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
func decide(r row, b Bound, outcome assess.CheckOutcome) Deciding {
	if outcome != assess.CheckOpen {
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
	if out.Text = top.tell(out); len(all) > 1 {
		out.Text += settles(out.Alone)
	}
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

// tell says what settles the result and where it turns.
func (d doubt) tell(at Deciding) string {
	if d.options != nil {
		least := quantity.Point(math.Ceil(at.Flip/1000) * 1000)
		return fmt.Sprintf("%s decides: the joists hold where its stiffness E is at least %s", d.what, both(quantity.Strength, least)) + d.options(at.Flip)
	}
	side := "at most"
	if at.AtLeast {
		side = "at least"
	}
	return fmt.Sprintf("%s decides: the joists hold where it is %s %s", d.what, side, both(d.dim, quantity.Point(at.Flip)))
}

// both is a quantity in the units of either system.
func both(d quantity.Dimension, r quantity.Range) string {
	return quantity.Write(d, r, quantity.US) + " (" + quantity.Write(d, r, quantity.Metric) + ")"
}

func settles(alone bool) string {
	if alone {
		return ", whatever else turns out"
	}
	return ", and only where the rest turns out well too"
}

// reaching names, for each species that is possible, the softest of the
// possible grades that is stiff enough.
func (r row) reaching(flip float64) string {
	if r.tested {
		return ""
	}
	var names []string
	for _, s := range chosen(&species, r.species) {
		if g := r.softestGrade(s, flip); g != "" {
			names = append(names, s+" "+g)
		}
	}
	if len(names) == 0 {
		return ""
	}
	return " (from these grades up: " + strings.Join(names, ", ") + ")"
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
