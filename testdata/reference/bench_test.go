package reference

import (
	"testing"

	"cel.dev/cel-go/cel"

	"underfoot/assess/condition"
	"underfoot/assess/schema"
)

// Both benchmarks evaluate the same 500 conditions with every fact known; run
// them together and compare the times:
//
//	go test -run '^$' -bench Evaluation .
func BenchmarkEvaluationOurs(b *testing.B) {
	s, ours, _ := evaluations(b)
	var reader schema.Reader = s
	for b.Loop() {
		for _, c := range ours {
			c.Eval(reader)
		}
	}
}

func BenchmarkEvaluationCEL(b *testing.B) {
	s, _, theirs := evaluations(b)
	for b.Loop() {
		for _, p := range theirs {
			if _, _, err := p.Eval(s.values); err != nil {
				b.Fatal(err)
			}
		}
	}
}

func evaluations(b *testing.B) (state, []*condition.Condition, []cel.Program) {
	c := comparison{TB: b, world: newWorld(1)}
	c.env = c.environment()
	var ours []*condition.Condition
	var theirs []cel.Program
	for range perWorld {
		text, other := c.condition(2, false).texts(0)
		one, problems := condition.Compile(text, condition.Place{}, c.names())
		if one == nil {
			b.Fatal(problems)
		}
		ours, theirs = append(ours, one), append(theirs, c.program(other))
	}
	return c.state(), ours, theirs
}
