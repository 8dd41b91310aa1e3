package structure

import (
	"fmt"
	"math"

	"underfoot/assess/figure"
	"underfoot/assess/formula"
	"underfoot/assess/message"
	"underfoot/assess/quantity"
)

// A LoadTest is a known weight put on the floor, and the drop of the joist
// under it.
type LoadTest struct {
	Weight      quantity.Range // lb on one joist, at one place
	Place       quantity.Range // of the weight, from the nearer support, in; nought: mid span
	Drop        quantity.Range // in, of the middle of the joist, mean of the readings
	With        string         // dial-gauge, laser or string
	Uncertainty float64        // in, of a drop either way; nought: that of With
	Alike       int            // joists side by side that carry this weight each, the measured one in the middle; nought: one
}

// A Measured is what a load test says of a row of joists.
type Measured struct {
	Stiffness quantity.Range // E I of one joist, lb in^2
	Modulus   quantity.Range // E by the test for the size that is stated, psi
	Computed  quantity.Range // E I by the tables
	Live      quantity.Range // span over live-load deflection by the test; Everything where it says nothing
	Used      bool           // the test goes before the tables
	Decides   quantity.Range // the ratio to use: of the test, or of the tables
	Text      string         // how the two stand to each other, and which is used
	Refusal   string
	Sheet     *formula.Sheet
	Sources   []figure.Source
}

// Uncertainties are those of a drop, in inches either way, by instrument: two
// readings, before and after. Estimates of this program, for careful use.
var Uncertainties = map[string]float64{"dial-gauge": 0.002, "laser": 1.0 / 32, "string": 1.0 / 32}

const (
	// enoughAlike is the number of joists loaded alike from which the middle
	// one is taken to carry its own weight alone: deck and neighbours spread a
	// single weight over several joists.
	enoughAlike = 5
	// clearDrop is the drop, in uncertainties, from which a reading counts.
	clearDrop = 5.0
)

// Measure reads a load test of a row of joists over one span:
//
//	E I = P a (3 L^2 - 4 a^2) / (48 x drop)    P the weight, a its place, L the span
//	ratio = 384 E I / (5 w L^3)
//
// It goes before the tables where five joists or more carried the same weight
// and the drop is at least five uncertainties. A weight on one joist alone is
// shared by its neighbours: it then shows the most that the joist can have,
// and counts where even that is less than the tables give. A test that gives
// more than the stiffest wood of the tables is not used: something else helps,
// or a reading is wrong. Source: BeamSource; the thresholds are choices of this
// program.
func Measure(m Member, loads Loads, test LoadTest, t *figure.Table) Measured {
	q := quantity.Everything
	out := Measured{Stiffness: q, Modulus: q, Computed: q, Live: q, Decides: q, Sources: []figure.Source{BeamSource}}
	r, refusal := m.read(loads, t.Region)
	if refusal != "" {
		out.Refusal = refusal
		return out
	}
	computed := r.joist.Sheet(titleLive, LiveLoad)
	out.Decides = computed.Result()
	out.Computed = r.joist.stiffnessOf()
	if out.Refusal = test.refused(r.joist); out.Refusal != "" {
		return out
	}
	out.Sheet = test.sheet(r.joist)
	out.Stiffness, out.Live = value(out.Sheet, "stiffness"), out.Sheet.Result()
	out.Modulus = out.Stiffness.Div(value(computed, "inertia"))
	out.weigh(test)
	return out
}

// Of is the member with the measured stiffness where the test goes before the
// tables, and unchanged where it does not.
func (m Measured) Of(member Member) Member {
	if m.Used {
		member.Modulus = m.Modulus
	}
	return member
}

// refused is why a test says nothing, or empty.
func (l LoadTest) refused(j Joist) string {
	switch {
	case j.spans() > 1:
		return "the joists run on over a support: a load test of them is an engineer's matter"
	case !bounded(j.Span) || l.Weight.Lo <= 0 || l.Drop.Lo <= 0:
		return "a load test needs the clear span, the weight and the drop"
	case l.Place.Hi > j.Span.Hi/2:
		return "the place of the weight is counted from the nearer support, at most half the span"
	case l.uncertainty() == 0:
		return "say what the drop was measured with: dial-gauge, laser or string"
	case l.Drop.Lo < clearDrop*l.uncertainty():
		return fmt.Sprintf("the drop is less than five times what the instrument may be off (%s): nothing can be told from it; use a dial gauge",
			both(quantity.Length, quantity.Point(l.uncertainty())))
	}
	return ""
}

func (l LoadTest) uncertainty() float64 {
	if l.Uncertainty > 0 {
		return l.Uncertainty
	}
	return Uncertainties[l.With]
}

// sheet is the arithmetic of the test.
func (l LoadTest) sheet(j Joist) *formula.Sheet {
	s := &formula.Sheet{Title: message.Verbatim("Joists: load test")}
	place := l.Place
	if place == (quantity.Range{}) {
		place = j.Span.Mul(quantity.Point(0.5))
	}
	u := l.uncertainty()
	s.Input("span", message.Verbatim("clear span between supports"), "in", quantity.Length, positive(j.Span), formula.Stated)
	s.Input("spacing", message.Verbatim("joist spacing, centre to centre"), "in", quantity.Length, positive(j.Spacing), formula.Stated)
	s.Input("live", message.Verbatim("live load"), "psf", quantity.Load, positive(j.Live), formula.Stated)
	s.Input("weight", message.Verbatim("weight on the joist"), "lb", quantity.Weight, l.Weight, message.Verbatim("as stated"))
	s.Input("place", message.Verbatim("its place, from the nearer support"), "in", quantity.Length, positive(place), message.Verbatim("as stated"))
	s.Input("drop", message.Verbatim("drop of the middle, with its uncertainty"), "in", quantity.Length, quantity.Range{Lo: l.Drop.Lo - u, Hi: l.Drop.Hi + u}, message.Verbatim("as measured"))
	s.Let("stiffness", message.Verbatim("E I of one joist"), "lb in^2", quantity.Number, "weight * place * (3 * span^2 - 4 * place^2) / (48 * drop)")
	s.Let("ratio", message.Verbatim("span over live-load deflection"), "L/", quantity.Ratio, "384 * stiffness / (5 * (live * spacing / 144) * span^3)")
	return s
}

// weigh decides between the test and the tables.
func (m *Measured) weigh(test LoadTest) {
	alone := test.Alike < enoughAlike
	measured, tables := told(m.Stiffness), told(m.Computed)
	use := func(text string) { m.Used, m.Decides, m.Text = true, m.Live, sentence(text) }
	switch {
	case m.Stiffness.Hi < m.Computed.Lo:
		use(fmt.Sprintf("the test contradicts the tables: it gives E I %s million lb in^2 and the tables %s; the softer figure is used. Look for a crack, a longer span than was stated, or supports that give way", measured, tables))
	case m.Stiffness.Lo > m.Computed.Hi:
		m.Text = fmt.Sprintf("The test contradicts the tables: it gives E I %s million lb in^2, more than the %s of the stiffest wood that is possible; neighbours, deck or a support help, or a reading is wrong. The tables are used.", measured, tables)
	case alone:
		m.Text = fmt.Sprintf("One weight on fewer than five joists is shared by the neighbours, so the test shows the most that a joist can have, E I %s million lb in^2; that agrees with the tables, %s, which are used.", measured, tables)
	default:
		use(fmt.Sprintf("the test agrees with the tables (E I %s million lb in^2 beside %s) and is used, since it is this floor's own", measured, tables))
	}
}

// told is a stiffness in millions.
func told(r quantity.Range) string {
	if r.IsPoint() {
		return fmt.Sprintf("%.0f", r.Lo/1e6)
	}
	return fmt.Sprintf("%.0f to %.0f", math.Floor(r.Lo/1e6), math.Ceil(r.Hi/1e6))
}

// stiffnessOf is E I of a joist.
func (j Joist) stiffnessOf() quantity.Range {
	s := &formula.Sheet{}
	j.size(s)
	return s.Let("stiff", message.Message{}, "lb in^2", quantity.Number, j.stiffness(s))
}

// LoadTestMethod is how a homeowner with a helper and an open basement makes a
// load test, step by step, with its cautions.
func LoadTestMethod() []string {
	return []string{
		"Do it only under joists that are whole, dry and well supported; a cut, cracked or rotten joist is an engineer's matter and is not loaded.",
		"Look from below for pipes, wires and a ceiling that could be harmed, and for dust or insulation that may hold asbestos: leave those alone and do not test there.",
		"Choose five joists side by side near the middle of the room; measure the clear span of the third from face to face of its supports, in three places.",
		"Under the middle of the third joist set a dial gauge on a firm stand that rests on the basement floor; a laser or a stretched string with a rule reads ten times less finely.",
		"Nobody stands under the floor while it is loaded: the helper above loads, steps back and calls, and then the reading is taken from beside the joists.",
		"Weigh what you load with: full water containers, bags or persons on a bathroom scale. Put the same weight over each of the five joists, at mid span, about 150 lb to each, and never more than half of the floor's live load.",
		"Read before loading, loaded after one minute, and after unloading. The reading must come back; where it does not, leave it and call an engineer.",
		"Do it three times and take the mean of the drops. State weight, place, drop and instrument.",
	}
}
