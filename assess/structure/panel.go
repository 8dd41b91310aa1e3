package structure

import (
	"math"

	"underfoot/assess/figure"
	"underfoot/assess/logic"
	"underfoot/assess/quantity"
	"underfoot/assess/result"
	"underfoot/assess/schema"
)

// A deck is what is known of the panels on the joists. Sheets that are screwed
// together bend as the sum of their stiffnesses, which grow with the cube of
// the thickness; Cubes is that sum, in cubic inches. Boards and planks are no
// sheets and count nothing. What nobody has named can only add to it.
type deck struct {
	cubes  quantity.Range // in^3
	sheets quantity.Range // how many
	some   logic.Outcome  // there is a sheet, or a floor with no deck at all
	deps   logic.Deps
}

// sheetWords are the deck kinds that are structural sheets in a region.
func sheetWords(region string) []string {
	return append([]string{"plywood", "osb", "interior-plywood", "treated-plywood"}, figure.PracticeOf(region).Sheets...)
}

// readDeck counts the sheets of a zone.
func readDeck(t *figure.Table, zone result.Thing) deck {
	d := deck{some: logic.Refuted}
	for _, item := range zone.Items(schema.ScopeDeck) {
		sheet := is(item, &deckKind, sheetWords(t.Region)...)
		thick := item.Fact("deck.thickness")
		d.add(sheet, positive(thick.Set.Range), thick.Deps)
		d.some = d.some.Or(sheet)
	}
	rest := zone.Rest(schema.ScopeDeck)
	switch {
	case rest != nil:
		deps := rest.Fact(deckKind.ID).Deps
		d.cubes.Hi, d.sheets.Hi = math.Inf(1), math.Inf(1)
		d.deps = d.deps.Union(deps)
		d.some = d.some.Or(logic.OpenOn(deps))
	case len(zone.Items(schema.ScopeDeck)) == 0:
		d.some = logic.Proven
	}
	return d
}

func (d *deck) add(sheet logic.Outcome, thick quantity.Range, deps logic.Deps) {
	if sheet.Truth == logic.No {
		return
	}
	d.deps = d.deps.Union(sheet.Deps).Union(deps)
	d.cubes.Hi, d.sheets.Hi = d.cubes.Hi+cube(thick.Hi), d.sheets.Hi+1
	if sheet.Truth == logic.Yes {
		d.cubes.Lo, d.sheets.Lo = d.cubes.Lo+cube(thick.Lo), d.sheets.Lo+1
	}
}

func cube(v float64) float64 { return v * v * v }

// thickness is that of the one sheet that is as stiff as all of them, in inches.
func (d deck) thickness() quantity.Range {
	return quantity.Range{Lo: math.Cbrt(d.cubes.Lo), Hi: math.Cbrt(d.cubes.Hi)}
}
