package facts

import (
	"math"

	"underfoot/assess/logic"
	"underfoot/assess/quantity"
	"underfoot/assess/question"
	"underfoot/assess/schema"
)

// tally makes the maker of a tallied fact.
func (p *Plan) tally(t *question.Tally) maker {
	m := maker{scope: schema.ScopeZone, gives: []schema.FactID{t.ID}, reads: reads(t.When, t.Where)}
	m.reads = append(m.reads, p.lists[t.Over])
	fold := folds[t.Fold]
	switch t.Fold {
	case question.Sum, question.Most, question.Least, question.First:
		m.reads = append(m.reads, t.Of)
	}
	kind := p.schema.Decl(t.ID).Kind
	m.make = each(func(f *Frame) {
		fact := fold(t, f.Things(t.Over))
		if fact.Set.Settled(kind) && fact.Presence.Truth == logic.Yes {
			fact.Deps = nil
		}
		f.put(t.ID, fact)
	})
	return m
}

var folds = map[question.Fold]func(*question.Tally, []*Frame) schema.Fact{
	question.Any: foldAny, question.All: foldAll, question.Count: foldCount, question.Sum: foldSum,
	question.Most: foldMost, question.Least: foldLeast, question.First: foldFirst,
}

// passes is whether an item takes part. The rest may be no item at all.
func passes(t *question.Tally, f *Frame) logic.Outcome {
	o := logic.Proven
	if t.Where != nil {
		o = t.Where.Eval(f)
	}
	if f.rest != nil && o.Truth == logic.Yes {
		return logic.OpenOn(f.rest)
	}
	return o
}

func yesNo(o logic.Outcome) schema.Fact { return schema.YesNoFact(logic.Proven, o) }

func foldAny(t *question.Tally, items []*Frame) schema.Fact {
	o := logic.Refuted
	for _, f := range items {
		o = o.Or(passes(t, f).And(t.When.Eval(f)))
	}
	return yesNo(o)
}

func foldAll(t *question.Tally, items []*Frame) schema.Fact {
	o := logic.Proven
	for _, f := range items {
		o = o.And(passes(t, f).Not().Or(t.When.Eval(f)))
	}
	return yesNo(o)
}

func foldCount(t *question.Tally, items []*Frame) schema.Fact {
	var n quantity.Range
	var deps logic.Deps
	for _, f := range items {
		o := passes(t, f).And(t.When.Eval(f))
		switch {
		case o.Truth == logic.Yes:
			n.Lo, n.Hi = n.Lo+1, n.Hi+1
		case o.Truth == logic.No:
		case f.rest != nil:
			n.Hi, deps = math.Inf(1), deps.Union(f.rest)
		default:
			n.Hi, deps = n.Hi+1, deps.Union(o.Deps)
		}
	}
	return number(n, deps)
}

func number(r quantity.Range, deps logic.Deps) schema.Fact {
	return schema.Fact{Presence: logic.Proven, Set: schema.Set{Range: r}, Deps: deps}
}

// part is an item's value with whether it counts at all: the fact is present
// and the item passes.
func part(t *question.Tally, f *Frame) (counts logic.Outcome, r quantity.Range, deps logic.Deps) {
	fact := f.Fact(t.Of)
	counts = passes(t, f).And(fact.Presence)
	return counts, fact.Set.Range, counts.Deps.Union(fact.Deps)
}

func foldSum(t *question.Tally, items []*Frame) schema.Fact {
	var sum quantity.Range
	var deps logic.Deps
	for _, f := range items {
		counts, r, d := part(t, f)
		switch {
		case counts.Truth == logic.No:
			continue
		case f.rest != nil:
			sum.Hi = math.Inf(1)
		case counts.Truth == logic.Yes:
			sum.Lo, sum.Hi = sum.Lo+math.Max(0, r.Lo), sum.Hi+r.Hi
		default:
			sum.Hi += r.Hi
		}
		deps = deps.Union(d)
	}
	return number(sum, deps)
}

func foldMost(t *question.Tally, items []*Frame) schema.Fact {
	return extreme(t, items, math.Inf(-1), math.Inf(1), math.Max)
}

func foldLeast(t *question.Tally, items []*Frame) schema.Fact {
	return extreme(t, items, math.Inf(1), 0, math.Min)
}

// extreme folds with max or min. Start is the value of no item; rest is the
// furthest that an unnamed item may push the result.
func extreme(t *question.Tally, items []*Frame, start, rest float64, pick func(a, b float64) float64) schema.Fact {
	sure, possible := quantity.Range{Lo: start, Hi: start}, quantity.Range{Lo: start, Hi: start}
	presence := logic.Refuted
	var deps logic.Deps
	for _, f := range items {
		counts, r, d := part(t, f)
		if counts.Truth == logic.No {
			continue
		}
		if f.rest != nil {
			r = quantity.Point(rest)
		}
		presence, deps = presence.Or(counts), deps.Union(d)
		possible = quantity.Range{Lo: pick(possible.Lo, r.Lo), Hi: pick(possible.Hi, r.Hi)}
		if counts.Truth == logic.Yes {
			sure = quantity.Range{Lo: pick(sure.Lo, r.Lo), Hi: pick(sure.Hi, r.Hi)}
		}
	}
	if presence.Truth == logic.No {
		return schema.Absent
	}
	both := sure.Hull(possible)
	if presence.Truth == logic.Open {
		both = quantity.Everything
	}
	return schema.Fact{Presence: presence, Set: schema.Set{Range: both}, Deps: deps}
}

// foldFirst is the value of the top item that passes.
func foldFirst(t *question.Tally, items []*Frame) schema.Fact {
	if len(items) == 0 {
		return emptyFirst(t)
	}
	f := items[0]
	o, fact := passes(t, f), f.Fact(t.Of)
	decl := f.floor.plan.schema.Decl(t.Of)
	if f.rest != nil {
		if decl.Always { // the item has the fact if it is there at all
			fact.Presence = logic.Proven
		}
		return either(decl.Kind, fact, emptyFirst(t), f.rest)
	}
	switch o.Truth {
	case logic.Yes:
		return fact
	case logic.No:
		return foldFirst(t, items[1:])
	}
	return either(decl.Kind, fact, foldFirst(t, items[1:]), o.Deps)
}

func emptyFirst(t *question.Tally) schema.Fact {
	if t.Empty == (schema.Set{}) {
		return schema.Absent
	}
	return schema.Fact{Presence: logic.Proven, Set: t.Empty}
}

// either is a fact that is one of two; the dependencies say what would tell.
func either(kind schema.Kind, a, b schema.Fact, deps logic.Deps) schema.Fact {
	deps = deps.Union(a.Deps).Union(b.Deps).Union(a.Presence.Deps).Union(b.Presence.Deps)
	switch {
	case a.Presence.Truth == logic.No && b.Presence.Truth == logic.No:
		return schema.Absent
	case a.Presence.Truth == logic.No:
		return schema.Fact{Presence: logic.OpenOn(deps), Set: b.Set, Deps: b.Deps}
	case b.Presence.Truth == logic.No:
		return schema.Fact{Presence: logic.OpenOn(deps), Set: a.Set, Deps: a.Deps}
	}
	presence := a.Presence.And(b.Presence)
	if presence.Truth != logic.Yes {
		presence = logic.OpenOn(deps)
	}
	return schema.Fact{Presence: presence, Set: a.Set.Hull(b.Set, kind), Deps: deps}
}
