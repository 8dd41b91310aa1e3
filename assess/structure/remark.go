package structure

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"underfoot/assess"
	"underfoot/assess/figure"
	"underfoot/assess/quantity"
)

const (
	titleShare    = "Joists: share expected to be softer than the limit needs"
	titleCreep    = "Joists: deflection in the long run"
	titleTip      = "Joists: overhang under live load"
	titleStrength = "Joists: use of the wood's strength, a warning"
)

// remark writes what is to be known of the numbers.
func (a *Analysis) remark(m Member, loads Loads, r row, region string) {
	note := func(format string, values ...any) {
		a.Notes = append(a.Notes, sentence(fmt.Sprintf(format, values...)))
	}
	a.remarkResult(note)
	if a.Bending.Hi > 1 || a.Shear.Hi > 1 {
		note("%s", noteStrength)
	}
	if len(loads.Heavy) > 0 || loads.Point != (quantity.Range{}) {
		note("%s", noteHeavy)
	}
	for _, kind := range loads.Heavy {
		note("%s stands for a load that no uniform load covers: an engineer, or a table for it, says whether the joists below carry it", kind)
	}
	if m.Wet {
		note("wet in service: find and cure the moisture first; it also lets dead load bend the joists twice as far in the long run")
	}
	a.remarkNotches(m, region, note)
	a.remarkPlausible(m, note)
	if r.classes {
		a.remarkClasses(r, note)
	}
	note("%s", noteScreened)
}

const noteStrength = "strength: some of the woods that are possible would be loaded past their tabulated strength; an engineer looks at it before weight is added"

const noteHeavy = "a point load is counted on one joist, with no help from its neighbours; walls, tubs, islands and other heavy things go to an engineer"

// remarkResult says how sure the result is, and the other reading of the bound.
func (a *Analysis) remarkResult(note func(string, ...any)) {
	if a.Ratio().Bounded() {
		note("%s", map[assess.CheckOutcome]string{assess.CheckHolds: "holds for every possibility", assess.CheckFails: "fails for every possibility",
			assess.CheckOpen: "open: it holds for some of what is possible and fails for the rest"}[a.Outcome])
		note("of 100 such joists, %s are expected to be softer than this limit needs: lumber of one grade varies", inHundred(a.Share))
	}
	if a.Deciding.Text != "" {
		note("%s", a.Deciding.Text)
	}
	if a.Bound.Cap > 0 && a.Live.Bounded() {
		note("sources differ on the load that the limit under stone means: total load decides here; under live load alone the ratio is %s", quantity.Write(quantity.Ratio, floor(a.Live), quantity.US))
	}
	if a.Least.Hi > a.Bound.Ratio {
		note("on a span over 14 ft the cap of 7/32 in asks for more than the ratio")
	}
}

// remarkNotches tells the limits that notches and holes were found to keep.
func (a *Analysis) remarkNotches(m Member, region string, note func(string, ...any)) {
	if m.Notched != "within-limits" {
		return
	}
	note("notches and holes within the limits are not counted in the sum; the limits are those of the local code")
	if rules, ok := LimitsOf(region); ok {
		for _, text := range rules.Texts {
			note("%s", text)
		}
		a.Sources = append(a.Sources, rules.Source)
	}
}

// remarkPlausible challenges sizes that look like slips.
func (a *Analysis) remarkPlausible(m Member, note func(string, ...any)) {
	span, spacing := said(m.Span), said(m.Spacing)
	if spacing.Hi < 8 {
		note("joists less than 8 in apart are unusual: measure again from centre to centre")
	}
	if bounded(span) && span.Hi < 36 {
		note("a span under 3 ft is unusual: measure again from support to support")
	}
	if g := a.Longest.Governing(); bounded(span) && bounded(g) && span.Lo > 1.5*g.Hi {
		note("the span is more than half as long again as any joist of this size is meant for: look for a support in between, and measure again")
	}
}

// remarkClasses compares the final deflection of a strength class with the
// limit of a guidance note for a brittle finish.
func (a *Analysis) remarkClasses(r row, note func(string, ...any)) {
	limit := figure.LumberFactor("class-final-limit")
	if final := r.joist.Span.Div(a.LongTerm); final.Bounded() {
		note("in the long run span over deflection is %s; a guidance note asks for L/%g under a brittle finish, and says nothing of tile", quantity.Write(quantity.Ratio, floor(final), quantity.US), limit.Value)
	}
}

// floor is a ratio in whole numbers, rounded to the unfavourable side.
func floor(r quantity.Range) quantity.Range {
	return quantity.Range{Lo: math.Floor(r.Lo), Hi: math.Floor(r.Hi)}
}

// sentence is a text with a capital and a full stop.
func sentence(text string) string {
	text = strings.ToUpper(text[:1]) + text[1:]
	if strings.HasSuffix(text, ".") {
		return text
	}
	return text + "."
}

// inHundred is a share as a whole number out of a hundred.
func inHundred(share quantity.Range) string {
	lo, hi := math.Round(100*share.Lo), math.Round(100*share.Hi)
	if lo == hi {
		return fmt.Sprintf("about %g", lo)
	}
	return fmt.Sprintf("%g to %g", lo, hi)
}

// sources are those of everything that the analysis used, each once.
func (a *Analysis) sources(r row) []figure.Source {
	all := append(slices.Concat(a.Bound.Sources, a.Sources), BeamSource)
	if r.joist.spans() > 1 {
		all = append(all, ContinuousSource)
	}
	all = append(append(all, r.joist.ModulusSources...), figure.DressedSource(), SpanTableSource)
	for _, f := range r.joist.Softer {
		all = append(all, f.Source)
	}
	all = append(all, figure.LumberFactor("spread").Source, r.creep.Source)
	if bounded(r.bending) {
		all = append(append(all, figure.RepetitiveFactor().Source), r.strengthSources...)
	}
	return once(all)
}

func once(all []figure.Source) []figure.Source {
	var out []figure.Source
	for _, s := range all {
		if !slices.Contains(out, s) {
			out = append(out, s)
		}
	}
	return out
}
