package condition_test

import (
	"strings"
	"testing"
	"time"

	"underfoot/assess/condition"
	"underfoot/assess/message"
)

// quickest is the least time of three, since the machine may be busy.
func quickest(src string) time.Duration {
	least := time.Hour
	for range 3 {
		start := time.Now()
		condition.Compile(src, condition.Place{}, names)
		least = min(least, time.Since(start))
	}
	return least
}

// The costliest texts of the allowed length that are known.
func TestCostlyTexts(t *testing.T) {
	for _, part := range []string{";", "(", "a.b ", "joist.spam > 1 && ", "zone.base == \"地\" || ", "-", "a", "\"", "[", "a.b in [\"\","} {
		src := strings.Repeat(part, 4096/len(part))
		if took := quickest(src); took > 100*time.Millisecond {
			t.Errorf("%q repeated takes %v", part, took)
		}
	}
}

// Whatever the text: no panic, a bounded time, and what compiles is printed as
// a text that compiles to the same.
func FuzzCompile(f *testing.F) {
	for _, fault := range faults {
		f.Add(fault.src)
	}
	f.Add(`danger.gas == "yes" && !(floor.cracks > 1) || layer.kind in ["plywood", "linoleum"]`)
	f.Add(`-(joist.span - '3/4"') / joist.depth >= 2 * 1.5e1`)
	f.Fuzz(func(t *testing.T, src string) {
		c, problems := condition.Compile(src, condition.Place{File: "f", Line: 1, Column: 1}, names)
		if took := quickest(src); took > 100*time.Millisecond {
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
		_ = c.Explain(facts{}, condition.Show{}).Lines(message.English())
	})
}
