package structure

import (
	"underfoot/assess/figure"
	"underfoot/assess/logic"
	"underfoot/assess/message"
	"underfoot/assess/quantity"
	"underfoot/assess/result"
	"underfoot/assess/schema"
)

// memberOf is the row of joists of a zone, as far as it is known, with what
// lies on it.
func memberOf(zone result.Thing) (Member, Loads) {
	r := func(name string) quantity.Range { return zone.Fact(name).Set.Range }
	words := func(d *schema.Declaration) []string { return zone.Fact(d.ID).Set.Words(d) }
	m := Member{Size: zone.Fact("joist.size").Set.Text, Width: r("joist.width"), Depth: r("joist.depth"), Span: r("joist.span"), Spacing: r("joist.spacing"),
		Species: words(&species), Grades: words(&grade)}
	if on := words(&continuity); len(on) == 1 {
		m.Continuity = on[0]
	}
	if worst := words(&notched); len(worst) == 1 {
		m.Notched = worst[0]
	}
	return m, Loads{Live: r("joist.live_load"), Dead: r("joist.dead_load")}
}

// Advise adds to a check of a zone's joists what a reader wants to know beyond
// the number: how sure it is, the share of joists expected to fall short, what
// settles an open result and where it turns, and the ways to reach the limit.
// It leaves every other check, and one that has no number, as it is. It is made
// for the few checks that are shown, since it computes every way.
func Advise(t *figure.Table, zone result.Thing, c *result.Check) {
	if c.ID == "panel.short" {
		adviseDeck(t, zone, c)
		return
	}
	tile := chosenTile(zone)
	b := BoundFor(tile, t)
	if c.Work == nil || c.ID != map[Load]string{LiveLoad: "joist.ratio_live", TotalLoad: "joist.ratio_total"}[b.Load] {
		return
	}
	m, loads := memberOf(zone)
	a := Analyze(m, loads, b, t)
	if !a.Ratio().Bounded() {
		return
	}
	note := func(m message.Message) { c.Notes = append(c.Notes, m) }
	a.remarkResult(note)
	if tile == "" && c.Limit.Hi > b.Ratio {
		note(message.New("structure/note.tile"))
	}
	if a.Bending.Hi > 1 || a.Shear.Hi > 1 {
		note(message.New("structure/note.strength"))
	}
	c.Sources = append(c.Sources, figure.LumberFactor("spread").Source)
	if a.Outcome != result.CheckHolds {
		c.Options = cures(Options(m, loads, b, t), b, note)
		c.Sources = append(c.Sources, addedWood(t.Region).source, figure.LumberFactor("wood-density").Source)
	}
	c.Sources = once(c.Sources)
}

// deckOf is the deck of a zone; ok is false while some layer of it is not known.
func deckOf(zone result.Thing) (d Deck, ok bool) {
	r := func(name string) quantity.Range { return zone.Fact(name).Set.Range }
	d = Deck{Spacing: r("joist.spacing"), Live: r("joist.live_load"), Dead: r("joist.dead_load")}
	for _, item := range zone.Items(schema.ScopeDeck) {
		kind, thick := item.Fact(deckKind.ID).Set.Words(&deckKind), item.Fact("deck.thickness").Set.Range
		if len(kind) != 1 || !thick.Bounded() {
			return d, false
		}
		d.Layers = append(d.Layers, Layer{Kind: kind[0], Thickness: thick})
	}
	return d, zone.Rest(schema.ScopeDeck) == nil && d.Spacing.Bounded()
}

// adviseDeck tells how far the deck bends between the joists, beside the
// thickness that decides.
func adviseDeck(t *figure.Table, zone result.Thing, c *result.Check) {
	limit, _ := t.Figure("ceramic_limit")
	d, known := deckOf(zone)
	a := AnalyzeDeck(d, limit.Value, t)
	if !known || !a.Refusal.IsZero() {
		return
	}
	c.Notes = append(append(c.Notes, message.New("structure/note.deck", "ratio", quantity.Write(quantity.Ratio, floor(a.Live), quantity.US))), a.Notes...)
	c.Sources = once(append(c.Sources, a.Sources...))
}

// chosenTile is the word of the tile's kind, or empty while it is not known
// whether it is stone.
func chosenTile(zone result.Thing) string {
	switch is(zone, &tileKind, "natural-stone").Truth {
	case logic.Yes:
		return "natural-stone"
	case logic.No:
		return "ceramic"
	}
	return ""
}

// cures are the options that reach the limit for every possibility; the others
// are told in a note with the ratio that they come to.
func cures(all []result.Option, b Bound, note func(message.Message)) []result.Option {
	var out []result.Option
	for _, o := range all {
		if o.Outcome == result.CheckHolds {
			out = append(out, o)
			continue
		}
		ratio := quantity.Write(quantity.Ratio, floor(counted(o, b)), quantity.US)
		if b.Load == TotalLoad {
			note(message.New("structure/note.not_enough_total", "option", o.Text, "ratio", ratio))
		} else {
			note(message.New("structure/note.not_enough_live", "option", o.Text, "ratio", ratio))
		}
	}
	if len(out) == 0 {
		note(message.New("structure/note.no_cure"))
	}
	for _, m := range NoHelp()[:2] {
		note(m)
	}
	return out
}
