package structure

import (
	"testing"

	"underfoot/assess/figure"
	"underfoot/assess/quantity"
)

var us = figure.For("us", quantity.US)

// kitchen is a floor that fails or is open by its wood: 2x8 at 16 in over 13 ft 6 in.
func kitchen() Member {
	return Member{Size: "2x8", Species: []string{"hem-fir"}, Span: quantity.Point(162), Spacing: quantity.Point(16)}
}

func TestKitchen(t *testing.T) {
	a := Analyze(kitchen(), Loads{}, BoundFor("ceramic", us), us)
	t.Logf("%+v", a)
	for _, s := range a.Sheets {
		for _, l := range s.Lines {
			t.Log(s.Title, l.Name, l.Expr, l.Value)
		}
	}
	for _, o := range Options(kitchen(), Loads{}, BoundFor("ceramic", us), us) {
		t.Logf("%s %v live %v total %v weight %v %v", o.ID, o.Outcome, o.Live, o.Total, o.Weight, o.Quantities)
	}
	m := kitchen()
	m.Species, m.Span = nil, quantity.Point(144)
	a = Analyze(m, Loads{}, BoundFor("ceramic", us), us)
	t.Logf("%v %v %+v\n%q", a.Outcome, a.Live, a.Deciding, a.Notes)
}
