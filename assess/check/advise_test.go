package check

import (
	"math"
	"slices"
	"strings"
	"testing"

	"underfoot/assess/figure"
	"underfoot/assess/message"
	"underfoot/assess/quantity"
	"underfoot/assess/result"
	"underfoot/assess/schema"
)

// advised is a check of the floor with its advice.
func advised(f *floor, id string) result.Check {
	f.run()
	c := *f.checks[id]
	Advise(figure.For(f.region, quantity.US), f.zone, &c)
	return c
}

func says(c result.Check, word string) bool {
	return slices.ContainsFunc(c.Notes, func(n message.Message) bool { return strings.Contains(n.String(), word) })
}

// TestKitchenIsAdvised: 2x8 at 16 in over 13 ft 6 in with its wood unknown: the
// share of soft joists, what decides and where it turns, and the ways that
// reach L/360, each of which does.
func TestKitchenIsAdvised(t *testing.T) {
	f := sound(t)
	f.set("joist.span", quantity.Point(162))
	f.zone.text("joist.size", "2x8")
	delete(f.zone.facts, "joist.species")
	delete(f.zone.facts, "joist.grade")
	c := advised(f, "joist.ratio_live")
	if c.Outcome != result.CheckOpen || !says(c, "Of 100 such joists") || !says(c, "The wood decides") || !says(c, "Backer board") {
		t.Errorf("%v %q", c.Outcome, c.Notes)
	}
	if len(c.Options) < 3 {
		t.Errorf("options %+v", c.Options)
	}
	for _, o := range c.Options {
		if o.Outcome != result.CheckHolds || o.Live.Lo < 360 {
			t.Errorf("%s is no cure: %v", o.ID, o.Live)
		}
	}
}

// TestAdviceLeavesTheRestAlone: a check that holds has no options; a stated
// figure, a refusal and a floor of other things no advice at all.
func TestAdviceLeavesTheRestAlone(t *testing.T) {
	f := sound(t)
	f.set("joist.span", quantity.Point(120))
	if c := advised(f, "joist.ratio_live"); c.Options != nil || !says(c, "Holds for every possibility") {
		t.Errorf("%+v", c)
	}
	for name, spoil := range map[string]func(*floor){
		"document": func(f *floor) { f.words("joist.figure_from", "document").set("joist.known_ratio", quantity.Point(300)) },
		"truss":    func(f *floor) { f.words("joist.member", "open-web-truss") },
		"no span":  func(f *floor) { delete(f.zone.facts, "joist.span") },
	} {
		f := sound(t)
		spoil(f)
		if c := advised(f, "joist.ratio_live"); c.Notes != nil || c.Options != nil {
			t.Errorf("%s: %q %v", name, c.Notes, c.Options)
		}
	}
}

// TestStoneIsAdvisedOnTheTotalLoad: its options are held to L/720 under total load.
func TestStoneIsAdvisedOnTheTotalLoad(t *testing.T) {
	f := sound(t)
	f.words("tile.kind", "natural-stone").set("joist.span", quantity.Point(144))
	if c := advised(f, "joist.ratio_live"); c.Notes != nil {
		t.Errorf("live load is advised on too: %q", c.Notes)
	}
	c := advised(f, "joist.ratio_total")
	if len(c.Options) == 0 || !says(c, "Sources differ on the load") {
		t.Errorf("%+v", c)
	}
	for _, o := range c.Options {
		if o.Total.Lo < 720 {
			t.Errorf("%s: %v", o.ID, o.Total)
		}
	}
}

// TestContinuityCounts: live load on one of two equal spans bends a joist in
// one piece 109.283 x 5 / 384 times less than one span, on the outer of three
// 100.832 x 5 / 384 (theorem of three moments).
func TestContinuityCounts(t *testing.T) {
	one := ratioByHand(1.4e6, 1.5, 9.25, 16, 180, 40)
	for word, want := range map[string]quantity.Range{
		"one-span": quantity.Point(one), "two-spans": quantity.Point(one * 109.283 * 5 / 384), "three-spans": quantity.Point(one * 100.832 * 5 / 384),
		"two-or-more-spans": {Lo: one * 100.832 * 5 / 384, Hi: one * 109.283 * 5 / 384},
	} {
		f := sound(t)
		f.words("joist.continuity", word)
		f.run()
		if got := f.zone.facts["joist.ratio_live"].Set.Range; math.Abs(got.Lo/want.Lo-1) > 1e-9 || math.Abs(got.Hi/want.Hi-1) > 1e-9 {
			t.Errorf("%s: %v, want %v", word, got, want)
		}
	}
	f := sound(t)
	f.words("joist.continuity", "one-span", "two-spans")
	f.run()
	if got := f.zone.Named(f.zone.facts["joist.ratio_live"].Deps); len(got) != 1 || got[0].Field != "joist.continuity" {
		t.Errorf("waits on %v", got)
	}
}

// TestDeckIsAdvised: 3/4 in plywood on joists 16 in apart may be 24oc or 48/24
// (E I 330,000 to 440,000 lb in2/ft, panel design specification D510C 2012,
// Table 4A, from memory): w L^4 / (921.6 E I) over 14.75 in is L/2369 to L/3159.
func TestDeckIsAdvised(t *testing.T) {
	f := sound(t)
	f.item(schema.ScopeDeck, "d1").words("deck.kind", "plywood").set("deck.thickness", quantity.Point(0.75))
	c := advised(f, "panel.short")
	if !says(c, "L/2369 to L/3159") || !says(c, "from memory") {
		t.Errorf("%q", c.Notes)
	}
	f.open(schema.ScopeDeck)
	if c := advised(f, "panel.short"); c.Notes != nil {
		t.Errorf("a deck that is not known: %q", c.Notes)
	}
}
