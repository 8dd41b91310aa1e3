package facts

import (
	"math"

	"underfoot/assess"
	"underfoot/assess/quantity"
	"underfoot/assess/question"
)

// tally makes the maker of a tallied fact.
func (p *Plan) tally(t *question.Tally) maker {
	m := maker{scope: assess.ScopeZone, gives: []assess.FactID{t.ID}, reads: reads(t.When, t.Where)}
	m.reads = append(m.reads, p.lists[t.Over])
	fold := folds[t.Fold]
	switch t.Fold {
	case question.Sum, question.Most, question.Least, question.First:
		m.reads = append(m.reads, t.Of)
	}
	kind := p.schema.Decl(t.ID).Kind
	m.make = each(func(f *Frame) {
		fact := fold(t, f.Things(t.Over))
		if fact.Set.Settled(kind) && fact.Presence.Truth == assess.Yes {
			fact.Deps = nil
		}
		f.put(t.ID, fact)
	})
	return m
}

var folds = map[question.Fold]func(*question.Tally, []*Frame) assess.Fact{
	question.Any: foldAny, question.All: foldAll, question.Count: foldCount, question.Sum: foldSum,
	question.Most: foldMost, question.Least: foldLeast, question.First: foldFirst,
}

// passes is whether an item takes part. The rest may be no item at all.
func passes(t *question.Tally, f *Frame) assess.Outcome {
	o := assess.Proven
	if t.Where != nil {
		o = t.Where.Eval(f)
	}
	if f.rest != nil && o.Truth == assess.Yes {
		return assess.OpenOn(f.rest)
	}
	return o
}

func yesNo(o assess.Outcome) assess.Fact { return assess.YesNoFact(assess.Proven, o) }

func foldAny(t *question.Tally, items []*Frame) assess.Fact {
	o := assess.Refuted
	for _, f := range items {
		o = o.Or(passes(t, f).And(t.When.Eval(f)))
	}
	return yesNo(o)
}

func foldAll(t *question.Tally, items []*Frame) assess.Fact {
	o := assess.Proven
	for _, f := range items {
		o = o.And(passes(t, f).Not().Or(t.When.Eval(f)))
	}
	return yesNo(o)
}

func foldCount(t *question.Tally, items []*Frame) assess.Fact {
	var n quantity.Range
	var deps assess.Deps
	for _, f := range items {
		o := passes(t, f).And(t.When.Eval(f))
		switch {
		case o.Truth == assess.Yes:
			n.Lo, n.Hi = n.Lo+1, n.Hi+1
		case o.Truth == assess.No:
		case f.rest != nil:
			n.Hi, deps = math.Inf(1), deps.Union(f.rest)
		default:
			n.Hi, deps = n.Hi+1, deps.Union(o.Deps)
		}
	}
	return number(n, deps)
}

func number(r quantity.Range, deps assess.Deps) assess.Fact {
	return assess.Fact{Presence: assess.Proven, Set: assess.Set{Range: r}, Deps: deps}
}

// part is an item's value with whether it counts at all: the fact is present
// and the item passes.
func part(t *question.Tally, f *Frame) (counts assess.Outcome, r quantity.Range, deps assess.Deps) {
	fact := f.Fact(t.Of)
	counts = passes(t, f).And(fact.Presence)
	return counts, fact.Set.Range, counts.Deps.Union(fact.Deps)
}

func foldSum(t *question.Tally, items []*Frame) assess.Fact {
	var sum quantity.Range
	var deps assess.Deps
	for _, f := range items {
		counts, r, d := part(t, f)
		switch {
		case counts.Truth == assess.No:
			continue
		case f.rest != nil:
			sum.Hi = math.Inf(1)
		case counts.Truth == assess.Yes:
			sum.Lo, sum.Hi = sum.Lo+math.Max(0, r.Lo), sum.Hi+r.Hi
		default:
			sum.Hi += r.Hi
		}
		deps = deps.Union(d)
	}
	return number(sum, deps)
}

func foldMost(t *question.Tally, items []*Frame) assess.Fact {
	return extreme(t, items, math.Inf(-1), math.Inf(1), math.Max)
}

func foldLeast(t *question.Tally, items []*Frame) assess.Fact {
	return extreme(t, items, math.Inf(1), 0, math.Min)
}

// extreme folds with max or min. Start is the value of no item; rest is the
// furthest that an unnamed item may push the result.
func extreme(t *question.Tally, items []*Frame, start, rest float64, pick func(a, b float64) float64) assess.Fact {
	sure, possible := quantity.Range{Lo: start, Hi: start}, quantity.Range{Lo: start, Hi: start}
	presence := assess.Refuted
	var deps assess.Deps
	for _, f := range items {
		counts, r, d := part(t, f)
		if counts.Truth == assess.No {
			continue
		}
		if f.rest != nil {
			r = quantity.Point(rest)
		}
		presence, deps = presence.Or(counts), deps.Union(d)
		possible = quantity.Range{Lo: pick(possible.Lo, r.Lo), Hi: pick(possible.Hi, r.Hi)}
		if counts.Truth == assess.Yes {
			sure = quantity.Range{Lo: pick(sure.Lo, r.Lo), Hi: pick(sure.Hi, r.Hi)}
		}
	}
	if presence.Truth == assess.No {
		return assess.Absent
	}
	both := sure.Hull(possible)
	if presence.Truth == assess.Open {
		both = quantity.Everything
	}
	return assess.Fact{Presence: presence, Set: assess.Set{Range: both}, Deps: deps}
}

// foldFirst is the value of the top item that passes.
func foldFirst(t *question.Tally, items []*Frame) assess.Fact {
	if len(items) == 0 {
		return emptyFirst(t)
	}
	f := items[0]
	o, fact := passes(t, f), f.Fact(t.Of)
	decl := f.floor.plan.schema.Decl(t.Of)
	if f.rest != nil {
		if decl.Always { // the item has the fact if it is there at all
			fact.Presence = assess.Proven
		}
		return either(decl.Kind, fact, emptyFirst(t), f.rest)
	}
	switch o.Truth {
	case assess.Yes:
		return fact
	case assess.No:
		return foldFirst(t, items[1:])
	}
	return either(decl.Kind, fact, foldFirst(t, items[1:]), o.Deps)
}

func emptyFirst(t *question.Tally) assess.Fact {
	if t.Empty == (assess.Set{}) {
		return assess.Absent
	}
	return assess.Fact{Presence: assess.Proven, Set: t.Empty}
}

// either is a fact that is one of two; the dependencies say what would tell.
func either(kind assess.Kind, a, b assess.Fact, deps assess.Deps) assess.Fact {
	deps = deps.Union(a.Deps).Union(b.Deps).Union(a.Presence.Deps).Union(b.Presence.Deps)
	switch {
	case a.Presence.Truth == assess.No && b.Presence.Truth == assess.No:
		return assess.Absent
	case a.Presence.Truth == assess.No:
		return assess.Fact{Presence: assess.OpenOn(deps), Set: b.Set, Deps: b.Deps}
	case b.Presence.Truth == assess.No:
		return assess.Fact{Presence: assess.OpenOn(deps), Set: a.Set, Deps: a.Deps}
	}
	presence := a.Presence.And(b.Presence)
	if presence.Truth != assess.Yes {
		presence = assess.OpenOn(deps)
	}
	return assess.Fact{Presence: presence, Set: a.Set.Hull(b.Set, kind), Deps: deps}
}
