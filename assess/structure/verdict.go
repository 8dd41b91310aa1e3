package structure

import (
	"underfoot/assess"
	"underfoot/assess/figure"
	"underfoot/assess/message"
	"underfoot/assess/quantity"
)

const (
	titleLive  = "Joists: span over deflection under live load"
	titleOwn   = "Joists: the program's own sum, beside the known figure"
	titleTotal = "Joists: span over deflection under live and dead load"
	titlePath  = "Joists: span over deflection with the new floor on them"
	titleKnown = "Joists: span over deflection as stated"

	noteBeside   = "shown beside the known figure, which decides"
	noteTotal    = "sources differ on the load that the limit under stone means; the stricter, the total load, decides for the program's own sum. In Canada a guide of 1997 counts the total load under ceramic tile too"
	noteStone    = "under stone the total load decides; this is the live load beside it"
	noteWhole    = "the number is that of whole, undamaged joists within the tables; it counts once the answers named are given"
	noteOrigin   = "the number counts once it is said where the stiffness figure comes from"
	noteSpans    = "counted over equal spans, in one piece, on supports that do not settle, with the live load where it bends the joists most"
	notePaper    = "as its paper states it; not converted to another load"
	noteTest     = "as measured; it goes before the program's own sum"
	noteNoLoad   = "the figure does not say whether it is for live or total load"
	noteAtLimit  = "just at the limit: creep, islands and other point loads are not in it"
	noteScreened = "screening arithmetic on the answers given, not a design"
)

// liveCheck is the check beside joist.ratio_live, or nil where there are no joists.
func liveCheck(t *figure.Table, zone assess.Thing, own ownSum, fact assess.Fact) *assess.Check {
	if fact.Presence.Truth != assess.Yes {
		return nil
	}
	from := zone.Fact(figureFrom.ID).Set.Mask
	plain := is(zone, &member, "sawn-lumber").Truth != assess.No
	switch {
	case from&^fromPaper == 0 || plain && from&^(fromPaper|fromTest) == 0:
		return knownCheck(t, zone, fact, from)
	case !plain && from&fromPaper == 0:
		return &assess.Check{ID: "joist.ratio_live", Title: message.Verbatim(titleLive), Outcome: assess.CheckRefused, Value: quantity.Everything,
			Limit: zone.Fact("joist.limit").Set.Range, Margin: quantity.Everything, Dimension: quantity.Ratio, AtLeast: true, Note: message.Verbatim(noteMember)}
	case from&^fromOwn != 0:
		return own.check(t, zone, "joist.ratio_live", titleLive, noteOrigin, fact)
	case is(zone, &tileKind, "natural-stone").Truth == assess.Yes:
		return own.check(t, zone, "joist.ratio_live", titleLive, noteStone, fact)
	}
	return own.check(t, zone, "joist.ratio_live", titleLive, noteScreened, fact)
}

// check compares the own sum with the joist limit.
func (o ownSum) check(t *figure.Table, zone assess.Thing, id, title, note string, fact assess.Fact) *assess.Check {
	c := against(zone.Fact("joist.limit").Set.Range, o.shown)
	c.ID, c.Title, c.Work, c.Note = id, message.Verbatim(title), o.work, message.Verbatim(note)
	c.Missing = zone.Named(fact.Deps)
	c.Sources = append(limitSources(t, c.Limit), o.sources...)
	switch {
	case o.note != "":
		c.Outcome, c.Note = assess.CheckRefused, message.Verbatim(o.note)
	case o.open:
		c.Outcome, c.Note = assess.CheckOpen, message.Verbatim(note+"; "+noteWhole)
	case !fact.Set.Range.Within(o.shown):
		c.Outcome = against(c.Limit, fact.Set.Range).Outcome // another figure may yet decide
	}
	if o.note == "" && is(zone, &continuity, continuity.Choices[1:]...).Truth == assess.Yes {
		c.Note = message.Verbatim(c.Note.String() + "; " + noteSpans)
	}
	warnAtLimit(&c)
	return &c
}

// knownCheck compares a stated or measured figure with the joist limit.
func knownCheck(t *figure.Table, zone assess.Thing, fact assess.Fact, from uint64) *assess.Check {
	c := against(zone.Fact("joist.limit").Set.Range, fact.Set.Range)
	c.ID, c.Title, c.Note = "joist.ratio_live", message.Verbatim(titleKnown), message.Verbatim(notePaper)
	if from == fromTest {
		c.Note = message.Verbatim(noteTest)
	}
	if load := zone.Fact(knownLoad.ID); load.Presence.Truth == assess.Yes && !load.Set.Settled(assess.KindChoice) {
		c.Note = message.Verbatim(c.Note.String() + "; " + noteNoLoad)
	}
	c.Missing = zone.Named(fact.Deps)
	c.Sources = limitSources(t, c.Limit)
	warnAtLimit(&c)
	return &c
}

// closeMargin is the share of the limit under which a result that holds is
// told to be just at it: a choice of this program, no published figure.
const closeMargin = 0.01

// warnAtLimit says so where a result holds with next to nothing to spare.
func warnAtLimit(c *assess.Check) {
	if c.Outcome == assess.CheckHolds && c.Margin.Lo < closeMargin {
		c.Note = message.Verbatim(c.Note.String() + "; " + noteAtLimit)
	}
}

// against is a check that a ratio is at least its limit. Exactly at it holds,
// with no margin: creep and point loads are not in the sum.
func against(limit, value quantity.Range) assess.Check {
	c := assess.Check{Outcome: assess.CheckOpen, Value: value, Limit: limit, Dimension: quantity.Ratio, AtLeast: true}
	switch {
	case value.Lo >= limit.Hi:
		c.Outcome = assess.CheckHolds
	case value.Hi < limit.Lo:
		c.Outcome = assess.CheckFails
	}
	c.Margin = value.Div(limit).Sub(quantity.Point(1))
	return c
}
