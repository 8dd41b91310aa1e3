package quantity

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// dimensions are all of them.
func dimensions() []Dimension {
	all := make([]Dimension, len(dimensionNames))
	for i := range all {
		all[i] = Dimension(i)
	}
	return all
}

// value draws a number that a text of the dimension may state.
func value(t *rapid.T, d Dimension) float64 {
	switch d {
	case Year:
		return float64(rapid.IntRange(firstYear, lastYear).Draw(t, "year"))
	case Percent:
		return rapid.Float64Range(0, 100).Draw(t, "percent")
	case Ratio:
		return rapid.Float64Range(1e-9, 1e6).Draw(t, "ratio")
	}
	least := 0.0
	if d == Length {
		least = -1e5
	}
	return rapid.OneOf(
		rapid.Float64Range(least, 1e6),
		rapid.Map(rapid.IntRange(0, 4000), func(n int) float64 { return float64(n) / 32 }),
		rapid.Map(rapid.IntRange(0, 9000), func(n int) float64 { return float64(n) * 5 / 127 }),
		rapid.Map(rapid.IntRange(0, 9000), func(n int) float64 { return float64(n) / 100 }),
	).Draw(t, "value")
}

// written draws a range that some text may give, open ends and ends that are
// ruled out included.
func written(t *rapid.T, d Dimension) Range {
	a, b := value(t, d), value(t, d)
	switch rapid.IntRange(0, 6).Draw(t, "shape") {
	case 0:
		return Point(a)
	case 1:
		return AtLeast(a)
	case 2:
		return AtMost(a)
	case 3:
		return Everything
	case 4:
		if d != Year {
			return AtLeast(after(a))
		}
	case 5:
		if d != Year && a > 0 {
			return AtMost(before(a))
		}
	}
	return Range{math.Min(a, b), math.Max(a, b)}
}

func TestWriteExactRoundTrips(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := rapid.SampledFrom(dimensions()).Draw(t, "dimension")
		sys := rapid.SampledFrom([]System{US, Metric}).Draw(t, "system")
		r := written(t, d)
		text := WriteExact(d, r, sys)
		for _, reader := range []System{US, Metric} {
			got, err := Read(d, text, reader)
			if err != nil || got != r {
				t.Fatalf("%v %v is written %q, which a reader in %v reads as %v, %v", d, r, text, reader, got, err)
			}
		}
	})
}

// What is printed for a reader is read back as nearly the same.
func TestWriteReadsBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := rapid.SampledFrom(dimensions()).Draw(t, "dimension")
		sys := rapid.SampledFrom([]System{US, Metric}).Draw(t, "system")
		r := written(t, d)
		if d == Ratio && (r.Lo < 1 && !isOpen(r.Lo) || r.Hi < 1) {
			t.Skip("a ratio below one prints as L/0")
		}
		got, err := Read(d, Write(d, r, sys), sys)
		if err != nil || !roughly(d, got.Lo, r.Lo) || !roughly(d, got.Hi, r.Hi) {
			t.Fatalf("%v %v prints as %q, which reads as %v, %v", d, r, Write(d, r, sys), got, err)
		}
	})
}

// roughly allows for what printing rounds away.
func roughly(d Dimension, got, want float64) bool {
	if isOpen(got) || isOpen(want) {
		return got == want
	}
	slack := 0.006*math.Abs(want) + 0.003
	if d == Ratio {
		slack++
	}
	return math.Abs(got-want) <= slack
}

// A vaguer phrase never rules out what a plainer one says.
func TestVaguerIsWider(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := rapid.SampledFrom(dimensions()).Draw(t, "dimension")
		v := value(t, d)
		if v < 0 {
			t.Skip("a sign stands before the words of a bound")
		}
		plainText := WriteExact(d, Point(v), US)
		for _, vague := range []string{"about ", "at least ", "up to "} {
			r, err := Read(d, vague+plainText, US)
			if err != nil || !r.Contains(v) {
				t.Fatalf("Read(%v, %q) = %v, %v; it should hold %v", d, vague+plainText, r, err, v)
			}
		}
		over, err1 := Read(d, "more than "+plainText, US)
		under, err2 := Read(d, "less than "+plainText, US)
		if err1 != nil || over.Contains(v) || err2 == nil && under.Contains(v) || err2 != nil && v > 0 {
			t.Fatalf("%v %v is not ruled out by %v, %v, %v, %v", d, v, over, err1, under, err2)
		}
	})
}

// Interval arithmetic holds every point result.
func TestRangeArithmeticHolds(t *testing.T) {
	end := rapid.Float64Range(-1e3, 1e3)
	within := func(t *rapid.T, name string) (Range, float64) {
		a, b := end.Draw(t, name), end.Draw(t, name)
		r := Range{math.Min(a, b), math.Max(a, b)}
		return r, rapid.Float64Range(r.Lo, r.Hi).Draw(t, name)
	}
	rapid.Check(t, func(t *rapid.T) {
		r, x := within(t, "r")
		s, y := within(t, "s")
		results := map[string]struct {
			r Range
			v float64
		}{"add": {r.Add(s), x + y}, "sub": {r.Sub(s), x - y}, "mul": {r.Mul(s), x * y}, "div": {r.Div(s), x / y},
			"hull": {r.Hull(s), x}}
		for name, got := range results {
			slack := 1e-12 * math.Abs(got.v)
			if y == 0 && name == "div" {
				continue
			}
			if !(got.r.Lo-slack <= got.v && got.v <= got.r.Hi+slack) {
				t.Fatalf("%s: %v is not in %v (%v, %v)", name, got.v, got.r, r, s)
			}
		}
	})
}

func FuzzRead(f *testing.F) {
	for _, text := range []string{"12' 6 1/2\"", "16 OC", "3,8 m", "9 to 9.25 in", "1/8 in 10", "before 1978", "L/360", "75% RH",
		"more than 1/8 in", "1,200 mm", "8' - 10", "early 1960s", "- - 5", "1e-7 in", "not known", "5 ft+", "½\"", "9 - 1/4"} {
		f.Add(uint8(Length), text, true)
		f.Add(uint8(Year), text, false)
	}
	f.Fuzz(func(t *testing.T, dim uint8, text string, metric bool) {
		d, sys := Dimension(dim)%Dimension(len(dimensionNames)), US
		if metric {
			sys = Metric
		}
		r, err := Read(d, text, sys)
		if err != nil {
			if r != (Range{}) {
				t.Fatalf("a refusal comes with the range %v", r)
			}
			return
		}
		if math.IsNaN(r.Lo) || math.IsNaN(r.Hi) || r.Lo > r.Hi || math.IsInf(r.Lo, 1) || math.IsInf(r.Hi, -1) {
			t.Fatalf("Read(%v, %q) = %v", d, text, r)
		}
		if again, err := Read(d, WriteExact(d, r, sys), sys); err != nil || again != r {
			t.Fatalf("%q is %v, written %q, read again as %v, %v", text, r, WriteExact(d, r, sys), again, err)
		}
	})
}

func FuzzReadSize(f *testing.F) {
	for _, text := range []string{"2x10", "2\"x10\"", "2 by 10", "47x220mm", "1-1/2 x 9-1/4 in", "2x9", "full 2x10"} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		s, err := ReadSize(text)
		if err == nil && s.Nominal == "" && !(0 < s.Width.Lo && s.Width.Lo <= s.Depth.Lo && s.Depth.Hi <= deepest) {
			t.Fatalf("ReadSize(%q) = %v", text, s)
		}
	})
}

func BenchmarkRead(b *testing.B) {
	for b.Loop() {
		if _, err := Read(Length, "9-1/4 to 9-1/2 in", US); err != nil {
			b.Fatal(err)
		}
	}
}
