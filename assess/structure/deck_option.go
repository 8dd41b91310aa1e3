package structure

import (
	"underfoot/assess"
	"underfoot/assess/figure"
	"underfoot/assess/message"
	"underfoot/assess/quantity"
)

// DeckOptions are the ways to make a deck stiffer between its joists: closer
// support from below, and a second layer of plywood screwed on top; ratios are
// those of the deck. A refused deck has none.
func DeckOptions(d Deck, limit float64, t *figure.Table) []assess.Option {
	if AnalyzeDeck(d, limit, t).Refusal != "" {
		return nil
	}
	closer := d
	closer.Spacing, closer.Bays = d.Spacing.Mul(quantity.Point(0.5)), d.Bays
	all := []assess.Option{closer.option(assess.Option{ID: "panel-support",
		Text:  message.Verbatim("fit ledgers and blocking, or joists, so that panels are supported every half spacing"),
		Needs: verbatim("solid blocking fastened to both joists and tight under the panel; it stiffens the panel, never the joist")}, limit, t)}
	for _, x := range []struct {
		id, text string
		thick    float64
	}{{"second-layer-half", "screw a second layer of 1/2 in plywood over the first, joints apart from those below", 0.5},
		{"second-layer-three-quarter", "screw a second layer of 3/4 in plywood over the first, joints apart from those below", 0.75}} {
		two := d
		two.Layers = append([]Layer{{Kind: "plywood", Thickness: quantity.Point(x.thick)}}, d.Layers...)
		per, _ := t.Figure("weight_plywood_inch")
		all = append(all, two.option(assess.Option{ID: x.id, Text: message.Verbatim(x.text), Height: quantity.Point(x.thick), Weight: quantity.Point(x.thick * per.Value),
			Quantities: []assess.Quantity{{Text: message.Verbatim("plywood"), Value: quantity.Point(100), Unit: message.Verbatim("ft2 per 100 ft2 of floor"), Note: message.Verbatim("without waste")}},
			Needs:      verbatim("screwed into the first layer, no glue is counted; its strong direction across the joists", "door, step and appliance heights looked at first")}, limit, t))
	}
	return all
}

func (d Deck) option(o assess.Option, limit float64, t *figure.Table) assess.Option {
	a := AnalyzeDeck(d, limit, t)
	o.Outcome, o.Live, o.Total, o.Work = a.Outcome, a.Live, a.Total, a.Sheet
	return o
}
