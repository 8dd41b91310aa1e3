package reference

import (
	"fmt"
	"strings"

	"underfoot/assess/condition"
	"underfoot/assess/schema"
)

// A family is words of a choice under a name.
type family struct {
	id    string
	words []string
}

// A part is a condition under a name, with what it stands for in both forms. One
// that is always has facts alone that always apply, and may be negated.
type part struct {
	id, ours, theirs string
	always           bool
}

// share names the words of each choice, in two families, and a few conditions.
// cel-go has no such names: it gets what they stand for.
func (w *world) share() {
	w.sets = map[string][]family{}
	var d condition.Definitions
	for i, f := range w.schema.All() {
		if f.Kind != schema.KindChoice {
			continue
		}
		cut := 1 + w.IntN(len(f.Choices)-1)
		for j, words := range [][]string{f.Choices[:cut], f.Choices[cut:]} {
			one := family{fmt.Sprintf("set_%d_%d", i, j), words}
			w.sets[f.ID] = append(w.sets[f.ID], one)
			d.Families = append(d.Families, condition.FamilyRecord{ID: one.id, Of: f.ID, Words: words})
		}
	}
	w.define(d)
	for i := range 6 {
		p := part{id: fmt.Sprintf("part_%d", i), always: i%2 == 0}
		p.ours, p.theirs = w.condition(1, p.always).texts(0)
		w.define(condition.Definitions{Conditions: []condition.PartRecord{{ID: p.id, When: p.ours}}})
		w.parts = append(w.parts, p)
	}
}

func (w *world) define(d condition.Definitions) {
	shared, problems := w.shared.With(d, "shared", w.names())
	if len(problems) > 0 {
		panic(problems.Error())
	}
	w.shared = shared
}

// part draws a named condition; ok is false where there is none, or seldom.
func (w *world) part(negated bool) (expression, bool) {
	if len(w.parts) == 0 || w.IntN(6) > 0 {
		return expression{}, false
	}
	p := w.parts[w.IntN(len(w.parts))]
	return leaf(p.id, "("+p.theirs+")"), p.always || !negated
}

// among tests a choice against a set, a list with a set in it, or none of either.
func (w *world) among(d *schema.Declaration) expression {
	list := w.words(d, 1+w.IntN(len(d.Choices)))
	ours, theirs := "["+list+"]", "["+list+"]"
	if sets := w.sets[d.ID]; len(sets) > 0 {
		ours, theirs = w.set(sets)
	}
	e := leaf(d.ID+" in "+ours, d.ID+" in "+theirs)
	if w.IntN(2) == 0 {
		e = leaf(d.ID+" not in "+ours, "!("+d.ID+" in "+theirs+")")
	}
	e.strength = bindsRelation
	return e
}

// set is one of two families, alone or with a word of the other.
func (w *world) set(sets []family) (ours, theirs string) {
	i := w.IntN(2)
	one, other := sets[i], sets[1-i]
	words := `"` + strings.Join(one.words, `", "`) + `"`
	if w.IntN(2) == 0 {
		return one.id, "[" + words + "]"
	}
	more := `"` + other.words[w.IntN(len(other.words))] + `"`
	return "[" + one.id + ", " + more + "]", "[" + words + ", " + more + "]"
}
