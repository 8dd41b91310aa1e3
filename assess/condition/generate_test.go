package condition_test

import (
	"fmt"
	"math/rand/v2"
	"strings"

	"pgregory.net/rapid"

	"underfoot/assess/logic"
	"underfoot/assess/quantity"
	"underfoot/assess/schema"
)

// A tree is a random condition, kept in parts so that they can be shuffled.
type tree struct {
	sign string // && || ! or empty for an atom
	kids []tree
	atom string
}

func (t tree) String() string {
	switch t.sign {
	case "":
		return t.atom
	case "!":
		return "!(" + t.kids[0].String() + ")"
	}
	parts := make([]string, len(t.kids))
	for i, k := range t.kids {
		parts[i] = k.String()
		if k.sign == "||" || k.sign == "&&" {
			parts[i] = "(" + parts[i] + ")"
		}
	}
	return strings.Join(parts, " "+t.sign+" ")
}

// shuffled is the same condition with the operands of each chain in another order.
func (t tree) shuffled(r *rand.Rand) tree {
	kids := make([]tree, len(t.kids))
	for i, j := range r.Perm(len(t.kids)) {
		kids[i] = t.kids[j].shuffled(r)
	}
	t.kids = kids
	return t
}

// grow draws a condition of atoms from the given kinds. The atoms of always
// name facts that always apply, so that they may be negated.
func grow(t *rapid.T, depth int, always, any []func(*rapid.T) string) tree {
	shape := 3
	if depth > 0 {
		shape = rapid.IntRange(0, 5).Draw(t, "shape")
	}
	switch shape {
	case 0, 1:
		n := rapid.IntRange(2, 3).Draw(t, "operands")
		out := tree{sign: []string{"&&", "||"}[shape]}
		for range n {
			out.kids = append(out.kids, grow(t, depth-1, always, any))
		}
		return out
	case 2:
		return tree{sign: "!", kids: []tree{grow(t, depth-1, always, always)}}
	}
	return tree{atom: rapid.SampledFrom(any).Draw(t, "atom")(t)}
}

// choiceAtom compares a choice with one or several of its words.
func choiceAtom(names ...string) func(*rapid.T) string {
	return func(t *rapid.T) string {
		d := declared.Find(rapid.SampledFrom(names).Draw(t, "fact"))
		switch rapid.IntRange(0, 2).Draw(t, "comparison") {
		case 0:
			return fmt.Sprintf("%s == %q", d.ID, rapid.SampledFrom(d.Choices).Draw(t, "word"))
		case 1:
			return fmt.Sprintf("%q != %s", rapid.SampledFrom(d.Choices).Draw(t, "word"), d.ID)
		}
		n := rapid.IntRange(1, len(d.Choices)).Draw(t, "words")
		some := rapid.Permutation(d.Choices).Draw(t, "list")[:n]
		return fmt.Sprintf(`%s in ["%s"]`, d.ID, strings.Join(some, `", "`))
	}
}

// numberAtom compares a number with a constant from 1 to top.
func numberAtom(top int, names ...string) func(*rapid.T) string {
	return func(t *rapid.T) string {
		d := declared.Find(rapid.SampledFrom(names).Draw(t, "fact"))
		k := fmt.Sprint(rapid.IntRange(1, top).Draw(t, "constant"))
		signs := []string{"<", "<=", ">", ">=", "==", "!="}
		if d.Dimension == quantity.Length {
			k, signs = fmt.Sprintf(`"%s in"`, k), signs[:4]
		}
		sign := rapid.SampledFrom(signs).Draw(t, "sign")
		if rapid.Bool().Draw(t, "constant first") {
			return k + " " + sign + " " + d.ID
		}
		return d.ID + " " + sign + " " + k
	}
}

// sumAtom compares sums, products and quotients of facts.
func sumAtom(t *rapid.T) string {
	return rapid.SampledFrom([]string{
		`slab.rh > slab.rh_limit`, `floor.cracks + floor.covers >= 3`, `floor.cracks * floor.covers < floor.cracks`,
		`joist.span / joist.depth > 2`, `joist.span - joist.depth <= "1 in"`, `-joist.span + 2 * joist.depth < "0 in"`,
		`joist.depth > figure.sag_limit`, `layer.laid - 1 <= figure.presumed_to`, `(floor.cracks + 1) / 2 == floor.covers`,
	}).Draw(t, "sum")
}

var (
	alwaysAtoms = []func(*rapid.T) string{choiceAtom("zone.base", "danger.gas"), numberAtom(4, "floor.cracks", "floor.covers")}
	anyAtoms    = append(alwaysAtoms, choiceAtom("layer.tight", "layer.cushioned", "layer.kind"), numberAtom(4, "joist.span", "joist.depth"), sumAtom)
	// Few facts and constants: every fact that is named twice can be split.
	fewAlways = []func(*rapid.T) string{choiceAtom("zone.base"), numberAtom(2, "floor.cracks")}
	fewAtoms  = append(fewAlways, choiceAtom("layer.tight"))
)

// world draws a state of all facts.
func world(t *rapid.T) facts {
	out := facts{}
	for i := range declared.All() {
		d := &declared.All()[i]
		f := schema.Fact{Presence: logic.Proven, Set: someSet(t, d)}
		if !d.Always {
			f.Presence = rapid.SampledFrom([]logic.Outcome{logic.Proven, {}, logic.Refuted}).Draw(t, d.ID+" applies")
		}
		out[d.ID] = f
	}
	return out
}

func someSet(t *rapid.T, d *schema.Declaration) schema.Set {
	switch d.Kind {
	case schema.KindText:
		return schema.Set{}
	case schema.KindQuantity:
		return someRange(t, d)
	}
	return schema.Set{Mask: rapid.Uint64Range(1, d.Full().Mask).Draw(t, d.ID)}
}

func someRange(t *rapid.T, d *schema.Declaration) schema.Set {
	lo := rapid.IntRange(1, 5).Draw(t, d.ID+" low")
	s := between(float64(lo), float64(rapid.IntRange(lo, 5).Draw(t, d.ID+" high")))
	switch rapid.IntRange(0, 5).Draw(t, d.ID+" open end") {
	case 0:
		return d.Full()
	case 1:
		s.Range.Hi = infinite
	case 2:
		s.Range.Lo = -infinite
	}
	return s
}

// narrowed draws a state in which no more is possible than in f.
func (f facts) narrowed(t *rapid.T, touch func(*schema.Declaration) (value, presence bool)) facts {
	out := facts{}
	for i := range declared.All() { // in one order, so that a failure can be drawn again
		d := &declared.All()[i]
		name, fact := d.ID, f[d.ID]
		value, presence := touch(d)
		if value && d.Kind != schema.KindText {
			fact.Set = part(t, d, fact.Set)
		}
		if presence && fact.Presence.Truth == logic.Open {
			fact.Presence = rapid.SampledFrom([]logic.Outcome{logic.Proven, logic.Refuted}).Draw(t, name+" applies now")
		}
		out[name] = fact
	}
	return out
}

// least is the least value that the tests answer with: an answer below the
// declared bounds is refused at entry, and a divisor is never zero.
func least(d *schema.Declaration) float64 {
	if d.Bounds.Lo > 0 {
		return d.Bounds.Lo
	}
	return -1
}

// part draws one value of a set.
func part(t *rapid.T, d *schema.Declaration, s schema.Set) schema.Set {
	if d.Kind == schema.KindQuantity {
		r := s.Range.Meet(quantity.Range{Lo: least(d), Hi: 9})
		steps := rapid.IntRange(0, int(2*(r.Hi-r.Lo))).Draw(t, d.ID+" becomes")
		return point(r.Lo + float64(steps)/2)
	}
	word := rapid.SampledFrom(s.Words(d)).Draw(t, d.ID+" becomes")
	return words(d.ID, word)
}
