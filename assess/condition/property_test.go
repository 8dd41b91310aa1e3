package condition_test

import (
	"math/rand/v2"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"underfoot/assess/condition"
	"underfoot/assess/logic"
	"underfoot/assess/schema"
)

// check tries a property often enough to meet its rare cases.
func check(t *testing.T, property func(*rapid.T)) {
	for range 15 {
		rapid.Check(t, property)
	}
}

// A settled outcome never changes when more is known.
func TestNarrowingKeepsWhatIsSettled(t *testing.T) {
	check(t, func(t *rapid.T) {
		src := grow(t, 3, alwaysAtoms, anyAtoms).String()
		c, wide := compiled(t, src), world(t)
		before := c.Eval(wide)
		narrow := wide.narrowed(t, func(d *schema.Declaration) (bool, bool) {
			return rapid.Bool().Draw(t, "value of "+d.ID), rapid.Bool().Draw(t, "presence of "+d.ID)
		})
		if after := c.Eval(narrow); before.Truth != logic.Open && after.Truth != before.Truth {
			t.Fatalf("%s was %v and becomes %v", src, before.Truth, after.Truth)
		}
	})
}

// Answering what an open outcome depends on, and nothing else, settles it.
func TestNamedDependenciesSettle(t *testing.T) {
	check(t, func(t *rapid.T) {
		src := grow(t, 3, alwaysAtoms, anyAtoms).String()
		c, wide := compiled(t, src), world(t)
		before := c.Eval(wide)
		if (before.Truth == logic.Open) != (len(before.Deps) > 0) {
			t.Fatalf("%s is %v on %v", src, before.Truth, dependsOn(before.Deps))
		}
		narrow := wide.narrowed(t, func(d *schema.Declaration) (bool, bool) {
			f := id(d.ID)
			return before.Deps.Has(logic.Ref(f)), before.Deps.Has(logic.Ref(presenceRef + f))
		})
		if after := c.Eval(narrow); after.Truth == logic.Open {
			t.Fatalf("%s stays open on %v after answers to %v", src, dependsOn(after.Deps), dependsOn(before.Deps))
		}
	})
}

// The order of operands changes neither the outcome nor what it depends on.
func TestOrderOfOperands(t *testing.T) {
	check(t, func(t *rapid.T) {
		whole := grow(t, 3, alwaysAtoms, anyAtoms)
		seed := rapid.Uint64().Draw(t, "order")
		other := whole.shuffled(rand.New(rand.NewPCG(seed, 1)))
		in := world(t)
		a, b := compiled(t, whole.String()).Eval(in), compiled(t, other.String()).Eval(in)
		if a.Truth != b.Truth || !slices.Equal(a.Deps, b.Deps) {
			t.Fatalf("%s: %v on %v\n%s: %v on %v", whole, a.Truth, a.Deps, other, b.Truth, b.Deps)
		}
	})
}

// A canonical text compiles to itself and means the same.
func TestCanonicalText(t *testing.T) {
	check(t, func(t *rapid.T) {
		c, in := compiled(t, grow(t, 4, alwaysAtoms, anyAtoms).String()), world(t)
		again := compiled(t, c.String())
		if again.String() != c.String() || again.Eval(in).Truth != c.Eval(in).Truth {
			t.Fatalf("%s\n%s", c, again)
		}
	})
}

// Over every completion of few facts: a settled outcome is that of all
// completions, and an open one is that of two that differ.
func TestEveryCompletion(t *testing.T) {
	check(t, func(t *rapid.T) {
		src := grow(t, 3, fewAlways, fewAtoms).String()
		c, in := compiled(t, src), world(t)
		got := c.Eval(in)
		var seen [3]bool
		completions(in, c.Reads(), func(f facts) { seen[c.Eval(f).Truth] = true })
		want := logic.Open
		switch {
		case seen[logic.Open]:
			t.Fatalf("%s is open with every answer given", src)
		case !seen[logic.No]:
			want = logic.Yes
		case !seen[logic.Yes]:
			want = logic.No
		}
		if got.Truth != want {
			t.Fatalf("%s is %v, and %v over all completions", src, got.Truth, want)
		}
	})
}

// With conditions of every kind a settled outcome is that of all completions;
// an open one need not be that of two that differ.
func TestSettledIsEveryCompletion(t *testing.T) {
	check(t, func(t *rapid.T) {
		src := grow(t, 1, alwaysAtoms, anyAtoms).String()
		c, in := compiled(t, src), world(t)
		if len(c.Reads()) > 3 {
			t.Skip()
		}
		got := c.Eval(in)
		completions(in, c.Reads(), func(f facts) {
			if one := c.Eval(f); one.Truth == logic.Open || got.Truth != logic.Open && one.Truth != got.Truth {
				t.Fatalf("%s is %v, and %v in one completion", src, got.Truth, one.Truth)
			}
		})
	})
}

// completions calls visit for each way to know everything about the facts:
// numbers at each half from below the least constant to above the greatest.
func completions(in facts, reads []schema.FactID, visit func(facts)) {
	if len(reads) == 0 {
		visit(in)
		return
	}
	d := declared.Decl(reads[0])
	fact := in[d.ID]
	with := func(f schema.Fact) {
		next := facts{d.ID: f}
		for name, other := range in {
			if name != d.ID {
				next[name] = other
			}
		}
		completions(next, reads[1:], visit)
	}
	if fact.Presence.Truth != logic.Yes {
		with(schema.Absent)
	}
	if fact.Presence.Truth == logic.No {
		return
	}
	for _, s := range values(d, fact.Set) {
		with(present(s))
	}
}

func values(d *schema.Declaration, s schema.Set) []schema.Set {
	var out []schema.Set
	if d.Kind == schema.KindQuantity {
		for v := least(d); v <= 6; v += 0.5 {
			if s.Range.Contains(v) {
				out = append(out, point(v))
			}
		}
		return out
	}
	for _, w := range s.Words(d) {
		out = append(out, words(d.ID, w))
	}
	return out
}

func compiled(t *rapid.T, src string) *condition.Condition {
	c, problems := condition.Compile(src, condition.Place{File: "f", Line: 1, Column: 1}, names)
	if len(problems) > 0 {
		t.Fatalf("%s: %v", src, problems)
	}
	return c
}
