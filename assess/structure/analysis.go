package structure

import (
	"underfoot/assess"
	"underfoot/assess/figure"
	"underfoot/assess/formula"
	"underfoot/assess/quantity"
)

// An Analysis is what the sums say of a row of joists. A refusal has no number:
// every range is Everything, and there is no sheet.
type Analysis struct {
	Outcome    assess.CheckOutcome
	Refusal    string         // why there is no number and who has it; empty where there is one
	Live       quantity.Range // span over live-load deflection
	Total      quantity.Range // span over live- and dead-load deflection
	Deflection quantity.Range // under live load, in
	LongTerm   quantity.Range // live load, and dead load times the creep factor, in
	Bound      Bound
	Least      quantity.Range // least ratio that the bound asks for on this span
	Margin     quantity.Range // ratio over Least, less one
	Longest    Longest        // clear spans that meet the bound, in
	Share      quantity.Range // share of joists expected to be softer than the bound needs, 0 to 1
	Bending    quantity.Range // bending stress over the tabulated strength, 1 is full; a warning
	Shear      quantity.Range // the same for shear
	Tip        quantity.Range // ratio of twice the overhang to its live-load deflection; Everything without one
	Deciding   Deciding
	Assumed    []string
	Notes      []string
	Sources    []figure.Source
	Sheets     []*formula.Sheet // live load first
}

// Deciding is the fact that settles an open result.
type Deciding struct {
	Facts     []string // short names, such as joist.grade; none where the result is not open
	Flip      float64  // value of the uncertain quantity at which the result turns
	Unit      string
	Dimension quantity.Dimension
	Text      string
}

// Analyze computes a row of joists under its loads against a bound. Source of
// each formula and figure: Analysis.Sources and the sheets.
func Analyze(m Member, loads Loads, b Bound, t *figure.Table) Analysis {
	return Analysis{Outcome: assess.CheckRefused, Refusal: "not computed", Bound: b, Live: quantity.Everything, Total: quantity.Everything,
		Deflection: quantity.Everything, LongTerm: quantity.Everything, Tip: quantity.Everything}
}
