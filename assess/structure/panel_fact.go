package structure

import (
	"strconv"

	"underfoot/assess/figure"
	"underfoot/assess/formula"
	"underfoot/assess/logic"
	"underfoot/assess/message"
	"underfoot/assess/quantity"
	"underfoot/assess/result"
	"underfoot/assess/schema"
)

// Panel gives panel.short and panel.short_for_mat: whether the sheets on the
// joists are under the least thickness for backer board, and for an uncoupling
// mat. They are absent where boards alone lie on the joists, which another
// rule covers; a floor with no deck at all is short.
func Panel(t *figure.Table) result.Derivation {
	board, okBoard := panelBuilds(t, "panel_board_16")
	mat, okMat := panelBuilds(t, "panel_mat_16")
	return result.Derivation{ID: "panel.short", Scope: schema.ScopeZone,
		Reads: []string{substrate.ID, "joist.spacing", "beam.spacing", deckKind.ID, "deck.thickness", "deck.complete"},
		Gives: []schema.Declaration{schema.DerivedYesNo("panel.short", schema.ScopeZone), schema.DerivedYesNo("panel.short_for_mat", schema.ScopeZone)},
		Make: func(zone result.Thing) ([]schema.Fact, *result.Check) {
			spacing, d := panelSpacing(zone), readDeck(t, zone)
			if !okBoard || !okMat {
				f := schema.Fact{Presence: logic.Proven, Set: schema.Set{Mask: schema.SetNo.Mask | schema.SetYes.Mask}}
				return []schema.Fact{f, f}, nil
			}
			here := is(zone, &substrate, "joists", "beam-and-deck").And(d.some)
			short := schema.YesNoFact(here, board.short(d, spacing))
			facts := []schema.Fact{short, schema.YesNoFact(here, mat.short(d, spacing))}
			if here.Truth != logic.Yes {
				return facts, nil
			}
			return facts, panelCheck(t, zone, board, d, short)
		}}
}

// panelSpacing is what the panels span: from joist to joist, or from beam to
// beam; either, where it is not known which carries them.
func panelSpacing(zone result.Thing) schema.Fact {
	joists, beams := zone.Fact("joist.spacing"), zone.Fact("beam.spacing")
	switch {
	case is(zone, &substrate, "joists").Truth == logic.No:
		return beams
	case is(zone, &substrate, "beam-and-deck").Truth == logic.No:
		return joists
	}
	return schema.Fact{Presence: joists.Presence, Set: joists.Set.Hull(beams.Set, schema.KindQuantity),
		Deps: joists.Deps.Union(beams.Deps).Union(zone.Fact(substrate.ID).Deps)}
}

func panelCheck(t *figure.Table, zone result.Thing, b builds, d deck, short schema.Fact) *result.Check {
	spacing := panelSpacing(zone).Set.Range
	c := &result.Check{ID: "panel.short", Title: message.New("structure/title.panel"), Outcome: result.CheckOpen, Value: d.thickness(), Limit: b.limit(spacing),
		Dimension: quantity.Length, AtLeast: true, Note: message.New("structure/check.panel"), Work: d.work(zone, t.Region), Missing: zone.Named(short.Deps), Sources: b.sources}
	c.Margin = c.Value.Div(c.Limit).Sub(quantity.Point(1))
	switch short.Set {
	case schema.SetYes:
		c.Outcome = result.CheckFails
	case schema.SetNo:
		c.Outcome = result.CheckHolds
		if !stiffer(t, d, spacing) {
			c.Note = and(c.Note, message.New("structure/check.panel_stiffer"))
		}
	}
	if _, beyond := b.within(spacing); beyond && spacing.Lo > b.list[len(b.list)-1].upTo {
		c.Note = message.New("structure/check.panel_beyond")
	}
	return c
}

// stiffer is whether the deck reaches two sheets of the traditional build for
// its spacing, or the one sheet that stands for them.
func stiffer(t *figure.Table, d deck, spacing quantity.Range) bool {
	for _, x := range []struct{ upTo, each string }{{"panel_spacing_board", "panel_stiff_16"}, {"panel_spacing_single", "panel_stiff_19"}, {"panel_spacing_double", "panel_stiff_24"}} {
		upTo, okUp := t.Figure(x.upTo)
		each, okEach := t.Figure(x.each)
		if okUp && okEach && spacing.Hi <= upTo.Value {
			return d.cubes.Lo >= 2*cube(each.Value)
		}
	}
	return true
}

// work is the sum of the sheets, or nil where not each of them is known to be one.
func (d deck) work(zone result.Thing, region string) *formula.Sheet {
	if !d.sheets.IsPoint() || d.sheets.Lo == 0 {
		return nil
	}
	s := &formula.Sheet{Title: message.New("structure/title.panel")}
	sum := ""
	for _, item := range zone.Items(schema.ScopeDeck) {
		if is(item, &deckKind, sheetWords(region)...).Truth != logic.Yes {
			continue
		}
		name := "sheet_" + strconv.Itoa(len(s.Lines)+1)
		s.Input(name, message.New("structure/line.sheet", "sheet", item.ID()), "in", quantity.Length, positive(item.Fact("deck.thickness").Set.Range), formula.Stated)
		if sum != "" {
			sum += " + "
		}
		sum += name + "^3"
	}
	s.Let("thickness", message.New("structure/line.thickness"), "in", quantity.Length, "("+sum+")^(1 / 3)")
	return s
}
