package structure

import (
	"math"

	"underfoot/assess"
	"underfoot/assess/figure"
	"underfoot/assess/quantity"
)

// A deck is what is known of the panels on the joists. Sheets that are screwed
// together bend as the sum of their stiffnesses, which grow with the cube of
// the thickness; Cubes is that sum, in cubic inches. Boards and planks are no
// sheets and count nothing. What nobody has named can only add to it.
type deck struct {
	cubes  quantity.Range // in^3
	sheets quantity.Range // how many
	some   assess.Outcome // there is a sheet, or a floor with no deck at all
	deps   assess.Deps
}

// sheetWords are the deck kinds that are structural sheets in a region.
func sheetWords(region string) []string {
	return append([]string{"plywood", "osb", "interior-plywood", "treated-plywood"}, figure.PracticeOf(region).Sheets...)
}

// readDeck counts the sheets of a zone.
func readDeck(t *figure.Table, zone assess.Thing) deck {
	d := deck{some: assess.Refuted}
	for _, item := range zone.Items(assess.ScopeDeck) {
		sheet := is(item, &deckKind, sheetWords(t.Region)...)
		thick := item.Fact("deck.thickness")
		d.add(sheet, positive(thick.Set.Range), thick.Deps)
		d.some = d.some.Or(sheet)
	}
	rest := zone.Rest(assess.ScopeDeck)
	switch {
	case rest != nil:
		deps := rest.Fact(deckKind.ID).Deps
		d.cubes.Hi, d.sheets.Hi = math.Inf(1), math.Inf(1)
		d.deps = d.deps.Union(deps)
		d.some = d.some.Or(assess.OpenOn(deps))
	case len(zone.Items(assess.ScopeDeck)) == 0:
		d.some = assess.Proven
	}
	return d
}

func (d *deck) add(sheet assess.Outcome, thick quantity.Range, deps assess.Deps) {
	if sheet.Truth == assess.No {
		return
	}
	d.deps = d.deps.Union(sheet.Deps).Union(deps)
	d.cubes.Hi, d.sheets.Hi = d.cubes.Hi+cube(thick.Hi), d.sheets.Hi+1
	if sheet.Truth == assess.Yes {
		d.cubes.Lo, d.sheets.Lo = d.cubes.Lo+cube(thick.Lo), d.sheets.Lo+1
	}
}

func cube(v float64) float64 { return v * v * v }

// thickness is that of the one sheet that is as stiff as all of them, in inches.
func (d deck) thickness() quantity.Range {
	return quantity.Range{Lo: math.Cbrt(d.cubes.Lo), Hi: math.Cbrt(d.cubes.Hi)}
}
