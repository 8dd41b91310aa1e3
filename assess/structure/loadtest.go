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
	Place       quantity.Range // of the weight, from the nearer support, in; zero: mid span
	Drop        quantity.Range // in, of the middle of the joist, mean of the readings
	With        string         // dial-gauge, laser or string
	Uncertainty float64        // in, of a drop either way; zero: that of With
	Alike       int            // joists side by side that carry this weight each, the measured one in the middle; zero: one
}

// A Measured is what a load test says of a row of joists.
type Measured struct {
	Stiffness quantity.Range  // E I of one joist, lb in^2
	Modulus   quantity.Range  // E by the test for the size that is stated, psi
	Computed  quantity.Range  // E I by the tables
	Live      quantity.Range  // span over live-load deflection by the test; Everything where it says nothing
	Used      bool            // the test goes before the tables
	Decides   quantity.Range  // the ratio to use: of the test, or of the tables
	Text      message.Message // how the two stand to each other, and which is used
	Refusal   message.Message
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
// or a reading is wrong. Source: methods.csv, beam; the thresholds are choices of this
// program.
func Measure(m Member, loads Loads, test LoadTest, t *figure.Table) Measured {
	q := quantity.Everything
	out := Measured{Stiffness: q, Modulus: q, Computed: q, Live: q, Decides: q, Sources: []figure.Source{figure.Method("beam")}}
	r, refusal := m.read(loads, t.Region)
	if !refusal.IsZero() {
		out.Refusal = refusal
		return out
	}
	computed := r.joist.Sheet(LiveLoad)
	out.Decides = computed.Result()
	out.Computed = r.joist.stiffnessOf()
	if out.Refusal = test.refused(r.joist); !out.Refusal.IsZero() {
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
func (l LoadTest) refused(j Joist) message.Message {
	switch {
	case j.spans() > 1:
		return message.New("structure/test.over_supports")
	case !bounded(j.Span) || l.Weight.Lo <= 0 || l.Drop.Lo <= 0:
		return message.New("structure/test.lacks")
	case l.Place.Hi > j.Span.Hi/2:
		return message.New("structure/test.place")
	case l.uncertainty() == 0:
		return message.New("structure/test.instrument")
	case l.Drop.Lo < clearDrop*l.uncertainty():
		return message.New("structure/test.small", "off", both(quantity.Length, quantity.Point(l.uncertainty())))
	}
	return message.Message{}
}

func (l LoadTest) uncertainty() float64 {
	if l.Uncertainty > 0 {
		return l.Uncertainty
	}
	return Uncertainties[l.With]
}

// sheet is the arithmetic of the test.
func (l LoadTest) sheet(j Joist) *formula.Sheet {
	s := &formula.Sheet{Title: message.New("structure/title.test")}
	place := l.Place
	if place == (quantity.Range{}) {
		place = j.Span.Mul(quantity.Point(0.5))
	}
	u := l.uncertainty()
	s.Input("span", message.New("structure/line.span"), "in", quantity.Length, positive(j.Span), formula.Stated)
	s.Input("spacing", message.New("structure/line.spacing"), "in", quantity.Length, positive(j.Spacing), formula.Stated)
	s.Input("live", message.New("structure/line.live"), "psf", quantity.Load, positive(j.Live), formula.Stated)
	s.Input("weight", message.New("structure/line.weight"), "lb", quantity.Weight, l.Weight, message.New("structure/origin.stated"))
	s.Input("place", message.New("structure/line.place"), "in", quantity.Length, positive(place), message.New("structure/origin.stated"))
	s.Input("drop", message.New("structure/line.drop"), "in", quantity.Length, quantity.Range{Lo: l.Drop.Lo - u, Hi: l.Drop.Hi + u}, message.New("structure/origin.measured"))
	s.Let("stiffness", message.New("structure/line.stiffness"), "lb in^2", quantity.Number, "weight * place * (3 * span^2 - 4 * place^2) / (48 * drop)")
	s.Let("ratio", message.New("structure/line.test_ratio"), "L/", quantity.Ratio, "384 * stiffness / (5 * (live * spacing / 144) * span^3)")
	return s
}

// weigh decides between the test and the tables.
func (m *Measured) weigh(test LoadTest) {
	alone := test.Alike < enoughAlike
	measured, tables := millions(m.Stiffness), millions(m.Computed)
	use := func(text message.Message) { m.Used, m.Decides, m.Text = true, m.Live, text }
	switch {
	case m.Stiffness.Hi < m.Computed.Lo:
		use(message.New("structure/test.softer", "measured", measured, "tables", tables))
	case m.Stiffness.Lo > m.Computed.Hi:
		m.Text = message.New("structure/test.stiffer", "measured", measured, "tables", tables)
	case alone:
		m.Text = message.New("structure/test.shared", "measured", measured, "tables", tables)
	default:
		use(message.New("structure/test.agrees", "measured", measured, "tables", tables))
	}
}

// millions is a stiffness in millions.
func millions(r quantity.Range) message.Message {
	if r.IsPoint() {
		return message.Verbatim(fmt.Sprintf("%.0f", r.Lo/1e6))
	}
	return message.New("structure/test.range", "low", math.Floor(r.Lo/1e6), "high", math.Ceil(r.Hi/1e6))
}

// stiffnessOf is E I of a joist.
func (j Joist) stiffnessOf() quantity.Range {
	s := &formula.Sheet{}
	j.size(s)
	return s.Let("stiff", message.Message{}, "lb in^2", quantity.Number, j.stiffness(s))
}

// LoadTestMethod is how a homeowner with a helper and an open basement makes a
// load test, step by step, with its cautions.
func LoadTestMethod() []message.Message {
	return []message.Message{
		message.New("structure/method.sound"),
		message.New("structure/method.below"),
		message.New("structure/method.joists"),
		message.New("structure/method.gauge"),
		message.New("structure/method.clear"),
		message.New("structure/method.load"),
		message.New("structure/method.read"),
		message.New("structure/method.repeat"),
	}
}
