package formula

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"
	"pgregory.net/rapid"

	"underfoot/assess/message"
	"underfoot/assess/quantity"
)

func joist() *Sheet {
	s := &Sheet{Title: message.Verbatim("a joist")}
	s.Input("w", message.Verbatim("live load on one joist"), "lb/in", quantity.Number, quantity.Point(4.5), Stated)
	s.Input("span", message.Verbatim("clear span"), "in", quantity.Length, quantity.Range{Lo: 144, Hi: 156}, Stated)
	s.Input("e", message.Verbatim("stiffness of the wood"), "psi", quantity.Strength, quantity.Range{Lo: 1.2e6, Hi: 1.6e6}, Stated)
	s.Input("i", message.Verbatim("second moment of area"), "in^4", quantity.Number, quantity.Point(100), Stated)
	s.Let("sag", message.Verbatim("deflection"), "in", quantity.Length, "5 * w * span^4 / (384 * e * i)")
	s.Let("ratio", message.Verbatim("span over deflection"), "", quantity.Ratio, "384 * e * i / (5 * w * span^3)")
	return s
}

func TestLetTakesEachOperandsWorstEnd(t *testing.T) {
	s := joist()
	want := quantity.Range{Lo: 384 * 1.2e6 * 100 / (5 * 4.5 * 156 * 156 * 156), Hi: 384 * 1.6e6 * 100 / (5 * 4.5 * 144 * 144 * 144)}
	got := s.Result()
	if math.Abs(got.Lo/want.Lo-1) > 1e-12 || math.Abs(got.Hi/want.Hi-1) > 1e-12 {
		t.Errorf("ratio %v, want %v", got, want)
	}
}

func TestNumbersFillsInRanges(t *testing.T) {
	got := joist().Numbers("sag")
	if want := "5 * 4.5 * 144..156^4 / (384 * 1200000..1600000 * 100)"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
}

func TestCellsChooseTheEnds(t *testing.T) {
	cell := func(name string, end End) string {
		return strings.ToUpper(name) + map[End]string{Low: "1", High: "2"}[end]
	}
	got := joist().Cells("ratio", cell, Low)
	if want := "384*E1*I1/(5*W2*(SPAN2)^3)"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
	unknown := &Sheet{}
	unknown.Input("a", message.Message{}, "", quantity.Number, quantity.AtLeast(1), Stated)
	unknown.Let("b", message.Message{}, "", quantity.Number, "1 / a")
	if got := unknown.Cells("b", cell, Low); got != "" {
		t.Errorf("a formula over an end that nobody knows: %q", got)
	}
	if got := unknown.Cells("b", cell, High); got != "1/A1" {
		t.Errorf("high end is %q", got)
	}
}

// TestNormalShares: 50, 84.1345, 97.7250 and 5 percent lie below 0, 1, 2 and
// -1.644854 standard deviations (NIST/SEMATECH e-Handbook, 1.3.6.7.1).
func TestNormalShares(t *testing.T) {
	for x, want := range map[string]float64{"0": 0.5, "1": 0.841345, "2": 0.977250, "0 - 1.644854": 0.05} {
		s := &Sheet{}
		if got := s.Let("share", message.Message{}, "", quantity.Number, "normal("+x+")"); math.Abs(got.Lo-want) > 1e-6 {
			t.Errorf("normal(%s) is %v, want %v", x, got.Lo, want)
		}
	}
}

func TestParseRefuses(t *testing.T) {
	for _, c := range []struct{ expr, want string }{
		{"", "column 1"},
		{"2 +", "column 4"},
		{"2 a", "an operator"},
		{"(a", "column 3"},
		{"a^b", "constant exponent"},
		{"exp(a)", "min(...)"},
		{"sqrt(a, b)", "sqrt(x)"},
		{"1.2.3", "a number, not"},
		{"a.b", "without point"},
		{strings.Repeat("(", 60) + "a" + strings.Repeat(")", 60), "flatter"},
	} {
		if _, err := parse(c.expr); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%q gives %v, want %q in it", c.expr, err, c.want)
		}
	}
}

// generated draws an expression over a, b and c and says how it is written.
func generated(t *rapid.T, depth int) string {
	if depth == 0 {
		return rapid.SampledFrom([]string{"a", "b", "c", "2", "0.5"}).Draw(t, "leaf")
	}
	left, right := generated(t, depth-1), generated(t, depth-1)
	switch form := rapid.IntRange(0, 8).Draw(t, "form"); form {
	case 0, 1, 2, 3:
		return "(" + left + " " + string("+-*/"[form]) + " " + right + ")"
	case 4:
		return fmt.Sprintf("min(%s, %s)", left, right)
	case 5:
		return fmt.Sprintf("max(%s, %s)", left, right)
	case 6:
		return "(" + left + ")^" + rapid.SampledFrom([]string{"2", "3", "4", "(1 / 3)"}).Draw(t, "exponent")
	case 7:
		return "normal(" + left + ")"
	}
	return "sqrt(" + left + ")"
}

func drawnRange(t *rapid.T, label string) quantity.Range {
	lo := rapid.Float64Range(-4, 12).Draw(t, label+" low")
	return quantity.Range{Lo: lo, Hi: lo + rapid.Float64Range(0, 6).Draw(t, label+" width")}
}

// sheetOf is the expression over the three ranges.
func sheetOf(expr string, a, b, c quantity.Range) *Sheet {
	s := &Sheet{}
	s.Input("a", message.Message{}, "", quantity.Number, a, Stated)
	s.Input("b", message.Message{}, "", quantity.Number, b, Stated)
	s.Input("c", message.Message{}, "", quantity.Number, c, Stated)
	s.Let("y", message.Message{}, "", quantity.Number, expr)
	return s
}

func TestRangeHoldsEveryPoint(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		expr := generated(t, 3)
		a, b, c := drawnRange(t, "a"), drawnRange(t, "b"), drawnRange(t, "c")
		at := func(r quantity.Range, label string) quantity.Range {
			return quantity.Point(math.Min(r.Hi, math.Max(r.Lo, r.Lo+(r.Hi-r.Lo)*rapid.Float64Range(0, 1).Draw(t, label))))
		}
		whole := sheetOf(expr, a, b, c).Result()
		point := sheetOf(expr, at(a, "at a"), at(b, "at b"), at(c, "at c")).Result()
		if !point.Bounded() {
			return // a division by zero has no value
		}
		slack := 1e-9 * math.Max(1, math.Abs(point.Lo))
		if point.Lo < whole.Lo-slack || point.Hi > whole.Hi+slack {
			t.Fatalf("%s: %v is outside %v", expr, point, whole)
		}
	})
}

func TestCellsAgreeWithTheRange(t *testing.T) {
	book := excelize.NewFile()
	defer book.Close()
	cell := func(name string, end End) string {
		return strings.ToUpper(name) + map[End]string{Low: "1", High: "2"}[end]
	}
	rapid.Check(t, func(t *rapid.T) {
		expr := generated(t, 2)
		s := sheetOf(expr, drawnRange(t, "a"), drawnRange(t, "b"), drawnRange(t, "c"))
		for _, in := range s.Lines[:3] {
			book.SetCellValue("Sheet1", cell(in.Name, Low), in.Value.Lo)
			book.SetCellValue("Sheet1", cell(in.Name, High), in.Value.Hi)
		}
		for _, end := range []End{Low, High} {
			text := s.Cells("y", cell, end)
			if text == "" || strings.Contains(text, "NA()") {
				continue
			}
			book.SetCellFormula("Sheet1", "E1", text)
			got, err := book.CalcCellValue("Sheet1", "E1", excelize.Options{RawCellValue: true})
			v, odd := strconv.ParseFloat(got, 64)
			want := end.Of(s.Result())
			if err != nil || odd != nil || math.Abs(v-want) > 1e-6*math.Max(1, math.Abs(want)) {
				t.Fatalf("%s, %s: %s, the range says %v", expr, text, got, want)
			}
		}
	})
}

func FuzzParse(f *testing.F) {
	for _, seed := range []string{"a + 2", "min(a, b)^(1 / 3)", "sqrt(8 * f * s / w)", "((("} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, expr string) {
		if n, err := parse(expr); (n == nil) == (err == nil) {
			t.Errorf("%q gives %v and %v", expr, n, err)
		}
	})
}
