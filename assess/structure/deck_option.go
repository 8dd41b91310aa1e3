package structure

import (
	"underfoot/assess/figure"
	"underfoot/assess/message"
	"underfoot/assess/quantity"
	"underfoot/assess/result"
)

// DeckOptions are the ways to make a deck stiffer between its joists: closer
// support from below, and a second layer of plywood screwed on top; ratios are
// those of the deck. A refused deck has none.
func DeckOptions(d Deck, limit float64, t *figure.Table) []result.Option {
	if !AnalyzeDeck(d, limit, t).Refusal.IsZero() {
		return nil
	}
	closer := d
	closer.Spacing, closer.Bays = d.Spacing.Mul(quantity.Point(0.5)), d.Bays
	all := []result.Option{closer.option(result.Option{ID: "panel-support",
		Text:  message.New("structure/option.panel_support"),
		Needs: []message.Message{message.New("structure/need.blocking")}}, limit, t)}
	for _, x := range []struct {
		id    string
		text  message.Message
		thick float64
	}{{"second-layer-half", message.New("structure/option.second_half"), 0.5},
		{"second-layer-three-quarter", message.New("structure/option.second_three_quarter"), 0.75}} {
		two := d
		two.Layers = append([]Layer{{Kind: "plywood", Thickness: quantity.Point(x.thick)}}, d.Layers...)
		per, _ := t.Figure("weight_plywood_inch")
		all = append(all, two.option(result.Option{ID: x.id, Text: x.text, Height: quantity.Point(x.thick), Weight: quantity.Point(x.thick * per.Value),
			Quantities: []result.Quantity{{Text: message.New("structure/amount.plywood"), Value: quantity.Point(100), Unit: message.New("structure/amount.plywood_unit"), Note: message.New("structure/amount.no_waste")}},
			Needs:      []message.Message{message.New("structure/need.screwed"), message.New("structure/need.heights")}}, limit, t))
	}
	return all
}

func (d Deck) option(o result.Option, limit float64, t *figure.Table) result.Option {
	a := AnalyzeDeck(d, limit, t)
	o.Outcome, o.Live, o.Total, o.Work = a.Outcome, a.Live, a.Total, a.Sheet
	return o
}
