package structure

import (
	"underfoot/assess/figure"
	"underfoot/assess/formula"
	"underfoot/assess/quantity"
)

// A LoadTest is a known weight put on the floor, and the drop of a joist under it.
type LoadTest struct {
	Weight      quantity.Range // lb, on one joist at one place
	Place       quantity.Range // from the nearer support, in; nought: mid span
	Drop        quantity.Range // in, mean of the readings
	Uncertainty float64        // in, one reading either way; nought: that of With
	With        string         // dial-gauge, laser, string
}

// A Measured is what a load test says of a row of joists.
type Measured struct {
	Stiffness quantity.Range // E I of one joist with what shares the load, lb in^2
	Computed  quantity.Range // E I by the tables
	Live      quantity.Range // span over live-load deflection by the test
	Used      bool           // the test goes before the tables
	Text      string         // how the two stand to each other, and which is used
	Refusal   string
	Sheet     *formula.Sheet
	Sources   []figure.Source
}

// Measure reads a load test of a row of joists.
func Measure(m Member, loads Loads, test LoadTest, t *figure.Table) Measured { return Measured{} }

// LoadTestMethod is how a homeowner makes a load test, step by step, with its cautions.
func LoadTestMethod() []string { return nil }
