package structure

import (
	"math"
	"slices"

	"underfoot/assess"
	"underfoot/assess/figure"
	"underfoot/assess/formula"
	"underfoot/assess/message"
	"underfoot/assess/quantity"
)

// A remedy is one way to make a row of joists stiffer.
type remedy struct {
	id, text   string
	joist      Joist          // with the remedy carried out, its own weight in the dead load
	also       Joist          // a second joist that must hold too; no depth: none
	weight     quantity.Range // psf, added
	quantities []assess.Quantity
	needs      []string
}

const (
	needBearing  = "both ends on the same supports as the old joist, each with its full bearing"
	needFast     = "fastened along the whole length as the local code or an engineer says, old and new joist brought to one level at the top first, without jacking cracks into walls above"
	needClear    = "pipes, wires and ducts along the joist moved first by the licensed trade"
	needPermit   = "ask the building office whether a permit is needed"
	needEngineer = "an engineer sizes beam, posts and footings, and the beam's own bending comes on top of this figure"
	needFooting  = "posts on footings, never on a slab or on soil alone"
	needOnePiece = "joists in one piece from support to support, and a beam that touches every one of them"
	needHangers  = "hangers or bearing at both ends, sized by the local code or an engineer"
	needDeeper   = "room at the supports for a deeper piece: cut down at its ends to fit, it is an engineer's matter"
)

// Options are the ways to make a row of joists stiffer, each computed on the
// same inputs; those that hold come first, then in the order of their work. A
// refused member has none.
func Options(m Member, loads Loads, b Bound, t *figure.Table) []assess.Option {
	r, refusal := m.read(loads, t.Region)
	if refusal != "" || b.Ratio <= 0 || !bounded(r.joist.Ratio(b.Load)) {
		return nil
	}
	var all []assess.Option
	for _, x := range remedies(r.joist, newWood(r, t.Region)) {
		all = append(all, x.option(b))
	}
	slices.SortStableFunc(all, func(x, y assess.Option) int { return rank(x.Outcome) - rank(y.Outcome) })
	return all
}

// rank puts what holds first and what fails last.
func rank(o assess.CheckOutcome) int {
	return map[assess.CheckOutcome]int{assess.CheckHolds: 0, assess.CheckOpen: 1, assess.CheckFails: 2}[o]
}

// A wood is new lumber as it is counted.
type wood struct {
	name    string
	modulus quantity.Range
	source  figure.Source
}

// newWood is what added lumber is taken to be: No.2 of a species group that is
// sold widely and is not stiffer than the others; elsewhere strength class
// C24. A choice of this program, told with each option.
func newWood(r row, region string) wood {
	w := addedWood(region)
	for _, s := range r.joist.Softer {
		w.modulus = w.modulus.Mul(quantity.Point(s.Value))
	}
	return w
}

// addedWood is newWood before wet service and incising.
func addedWood(region string) wood {
	name, group, class := "hem-fir no2", "hem-fir", "no2"
	if region != "us" && region != "ca" {
		name, group, class = "c24", "", "c24"
	}
	f, _ := figure.LumberValue(group, class, "", figure.Stiffness)
	if group == "" {
		f = apparent(f)
	}
	return wood{name, quantity.Point(f.Value), f.Source}
}

// option computes a remedy against the bound.
func (x remedy) option(b Bound) assess.Option {
	sheets := [...]*formula.Sheet{x.joist.Sheet(x.text, LiveLoad), x.joist.Sheet(x.text, TotalLoad)}
	o := assess.Option{ID: x.id, Text: message.Verbatim(x.text), Live: sheets[LiveLoad].Result(), Total: sheets[TotalLoad].Result(), Weight: x.weight,
		Quantities: x.quantities, Needs: verbatim(x.needs...), Work: sheets[b.Load]}
	if x.also.Depth != (quantity.Range{}) {
		o.Live, o.Total = lesser(o.Live, x.also.Ratio(LiveLoad)), lesser(o.Total, x.also.Ratio(TotalLoad))
	}
	o.Outcome = against(b.Least(x.joist.Span), counted(o, b)).Outcome
	return o
}

// counted is the ratio of an option that the bound is compared with.
func counted(o assess.Option, b Bound) quantity.Range {
	if b.Load == TotalLoad {
		return o.Total
	}
	return o.Live
}

// lesser is the range of the smaller of two.
func lesser(r, s quantity.Range) quantity.Range {
	return quantity.Range{Lo: math.Min(r.Lo, s.Lo), Hi: math.Min(r.Hi, s.Hi)}
}

// NoHelp are the things that people hope for and that do not stiffen a joist,
// each a sentence with its reason.
func NoHelp() []string {
	return []string{
		"Backer board, an uncoupling mat or a membrane adds nothing to the joists: it is thin, lies on top, and is fastened for bond, not for bending.",
		"Bridging or blocking between joists shares point loads and damps bounce; under a load spread over the floor all joists bend alike, and it takes nothing away.",
		"A thicker mortar bed or a leveling layer brings weight, which bends the joists further; its stiffness is not counted, since it cracks first.",
		"A sister that stops short of the supports helps little unless it covers most of the span, and its ends need an engineer's look; none of it is counted here.",
		"A second layer of panels stiffens the floor between the joists, and the joists hardly at all; glue between deck and joists is not counted either, as published tables do not.",
		"A post or jack without a footing sinks, and jacking a floor up may crack walls and pipes.",
	}
}
