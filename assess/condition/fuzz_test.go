package condition_test

import (
	"testing"
	"time"

	"underfoot/assess/condition"
)

// Whatever the text: no panic, a bounded time, and what compiles is printed as
// a text that compiles to the same.
func FuzzCompile(f *testing.F) {
	for _, fault := range faults {
		f.Add(fault.src)
	}
	f.Add(`danger.gas == "yes" && !(floor.cracks > 1) || layer.kind in ["plywood", "linoleum"]`)
	f.Add(`-(joist.span - '3/4"') / joist.depth >= 2 * 1.5e1`)
	f.Fuzz(func(t *testing.T, src string) {
		start := time.Now()
		c, problems := condition.Compile(src, condition.Place{File: "f", Line: 1, Column: 1}, names)
		if took := time.Since(start); took > 100*time.Millisecond {
			t.Fatalf("took %v", took)
		}
		if (c == nil) != (len(problems) > 0) {
			t.Fatalf("condition %v with %v", c, problems)
		}
		if c == nil {
			return
		}
		text := c.String()
		again, problems := condition.Compile(text, condition.Place{}, names)
		if again == nil {
			t.Fatalf("%q prints as %q: %v", src, text, problems)
		}
		if again.String() != text || again.Eval(facts{}).Truth != c.Eval(facts{}).Truth {
			t.Fatalf("%q prints as %q and that as %q", src, text, again)
		}
		_ = c.Explain(facts{}, condition.Show{}).String()
	})
}
