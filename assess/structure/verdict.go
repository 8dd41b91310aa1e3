package structure

import (
	"underfoot/assess/figure"
	"underfoot/assess/logic"
	"underfoot/assess/message"
	"underfoot/assess/quantity"
	"underfoot/assess/result"
	"underfoot/assess/schema"
)

// and joins what is to be known of one number.
func and(first, more message.Message) message.Message {
	return message.New("structure/check.and", "first", first, "more", more)
}

// liveCheck is the check beside joist.ratio_live, or nil where there are no joists.
func liveCheck(t *figure.Table, zone result.Thing, own ownSum, fact schema.Fact) *result.Check {
	if fact.Presence.Truth != logic.Yes {
		return nil
	}
	from := zone.Fact(figureFrom.ID).Set.Mask
	plain := is(zone, &member, "sawn-lumber").Truth != logic.No
	switch {
	case from&^fromPaper == 0 || plain && from&^(fromPaper|fromTest) == 0:
		return knownCheck(t, zone, fact, from)
	case !plain && from&fromPaper == 0:
		return &result.Check{ID: "joist.ratio_live", Title: message.New("structure/title.live"), Outcome: result.CheckRefused, Value: quantity.Everything,
			Limit: zone.Fact("joist.limit").Set.Range, Margin: quantity.Everything, Dimension: quantity.Ratio, AtLeast: true, Note: refuse("member")}
	case from&^fromOwn != 0:
		return own.check(t, zone, "joist.ratio_live", message.New("structure/title.live"), message.New("structure/check.origin"), fact)
	case is(zone, &tileKind, "natural-stone").Truth == logic.Yes:
		return own.check(t, zone, "joist.ratio_live", message.New("structure/title.live"), message.New("structure/check.stone"), fact)
	}
	return own.check(t, zone, "joist.ratio_live", message.New("structure/title.live"), message.New("structure/check.screened"), fact)
}

// check compares the own sum with the joist limit.
func (o ownSum) check(t *figure.Table, zone result.Thing, id string, title, note message.Message, fact schema.Fact) *result.Check {
	c := against(zone.Fact("joist.limit").Set.Range, o.shown)
	c.ID, c.Title, c.Work, c.Note = id, title, o.work, note
	c.Missing = zone.Named(fact.Deps)
	c.Sources = append(limitSources(t, c.Limit), o.sources...)
	switch {
	case !o.note.IsZero():
		c.Outcome, c.Note = result.CheckRefused, o.note
	case o.open:
		c.Outcome, c.Note = result.CheckOpen, and(note, message.New("structure/check.whole"))
	case !fact.Set.Range.Within(o.shown):
		c.Outcome = against(c.Limit, fact.Set.Range).Outcome // another figure may yet decide
	}
	if o.note.IsZero() && is(zone, &continuity, continuity.Choices[1:]...).Truth == logic.Yes {
		c.Note = and(c.Note, message.New("structure/check.spans"))
	}
	warnAtLimit(&c)
	return &c
}

// knownCheck compares a stated or measured figure with the joist limit.
func knownCheck(t *figure.Table, zone result.Thing, fact schema.Fact, from uint64) *result.Check {
	c := against(zone.Fact("joist.limit").Set.Range, fact.Set.Range)
	c.ID, c.Title, c.Note = "joist.ratio_live", message.New("structure/title.known"), message.New("structure/check.paper")
	if from == fromTest {
		c.Note = message.New("structure/check.test")
	}
	if load := zone.Fact(knownLoad.ID); load.Presence.Truth == logic.Yes && !load.Set.Settled(schema.KindChoice) {
		c.Note = and(c.Note, message.New("structure/check.no_load"))
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
func warnAtLimit(c *result.Check) {
	if c.Outcome == result.CheckHolds && c.Margin.Lo < closeMargin {
		c.Note = and(c.Note, message.New("structure/check.at_limit"))
	}
}

// against is a check that a ratio is at least its limit. Exactly at it holds,
// with no margin: creep and point loads are not in the sum.
func against(limit, value quantity.Range) result.Check {
	c := result.Check{Outcome: result.CheckOpen, Value: value, Limit: limit, Dimension: quantity.Ratio, AtLeast: true}
	switch {
	case value.Lo >= limit.Hi:
		c.Outcome = result.CheckHolds
	case value.Hi < limit.Lo:
		c.Outcome = result.CheckFails
	}
	c.Margin = value.Div(limit).Sub(quantity.Point(1))
	return c
}
