package structure

import (
	"math"

	"underfoot/assess/figure"
	"underfoot/assess/formula"
	"underfoot/assess/message"
	"underfoot/assess/quantity"
	"underfoot/assess/result"
)

// An Analysis is what the sums say of a row of joists. A refusal has no number:
// every range is Everything, and there is no sheet.
type Analysis struct {
	Outcome    result.CheckOutcome
	Refusal    message.Message // why there is no number and who has it; empty where there is one
	Live       quantity.Range  // span over live-load deflection
	Total      quantity.Range  // span over live- and dead-load deflection
	Deflection quantity.Range  // under live load, in
	LongTerm   quantity.Range  // live load, and dead load times the creep factor, in
	Bound      Bound
	Least      quantity.Range // least ratio that the bound asks for on this span
	Margin     quantity.Range // ratio over Least, less one
	Longest    Longest        // clear spans that meet the bound, in
	Share      quantity.Range // share of joists expected to be softer than the bound needs, 0 to 1
	Bending    quantity.Range // bending stress over the tabulated strength, 1 is full; a warning
	Shear      quantity.Range // the same for shear
	Tip        quantity.Range // ratio of twice the overhang to its live-load deflection; Everything without one
	Deciding   Deciding
	Assumed    []message.Message
	Notes      []message.Message
	Sources    []figure.Source
	Sheets     []*formula.Sheet // live load, total load, share, long term, strength
}

// Ratio is the one that the bound is compared with.
func (a Analysis) Ratio() quantity.Range {
	if a.Bound.Load == TotalLoad {
		return a.Total
	}
	return a.Live
}

// Analyze computes a row of joists under its loads against a bound: the range
// over everything that is still possible, whose low end decides. Sources stand
// in Analysis.Sources and beside the lines of the sheets.
func Analyze(m Member, loads Loads, b Bound, t *figure.Table) Analysis {
	r, refusal := m.read(loads, t.Region)
	if refusal.IsZero() && b.Ratio <= 0 {
		refusal = message.New("structure/refusal.no_limit")
	}
	if !refusal.IsZero() {
		return refusedAnalysis(b, refusal)
	}
	a := Analysis{Bound: b, Assumed: r.assumed, Tip: quantity.Everything}
	a.ratios(r.joist)
	a.Longest = r.joist.Longest(b, r.bending)
	a.share()
	a.longTerm(r)
	a.strength(r)
	a.tip(m, r.joist)
	a.judge(m)
	a.Deciding = decide(r, b, a.Outcome)
	a.remark(m, loads, r, t.Region)
	a.Sources = a.sources(r)
	return a
}

// refusedAnalysis has a reason and no number.
func refusedAnalysis(b Bound, why message.Message) Analysis {
	q := quantity.Everything
	return Analysis{Outcome: result.CheckRefused, Refusal: why, Bound: b, Live: q, Total: q, Deflection: q, LongTerm: q, Least: q, Margin: q,
		Longest: Longest{q, q}, Share: q, Bending: q, Shear: q, Tip: q}
}

func (a *Analysis) show(s *formula.Sheet) *formula.Sheet {
	a.Sheets = append(a.Sheets, s)
	return s
}

func value(s *formula.Sheet, name string) quantity.Range {
	l, _ := s.Line(name)
	return l.Value
}

func (a *Analysis) ratios(j Joist) {
	live := a.show(j.Sheet(LiveLoad).Titled(message.New("structure/title.live")))
	a.Live, a.Deflection = live.Result(), value(live, "sag")
	a.Total = a.show(j.Sheet(TotalLoad).Titled(message.New("structure/title.total"))).Result()
	a.Least = a.Bound.Least(j.Span)
	a.Margin = a.Ratio().Div(a.Least).Sub(quantity.Point(1))
}

// share is the part of the joists that the natural spread of lumber makes
// softer than the bound needs: a joist of the mean stiffness has the ratio
// computed, and stiffness spreads about it as a normal distribution.
//
//	share = normal((limit / ratio - 1) / spread)    spread: coefficient of variation of E
func (a *Analysis) share() {
	a.Share = quantity.Range{Lo: 0, Hi: 1}
	if !a.Ratio().Bounded() {
		return
	}
	spread := figure.LumberFactor("spread")
	s := a.show(&formula.Sheet{Title: message.New("structure/title.share")})
	s.Input("ratio", message.New("structure/line.mean_ratio"), "L/", quantity.Ratio, a.Ratio(), formula.Stated)
	s.Input("limit", message.New("structure/line.limit"), "L/", quantity.Ratio, a.Least, formula.Stated)
	s.Input("spread", message.New("structure/line.spread"), "", quantity.Number, quantity.Point(spread.Value), message.Verbatim(spread.Source.Title))
	a.Share = s.Let("share", message.New("structure/line.share"), "", quantity.Number, "normal((limit / ratio - 1) / spread)")
}

// longTerm is live-load deflection and dead-load deflection times the creep
// factor (NDS 3.5.2); for strength classes that of EN 1995-1-1:
// dead (1 + kdef) + live (1 + psi2 kdef).
func (a *Analysis) longTerm(r row) {
	j, s := r.joist, a.show(&formula.Sheet{Title: message.New("structure/title.creep")})
	s.Input("live_sag", message.New("structure/line.live_sag"), "in", quantity.Length, a.Deflection, formula.Stated)
	s.Input("dead_sag", message.New("structure/line.dead_sag"), "in", quantity.Length, deadSag(j), formula.Stated)
	if !r.classes {
		s.Input("creep", message.New("structure/line.creep"), "", quantity.Number, quantity.Point(r.creep.Value), message.Verbatim(r.creep.Source.Title))
		a.LongTerm = s.Let("long_term", message.New("structure/line.long_term"), "in", quantity.Length, "creep * dead_sag + live_sag")
		return
	}
	kdef, psi := figure.LumberFactor("class-creep-dry"), figure.LumberFactor("class-quasi-permanent")
	if r.creep.ID == "creep-wet" {
		kdef = figure.LumberFactor("class-creep-wet")
	}
	s.Input("creep", message.New("structure/line.class_creep"), "", quantity.Number, quantity.Point(kdef.Value), message.Verbatim(kdef.Source.Title))
	s.Input("lasting", message.New("structure/line.lasting"), "", quantity.Number, quantity.Point(psi.Value), message.Verbatim(psi.Source.Title))
	a.LongTerm = s.Let("long_term", message.New("structure/line.long_term"), "in", quantity.Length, "dead_sag * (1 + creep) + live_sag * (1 + lasting * creep)")
}

// deadSag is the deflection under the dead load alone.
func deadSag(j Joist) quantity.Range {
	j.Live = quantity.Point(0)
	return value(j.Sheet(TotalLoad), "sag")
}

// tip is the overhang under live load on it alone, with L twice the overhang
// (IRC Table R301.7): d = w a^3 (4 L + 3 a) / (24 E I), from memory.
func (a *Analysis) tip(m Member, j Joist) {
	if m.Overhang == (quantity.Range{}) {
		return
	}
	s := a.show(&formula.Sheet{Title: message.New("structure/title.tip")})
	s.Input("overhang", message.New("structure/line.overhang"), "in", quantity.Length, positive(m.Overhang), formula.Stated)
	j.size(s)
	j.terms(s, LiveLoad)
	a.Tip = s.Let("ratio", message.New("structure/line.tip_ratio"), "L/", quantity.Ratio,
		"48 * "+j.stiffness(s)+" / (line_load * overhang^2 * (4 * span + 3 * overhang))")
}

// judge compares the ratio, and that of an overhang, with the bound.
func (a *Analysis) judge(m Member) {
	c := against(a.Least, a.Ratio())
	a.Outcome = c.Outcome
	if m.Overhang != (quantity.Range{}) {
		a.Outcome = worse(a.Outcome, against(quantity.Point(a.Bound.Ratio), a.Tip).Outcome)
	}
	if unsure := stated(m.Span).Hi > LongestSpanIn || stated(m.Spacing).Hi > widestSpacing; unsure && a.Outcome == result.CheckHolds {
		a.Outcome = result.CheckOpen
	}
}

// worse is the outcome of two that both must hold.
func worse(x, y result.CheckOutcome) result.CheckOutcome {
	switch {
	case x == result.CheckFails || y == result.CheckFails:
		return result.CheckFails
	case x == result.CheckHolds:
		return y
	}
	return x
}

// bounded is whether both numbers of a range are known.
func bounded(r quantity.Range) bool { return r.Bounded() && !math.IsNaN(r.Lo) }
