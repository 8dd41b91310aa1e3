package structure

import (
	"slices"

	"underfoot/assess/figure"
	"underfoot/assess/formula"
	"underfoot/assess/logic"
	"underfoot/assess/message"
	"underfoot/assess/quantity"
	"underfoot/assess/result"
	"underfoot/assess/schema"
)

// An estimate is a range and the answers that would narrow it.
type estimate struct {
	value quantity.Range
	deps  logic.Deps
}

// or is the estimate where either may be the true one.
func (e estimate) or(f estimate) estimate {
	return estimate{e.value.Hull(f.value), e.deps.Union(f.deps)}
}

// fact is the estimate as a fact of what may be there.
func (e estimate) fact(presence logic.Outcome) schema.Fact {
	if presence.Truth == logic.No {
		return schema.Absent
	}
	if e.value.IsPoint() {
		e.deps = nil
	}
	return schema.Fact{Presence: presence, Set: schema.Set{Range: e.value}, Deps: e.deps.Union(presence.Deps)}
}

// An ownSum is the program's own computation of one ratio.
type ownSum struct {
	estimate                 // what it proves
	shown    quantity.Range  // the number for whole joists within the tables; Everything where it was refused
	work     *formula.Sheet  // nil where it was refused
	note     message.Message // the refusal
	open     bool            // a refusal may still come
	sources  []figure.Source
}

// computeOwn sums one load. A proven refusal gives no number; where one may
// still come the number is shown for whole joists, but proves nothing.
func computeOwn(region string, t result.Thing, title message.Message, load Load) ownSum {
	note, open := refused(t)
	if !note.IsZero() {
		return ownSum{estimate: unknown, shown: quantity.Everything, note: note}
	}
	j, deps := readJoist(region, t)
	spans, onSpans := readSpans(t)
	if deps = deps.Union(onSpans); is(t, &member, member.Choices[0]).Truth != logic.Yes {
		return ownSum{estimate: estimate{quantity.Everything, deps.Union(open)}, shown: quantity.Everything, open: true}
	}
	j.Spans = spans[0]
	work := j.Sheet(load).Titled(title)
	own := ownSum{shown: work.Result(), work: work, open: len(open) > 0, sources: append([]figure.Source{figure.Method("beam")}, j.ModulusSources...)}
	if j.Spans > 1 {
		own.sources = append(own.sources, figure.Method("continuous"))
	}
	if own.estimate = (estimate{own.shown, deps}); own.open {
		own.estimate = estimate{quantity.Everything, deps.Union(open)}
		return own
	}
	for _, j.Spans = range spans[1:] {
		own.value = own.value.Hull(j.Ratio(load))
	}
	return own
}

// inJoists is whether the zone is carried by joists.
func inJoists(t result.Thing) logic.Outcome { return is(t, &substrate, "joists") }

// Where the stiffness figure comes from, as masks.
var (
	fromOwn   = figureFrom.Mask("own-sum")
	fromTest  = figureFrom.Mask("load-test")
	fromPaper = figureFrom.Mask("document", "maker", "engineer")
	sawn      = member.Mask("sawn-lumber")
)

// decided is the ratio that counts: the figure of a document, maker or
// engineer for any member; a load test or the own sum for sawn lumber only.
// While it is not said which of them it is, all that are possible count.
func decided(t result.Thing, own estimate) estimate {
	from, kind := t.Fact(figureFrom.ID), t.Fact(member.ID)
	f := t.Fact("joist.known_ratio")
	known := estimate{f.Set.Range, f.Deps}
	e := estimate{value: quantity.Range{Lo: quantity.Everything.Hi, Hi: quantity.Everything.Lo}, deps: from.Deps}
	if from.Set.Mask&fromPaper != 0 {
		e = e.or(known)
	}
	if from.Set.Mask&^fromPaper == 0 {
		return e
	}
	e.deps = e.deps.Union(kind.Deps)
	if kind.Set.Mask&^sawn != 0 {
		e = e.or(unknown)
	}
	if kind.Set.Mask&sawn != 0 && from.Set.Mask&fromTest != 0 {
		e = e.or(known)
	}
	if kind.Set.Mask&sawn != 0 && from.Set.Mask&fromOwn != 0 {
		e = e.or(own)
	}
	return e
}

func ratio(id string) []schema.Declaration {
	return []schema.Declaration{schema.DerivedQuantity(id, schema.ScopeZone, quantity.Ratio, quantity.AtLeast(0))}
}

// reads are the names that every ratio looks at, and more.
func reads(more ...string) []string {
	return slices.Concat([]string{substrate.ID, figureFrom.ID, knownLoad.ID, "joist.known_ratio", "joist.limit", tileKind.ID, continuity.ID},
		damageFacts(), inputs, more)
}

// LiveRatio gives joist.ratio_live: span over live-load deflection by the
// figure that counts. A known figure is taken as its paper states it and never
// converted, whatever load it was made for; an own sum is that of Joist.
func LiveRatio(t *figure.Table) result.Derivation {
	return result.Derivation{ID: "joist.ratio_live", Scope: schema.ScopeZone, Reads: reads(), Gives: ratio("joist.ratio_live"),
		Make: func(zone result.Thing) ([]schema.Fact, *result.Check) {
			here := inJoists(zone)
			if here.Truth == logic.No {
				return []schema.Fact{schema.Absent}, nil
			}
			var own ownSum
			if zone.Fact(figureFrom.ID).Set.Mask&fromOwn != 0 {
				own = computeOwn(t.Region, zone, message.New("structure/title.live"), LiveLoad)
			}
			fact := decided(zone, own.estimate).fact(here)
			return []schema.Fact{fact}, liveCheck(t, zone, own, fact)
		}}
}

// OwnRatio gives joist.own_ratio: the own sum under live load where another
// figure decides, to be shown beside it.
func OwnRatio(t *figure.Table) result.Derivation {
	return ownDerivation(t, description{"joist.own_ratio", message.New("structure/title.own"), message.New("structure/check.beside"), LiveLoad}, func(zone result.Thing) logic.Outcome {
		return inJoists(zone).And(zone.Fact(figureFrom.ID).Among(fromTest | fromPaper))
	}, func(_ result.Thing, o ownSum) bool { return o.shown.Bounded() })
}

// TotalRatio gives joist.ratio_total: span over deflection under live and dead
// load. It is there where the own sum decides: a known figure is not converted.
func TotalRatio(t *figure.Table) result.Derivation {
	return ownDerivation(t, description{"joist.ratio_total", message.New("structure/title.total"), message.New("structure/check.total"), TotalLoad}, ownDecides,
		func(zone result.Thing, o ownSum) bool { return o.note.IsZero() && totalMatters(t, zone) })
}

// A description is how one ratio of the program's own is told.
type description struct {
	id          string
	title, note message.Message
	load        Load
}

// ownDerivation gives one own ratio where it is present, with a check where
// there is something to show.
func ownDerivation(t *figure.Table, o description, present func(result.Thing) logic.Outcome, shows func(result.Thing, ownSum) bool) result.Derivation {
	return result.Derivation{ID: o.id, Scope: schema.ScopeZone, Reads: reads(), Gives: ratio(o.id),
		Make: func(zone result.Thing) ([]schema.Fact, *result.Check) {
			here := present(zone)
			if here.Truth == logic.No {
				return []schema.Fact{schema.Absent}, nil
			}
			sum := computeOwn(t.Region, zone, o.title, o.load)
			fact := sum.fact(here)
			if here.Truth != logic.Yes || !shows(zone, sum) {
				return []schema.Fact{fact}, nil
			}
			return []schema.Fact{fact}, sum.check(t, zone, o.id, o.title, o.note, fact)
		}}
}

// ownDecides is whether the program's own sum is the figure that counts.
func ownDecides(t result.Thing) logic.Outcome {
	return inJoists(t).And(t.Fact(figureFrom.ID).Among(fromOwn))
}

// totalMatters is whether a limit is set for the total load: under stone, and
// where the practice says so under any tile.
func totalMatters(t *figure.Table, zone result.Thing) bool {
	return figure.PracticeOf(t.Region).TotalLoad || is(zone, &tileKind, "natural-stone").Truth != logic.No
}
