package structure

import (
	"math"
	"slices"
	"strings"

	"underfoot/assess/figure"
	"underfoot/assess/formula"
	"underfoot/assess/message"
	"underfoot/assess/quantity"
	"underfoot/assess/result"
)

// A remedy is one way to make a row of joists stiffer.
type remedy struct {
	id         string
	text       message.Message
	joist      Joist          // with the remedy carried out, its own weight in the dead load
	also       Joist          // a second joist that must hold too; no depth: none
	weight     quantity.Range // psf, added
	quantities []result.Quantity
	needs      []message.Message
}

// need is what a remedy stands on, by the name of its sentence.
func need(name string) message.Message { return message.New("structure/need." + name) }

// Options are the ways to make a row of joists stiffer, each computed on the
// same inputs; those that hold come first, then in the order of their work. A
// refused member has none.
func Options(m Member, loads Loads, b Bound, t *figure.Table) []result.Option {
	r, refusal := m.read(loads, t.Region)
	if !refusal.IsZero() || b.Ratio <= 0 || !bounded(r.joist.Ratio(b.Load)) {
		return nil
	}
	var all []result.Option
	for _, x := range remedies(r.joist, newWood(r, t.Region)) {
		all = append(all, x.option(b))
	}
	slices.SortStableFunc(all, func(x, y result.Option) int { return rank(x.Outcome) - rank(y.Outcome) })
	return all
}

// rank puts what holds first and what fails last.
func rank(o result.CheckOutcome) int {
	return map[result.CheckOutcome]int{result.CheckHolds: 0, result.CheckOpen: 1, result.CheckFails: 2}[o]
}

// A wood is new lumber as it is counted.
type wood struct {
	name    string
	modulus quantity.Range
	source  figure.Source
}

// newWood is what added lumber is taken to be where the floor lies: see
// figure.Practice. A choice of this program, told with each option.
func newWood(r row, region string) wood {
	w := addedWood(region)
	for _, s := range r.joist.Softer {
		w.modulus = w.modulus.Mul(quantity.Point(s.Value))
	}
	return w
}

// addedWood is newWood before wet service and incising.
func addedWood(region string) wood {
	p := figure.PracticeOf(region)
	f, _ := figure.LumberValue(p.NewSpecies, p.NewGrade, "", figure.Stiffness)
	if p.NewSpecies == "" {
		f = apparent(f)
	}
	return wood{strings.TrimSpace(p.NewSpecies + " " + p.NewGrade), quantity.Point(f.Value), f.Source}
}

// option computes a remedy against the bound.
func (x remedy) option(b Bound) result.Option {
	sheets := [...]*formula.Sheet{x.joist.Sheet(LiveLoad).Titled(x.text), x.joist.Sheet(TotalLoad).Titled(x.text)}
	o := result.Option{ID: x.id, Text: x.text, Live: sheets[LiveLoad].Result(), Total: sheets[TotalLoad].Result(), Weight: x.weight,
		Quantities: x.quantities, Needs: x.needs, Work: sheets[b.Load]}
	if x.also.Depth != (quantity.Range{}) {
		o.Live, o.Total = lesser(o.Live, x.also.Ratio(LiveLoad)), lesser(o.Total, x.also.Ratio(TotalLoad))
	}
	o.Outcome = against(b.Least(x.joist.Span), counted(o, b)).Outcome
	return o
}

// counted is the ratio of an option that the bound is compared with.
func counted(o result.Option, b Bound) quantity.Range {
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
func NoHelp() []message.Message {
	return []message.Message{
		message.New("structure/no_help.board"),
		message.New("structure/no_help.bridging"),
		message.New("structure/no_help.bed"),
		message.New("structure/no_help.short_sister"),
		message.New("structure/no_help.panels"),
		message.New("structure/no_help.jack"),
	}
}
