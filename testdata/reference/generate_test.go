package reference

import (
	"fmt"
	"math/rand/v2"
	"strings"

	"underfoot/assess/condition"
	"underfoot/assess/figure"
	"underfoot/assess/quantity"
	"underfoot/assess/schema"
)

// A world is a random schema with its figures and everything that draws from
// them. The same seed gives the same world and conditions.
type world struct {
	*rand.Rand
	schema  *schema.Schema
	figures figures
	shared  *condition.Vocabulary
	sets    map[string][]family // of a choice
	parts   []part
}

// figures are invented numbers by id.
type figures map[string]figure.Figure

func (f figures) Figure(id string) (figure.Figure, bool) {
	one, ok := f[id]
	return one, ok
}

func (f figures) IDs() []string {
	var ids []string
	for id := range f {
		ids = append(ids, id)
	}
	return ids
}

func newWorld(seed uint64) *world {
	w := &world{Rand: rand.New(rand.NewPCG(seed, 0)), figures: figures{}}
	dims := []quantity.Dimension{quantity.Length, quantity.Number, quantity.Percent, quantity.Year}
	var list []schema.Declaration
	for i, d := range dims {
		for j := range 3 {
			list = append(list, schema.Declaration{ID: fmt.Sprintf("joist.n%d_%d", i, j), Kind: schema.KindQuantity, Dimension: d,
				Bounds: quantity.Range{Lo: 1, Hi: 1000}, Always: j == 0 || w.IntN(2) == 0})
		}
		w.figures[fmt.Sprintf("f%d", i)] = figure.Figure{Dimension: d, Value: w.value()}
	}
	for j := range 3 {
		list = append(list, schema.Declaration{ID: fmt.Sprintf("layer.yes_%d", j), Kind: schema.KindYesNo, Choices: schema.YesNoChoices, Always: w.IntN(2) == 0})
		d := schema.Declaration{ID: fmt.Sprintf("zone.choice_%d", j), Kind: schema.KindChoice, Always: w.IntN(2) == 0}
		for k := range 2 + w.IntN(40) {
			d.Choices = append(d.Choices, fmt.Sprintf("word-%d", k))
		}
		list = append(list, d)
	}
	w.schema = schema.NewSchema(list)
	w.share()
	return w
}

// names are everything that a condition of this world may name.
func (w *world) names() condition.Names {
	return condition.Names{Schema: w.schema, Figures: w.figures, Words: w.shared}
}

// value is a small number in quarters, so that equal values are met often.
func (w *world) value() float64 { return float64(4+w.IntN(80)) / 4 }

// condition draws a condition; within a negation all facts always apply.
func (w *world) condition(depth int, negated bool) expression {
	e := expression{brackets: w.IntN(6) == 0}
	if named, ok := w.part(negated); ok {
		return named
	}
	switch shape := w.IntN(5); {
	case depth == 0 || shape >= 3:
		return w.atom(depth, negated)
	case shape == 2:
		e.sign, e.strength = "!", bindsUnary
		e.kids = []expression{w.condition(depth-1, true)}
		return e
	case shape == 1:
		e.sign, e.strength = "&&", bindsAnd
	default:
		e.sign, e.strength = "||", bindsOr
	}
	for range 2 + w.IntN(2) {
		e.kids = append(e.kids, w.condition(depth-1, negated))
	}
	return e
}

func (w *world) atom(depth int, negated bool) expression {
	if w.IntN(2) == 0 {
		if e, ok := w.choiceAtom(negated); ok {
			return e
		}
	}
	return w.numberAtom(depth, negated)
}

// fact draws a fact that fits; ok is false where the schema has none.
func (w *world) fact(fits func(*schema.Declaration) bool) (*schema.Declaration, bool) {
	all := w.schema.All()
	for _, i := range w.Perm(len(all)) {
		if fits(&all[i]) {
			return &all[i], true
		}
	}
	return nil, false
}

func (w *world) choiceAtom(negated bool) (expression, bool) {
	d, ok := w.fact(func(d *schema.Declaration) bool { return d.Kind != schema.KindQuantity && (d.Always || !negated) })
	if !ok {
		return expression{}, false
	}
	if w.IntN(3) == 0 {
		return w.among(d), true
	}
	e := expression{sign: []string{"==", "!=", "in"}[w.IntN(3)], strength: bindsRelation}
	e.kids = []expression{leaf(d.ID, ""), leaf(w.words(d, 1), "")}
	switch {
	case e.sign == "in":
		e.kids[1] = leaf("["+w.words(d, 1+w.IntN(len(d.Choices)))+"]", "")
	case w.IntN(2) == 0:
		e.kids[0], e.kids[1] = e.kids[1], e.kids[0]
	}
	return e, true
}

// words are n of a choice's words, in quotes of either kind.
func (w *world) words(d *schema.Declaration, n int) string {
	parts := make([]string, n)
	for i, j := range w.Perm(len(d.Choices))[:n] {
		parts[i] = []string{`"`, `'`}[w.IntN(2)]
		parts[i] += d.Choices[j] + parts[i]
	}
	return strings.Join(parts, ", ")
}
