package structure

import (
	"math"
	"slices"

	"underfoot/assess/figure"
	"underfoot/assess/message"
	"underfoot/assess/quantity"
)

// remark writes what is to be known of the numbers.
func (a *Analysis) remark(m Member, loads Loads, r row, region string) {
	note := func(m message.Message) { a.Notes = append(a.Notes, m) }
	a.remarkResult(note)
	if a.Bending.Hi > 1 || a.Shear.Hi > 1 {
		note(message.New("structure/note.strength"))
	}
	if len(loads.Heavy) > 0 || loads.Point != (quantity.Range{}) {
		note(message.New("structure/note.point"))
	}
	for _, kind := range loads.Heavy {
		note(message.New("structure/note.heavy", "load", kind))
	}
	if m.Wet {
		note(message.New("structure/note.wet"))
	}
	a.remarkNotches(m, region, note)
	a.remarkPlausible(m, note)
	if r.classes {
		a.remarkClasses(r, note)
	}
	note(message.New("structure/note.screened"))
}

// remarkResult says how sure the result is, and the other reading of the bound.
func (a *Analysis) remarkResult(note func(message.Message)) {
	if a.Ratio().Bounded() {
		note(message.New("structure/note." + a.Outcome.String()))
		note(inHundred(a.Share))
	}
	if !a.Deciding.Sentence.IsZero() {
		note(a.Deciding.Sentence)
	}
	if a.Bound.Cap > 0 && a.Live.Bounded() {
		note(message.New("structure/note.stone", "ratio", quantity.Write(quantity.Ratio, floor(a.Live), quantity.US)))
	}
	if a.Least.Hi > a.Bound.Ratio {
		note(message.New("structure/note.cap"))
	}
}

// remarkNotches tells the limits that notches and holes were found to keep.
func (a *Analysis) remarkNotches(m Member, region string, note func(message.Message)) {
	if m.Notched != "within-limits" {
		return
	}
	note(message.New("structure/note.notches"))
	if rules, ok := LimitsOf(region); ok {
		for _, m := range rules.Texts {
			note(m)
		}
		a.Sources = append(a.Sources, rules.Source)
	}
}

// remarkPlausible challenges sizes that look like slips.
func (a *Analysis) remarkPlausible(m Member, note func(message.Message)) {
	span, spacing := stated(m.Span), stated(m.Spacing)
	if spacing.Hi < 8 {
		note(message.New("structure/note.close"))
	}
	if bounded(span) && span.Hi < 36 {
		note(message.New("structure/note.short"))
	}
	if g := a.Longest.Governing(); bounded(span) && bounded(g) && span.Lo > 1.5*g.Hi {
		note(message.New("structure/note.long"))
	}
}

// remarkClasses compares the final deflection of a strength class with the
// limit of a guidance note for a brittle finish.
func (a *Analysis) remarkClasses(r row, note func(message.Message)) {
	limit := figure.LumberFactor("class-final-limit")
	if final := r.joist.Span.Div(a.LongTerm); final.Bounded() {
		note(message.New("structure/note.final", "ratio", quantity.Write(quantity.Ratio, floor(final), quantity.US), "limit", limit.Value))
	}
}

// floor is a ratio in whole numbers, rounded to the unfavourable side.
func floor(r quantity.Range) quantity.Range {
	return quantity.Range{Lo: math.Floor(r.Lo), Hi: math.Floor(r.Hi)}
}

// inHundred tells a share as a whole number out of a hundred.
func inHundred(share quantity.Range) message.Message {
	lo, hi := math.Round(100*share.Lo), math.Round(100*share.Hi)
	if lo == hi {
		return message.New("structure/note.share", "number", lo)
	}
	return message.New("structure/note.share_range", "low", lo, "high", hi)
}

// sources are those of everything that the analysis used, each once.
func (a *Analysis) sources(r row) []figure.Source {
	all := append(slices.Concat(a.Bound.Sources, a.Sources), figure.Method("beam"))
	if r.joist.spans() > 1 {
		all = append(all, figure.Method("continuous"))
	}
	all = append(append(all, r.joist.ModulusSources...), figure.DressedSource(), figure.Method("span-tables"))
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
