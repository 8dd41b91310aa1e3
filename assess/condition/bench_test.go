package condition_test

import (
	"testing"

	"underfoot/assess/condition"
	"underfoot/assess/logic"
	"underfoot/assess/schema"
)

const longRule = `zone.base in ["joists", "beam-and-deck"] && floor.covers <= 1 && layer.kind in ["sheet-vinyl", "vinyl-tile", "linoleum"] ` +
	`&& layer.tight == "yes" && (joist.span > "12 ft" || layer.laid <= figure.presumed_to && joist.span / joist.depth > 12)`

var settled = facts{
	"zone.base": present(schema.Set{Mask: 1}), "floor.covers": present(point(1)), "layer.kind": present(schema.Set{Mask: 2}),
	"layer.tight": present(schema.SetYes), "joist.span": present(point(120)), "layer.laid": present(point(1962)), "joist.depth": present(point(9.25)),
}

// shelved is facts by number, so that reading them costs nothing worth measuring.
type shelved []schema.Fact

func (s shelved) Fact(f schema.FactID) schema.Fact { return s[f] }

func shelve(f facts) shelved {
	out := make(shelved, declared.Len())
	for i := range out {
		out[i] = f.Fact(schema.FactID(i))
	}
	return out
}

func TestSettledFactsAllocateNothing(t *testing.T) {
	c := compile(t, longRule)
	var reader schema.Reader = shelve(settled)
	if n := testing.AllocsPerRun(100, func() { c.Eval(reader) }); n != 0 {
		t.Errorf("%v allocations", n)
	}
	if c.Eval(reader).Truth != logic.Yes {
		t.Error("the rule is not proven")
	}
}

func BenchmarkEvalSettled(b *testing.B) { benchmarkEval(b, settled) }

func BenchmarkEvalNothingKnown(b *testing.B) { benchmarkEval(b, facts{}) }

func benchmarkEval(b *testing.B, in facts) {
	c := compile(b, longRule)
	var reader schema.Reader = shelve(in)
	b.ReportAllocs()
	for b.Loop() {
		c.Eval(reader)
	}
}

func BenchmarkCompile(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		condition.Compile(longRule, condition.Place{}, names)
	}
}
