package structure

import (
	"math"
	"math/rand/v2"
	"os"
	"strconv"
	"testing"

	"pgregory.net/rapid"

	"underfoot/assess/figure"
	"underfoot/assess/message"
	"underfoot/assess/quantity"
)

// pairs is how many pairs of joists are compared: a share of the million that
// UNDERFOOT_PAIRS=1000000 compares, so that a test run stays short.
func pairs(t *testing.T) int {
	text := os.Getenv("UNDERFOOT_PAIRS")
	if text == "" {
		return 50_000
	}
	n, err := strconv.Atoi(text)
	if err != nil {
		t.Fatal("UNDERFOOT_PAIRS:", err)
	}
	return n
}

// worsened is a joist and one that is worse in some ways and better in none.
func worsened(r *rand.Rand) (better, poorer Joist) {
	v := func(lo, hi float64) float64 { return lo + (hi-lo)*r.Float64() }
	j := point(v(1, 4), v(3, 14), v(48, 312), v(8, 24), v(5e5, 2e6), v(20, 150), v(5, 100))
	j.Spans, j.Point = 1+r.IntN(3), quantity.Point(v(0, 500)*float64(r.IntN(2)))
	if r.IntN(3) == 0 {
		j.Sister = Piece{quantity.Point(v(1, 3)), quantity.Point(v(3, 12)), quantity.Point(v(5e5, 2e6))}
	}
	w := j
	by := func(q *quantity.Range, up bool) {
		if r.IntN(2) == 0 || q.Lo == 0 {
			return
		}
		f := 1 + r.Float64()
		if !up {
			f = 1 / f
		}
		*q = quantity.Point(q.Lo * f)
	}
	by(&w.Width, false)
	by(&w.Depth, false)
	by(&w.Modulus, false)
	by(&w.Span, true)
	by(&w.Spacing, true)
	by(&w.Live, true)
	by(&w.Dead, true)
	by(&w.Point, true)
	if j.Sister != (Piece{}) {
		by(&w.Sister.Depth, false)
	}
	if r.IntN(4) == 0 {
		w.Softer = []Factor{{"wet", message.New("structure/line.wet"), figure.LumberFactor("wet-stiffness")}}
	}
	return j, w
}

// TestWorseIsNeverBetter: a longer span, a wider spacing, a smaller section,
// softer or wet wood or more load never gives a better ratio.
func TestWorseIsNeverBetter(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 7))
	for range pairs(t) {
		better, poorer := worsened(r)
		for _, load := range []Load{LiveLoad, TotalLoad} {
			if a, b := better.Ratio(load).Lo, poorer.Ratio(load).Lo; b > a*(1+1e-12) {
				t.Fatalf("%v load: L/%v for %+v, L/%v for %+v", load, a, better, b, poorer)
			}
		}
	}
}

// TestWorseGradeIsNeverBetter walks every species from grade to grade.
func TestWorseGradeIsNeverBetter(t *testing.T) {
	for _, s := range figure.Species() {
		m := Member{Size: "2x10", Species: []string{s}, Span: quantity.Point(180), Spacing: quantity.Point(16)}
		before := Analysis{Live: quantity.Point(math.Inf(1)), Total: quantity.Point(math.Inf(1))}
		for _, g := range figure.Grades(s) {
			m.Grades = []string{g}
			a := Analyze(m, Loads{}, BoundFor("ceramic", us), us)
			if a.Live.Lo > before.Live.Lo || a.Total.Lo > before.Total.Lo || a.Share.Lo < before.Share.Lo {
				t.Errorf("%s %s: %v after %v", s, g, a.Live, before.Live)
			}
			m.Wet = true
			if wet := Analyze(m, Loads{}, BoundFor("ceramic", us), us); wet.Live.Hi >= a.Live.Lo || wet.LongTerm.Lo <= a.LongTerm.Hi || wet.Bending.Lo <= a.Bending.Hi {
				t.Errorf("%s %s is no worse when wet: %+v", s, g, wet)
			}
			m.Wet, before = false, a
		}
	}
}

// drawMember draws a member that is known to a point, and the same as it is
// known in part.
func drawMember(t *rapid.T) (exact, partly Member) {
	size := rapid.SampledFrom([]string{"2x6", "2x8", "2x10", "2x12", "3x8"}).Draw(t, "size")
	s := rapid.SampledFrom(figure.Species()).Draw(t, "species")
	g := rapid.SampledFrom(figure.Grades(s)).Draw(t, "grade")
	exact = Member{Size: size, Species: []string{s}, Grades: []string{g}, Span: quantity.Point(rapid.Float64Range(60, 300).Draw(t, "span")),
		Spacing: quantity.Point(rapid.Float64Range(10, 24).Draw(t, "spacing")),
		Wet:     rapid.Bool().Draw(t, "wet"), Incised: rapid.Bool().Draw(t, "incised"),
		Continuity: rapid.SampledFrom([]string{"", "two-spans", "three-spans"}).Draw(t, "continuity")}
	partly = exact
	about := func(r quantity.Range, name string) quantity.Range {
		return quantity.Range{Lo: r.Lo * rapid.Float64Range(0.8, 1).Draw(t, name+" less"), Hi: r.Hi * rapid.Float64Range(1, 1.2).Draw(t, name+" more")}
	}
	partly.Span, partly.Spacing = about(exact.Span, "span"), about(exact.Spacing, "spacing")
	partly.Spacing.Hi, partly.Span.Hi = math.Min(partly.Spacing.Hi, 24), math.Min(partly.Span.Hi, 312)
	if rapid.Bool().Draw(t, "any grade") {
		partly.Grades = nil
	}
	if rapid.Bool().Draw(t, "any species") {
		partly.Species = nil
	}
	return exact, partly
}

// TestRangesHoldEveryPoint: what is told of a member known in part holds what
// is told of every member that it may be.
func TestRangesHoldEveryPoint(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		exact, partly := drawMember(t)
		b := BoundFor(rapid.SampledFrom([]string{"ceramic", "natural-stone"}).Draw(t, "tile"), us)
		a, w := Analyze(exact, Loads{}, b, us), Analyze(partly, Loads{}, b, us)
		for name, r := range map[string][2]quantity.Range{"live": {a.Live, w.Live}, "total": {a.Total, w.Total}, "sag": {a.Deflection, w.Deflection},
			"share": {a.Share, w.Share}, "long term": {a.LongTerm, w.LongTerm}, "bending": {a.Bending, w.Bending}, "shear": {a.Shear, w.Shear}, "least": {a.Least, w.Least}} {
			if slack := 1e-9 * math.Abs(r[0].Lo); r[0].Lo < r[1].Lo-slack || r[0].Hi > r[1].Hi+slack {
				t.Fatalf("%s: %v is outside %v for %+v", name, r[0], r[1], partly)
			}
		}
		if w.Outcome != a.Outcome && w.Deciding.Facts == nil {
			t.Fatalf("%v beside %v", w.Outcome, a.Outcome)
		}
	})
}
