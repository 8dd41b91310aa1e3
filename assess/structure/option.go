package structure

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"underfoot/assess"
	"underfoot/assess/figure"
	"underfoot/assess/formula"
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

// remedies are those that fit the joists.
func remedies(j Joist, w wood) []remedy {
	var all []remedy
	same, shallower, deeper := sisterDepths(j.Depth)
	sister := func(id string, depth, width float64, needs ...string) {
		if depth > 0 {
			all = append(all, sistered(j, w, id, depth, width, append(needs, needBearing, needFast, needClear, needPermit)))
		}
	}
	sister("sister-shallower", shallower, 1.5)
	sister("sister-same", same, 1.5)
	sister("sister-both-sides", same, 3)
	sister("sister-deeper", deeper, 1.5, needDeeper)
	all = append(all, between(j, w, same))
	if j.spans() == 1 {
		all = append(all, beamAtMidSpan(j))
	}
	return all
}

// sisterDepths are the dressed depths, in inches, of a sister that fits beside
// a joist of a depth, and of those one size less and one size more; nought
// where there is none.
func sisterDepths(depth quantity.Range) (same, shallower, deeper float64) {
	for _, name := range figure.Sizes() {
		if !strings.HasPrefix(name, "2x") {
			continue
		}
		if _, d, _ := figure.Dressed(name); d <= depth.Lo+1.0/16 {
			same, shallower = d, same
		} else if deeper == 0 && d > depth.Hi {
			deeper = d
		}
	}
	return same, shallower, deeper
}

// nominalDepth is the name of a dressed size of 2 in lumber.
func nominalDepth(depth float64) string {
	for _, name := range figure.Sizes() {
		if _, d, _ := figure.Dressed(name); d == depth && strings.HasPrefix(name, "2x") {
			return name
		}
	}
	return fmt.Sprintf("%g in", depth)
}

// sistered is a joist with a new piece beside it from support to support.
func sistered(j Joist, w wood, id string, depth, width float64, needs []string) remedy {
	x := remedy{id: id, needs: needs}
	pieces := "a new "
	if width > 1.5 {
		pieces = "new pieces on both sides, each a "
	}
	x.text = fmt.Sprintf("fasten %s%s of %s beside every joist over its full length", pieces, nominalDepth(depth), w.name)
	j.Sister = Piece{quantity.Point(width), quantity.Point(depth), w.modulus}
	x.added(j, width*depth, width/1.5)
	return x
}

// between is a new joist half way between every two.
func between(j Joist, w wood, depth float64) remedy {
	x := remedy{id: "joists-between", needs: []string{needHangers, needClear, needPermit, "the deck fastened to the new joists from above, or shimmed tight from below"}}
	if depth == 0 {
		depth = j.Depth.Lo
	}
	x.text = fmt.Sprintf("put a new %s of %s half way between every two joists", nominalDepth(depth), w.name)
	old := j.Spacing
	x.added(j, 1.5*depth, 1)
	x.joist.Spacing = old.Mul(quantity.Point(0.5))
	x.also = x.joist
	x.also.Width, x.also.Depth, x.also.Modulus, x.also.Softer = quantity.Point(1.5), quantity.Point(depth), w.modulus, nil
	return x
}

// beamAtMidSpan halves the span; live load on one half alone is the worst.
func beamAtMidSpan(j Joist) remedy {
	x := remedy{id: "beam-at-mid-span", needs: []string{needEngineer, needFooting, needOnePiece, needPermit},
		text: "put a beam under the middle of the joists; they stay in one piece and run on over it, and live load on one half alone is counted"}
	x.joist = j
	x.joist.Span, x.joist.Spans, x.joist.Point = j.Span.Mul(quantity.Point(0.5)), 2, j.Point
	line := j.Live.Add(j.Dead).Mul(j.Span).Mul(quantity.Point(1.25 / 2 / 12))
	x.quantities = []assess.Quantity{{Text: "load that the beam has to take", Value: line, Unit: "lb per ft of beam",
		Note: "5/4 of the load of half a span (theorem of three moments); for the one who sizes the beam"}}
	return x
}

// added counts the weight and the length of new pieces; area is their cross
// section in square inches, pieces how many stand at each joist.
func (x *remedy) added(j Joist, area, pieces float64) {
	density := figure.LumberFactor("wood-density")
	x.weight = quantity.Point(area * density.Value / 144 * 12).Div(j.Spacing)
	j.Dead = j.Dead.Add(x.weight)
	x.joist = j
	per := quantity.Point(100 * 12 * pieces).Div(j.Spacing)
	x.quantities = []assess.Quantity{
		{Text: "length of a piece, with an inch and a half on each support", Value: j.Span.Add(quantity.Point(3)).Mul(quantity.Point(1. / 12)), Unit: "ft"},
		{Text: "new lumber", Value: per, Unit: "ft per 100 ft2 of floor", Note: "without waste"},
	}
}

// option computes a remedy against the bound.
func (x remedy) option(b Bound) assess.Option {
	sheets := [...]*formula.Sheet{x.joist.Sheet(x.text, LiveLoad), x.joist.Sheet(x.text, TotalLoad)}
	o := assess.Option{ID: x.id, Text: x.text, Live: sheets[LiveLoad].Result(), Total: sheets[TotalLoad].Result(), Weight: x.weight,
		Quantities: x.quantities, Needs: x.needs, Work: sheets[b.Load]}
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
