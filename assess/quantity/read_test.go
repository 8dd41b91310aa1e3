package quantity

import (
	"errors"
	"math"
	"slices"
	"strings"
	"testing"
)

var inf = math.Inf(1)

// after and before are the neighbours of a number that is itself ruled out.
func after(v float64) float64  { return math.Nextafter(v, inf) }
func before(v float64) float64 { return math.Nextafter(v, -inf) }

// Values in millimetres are worked out from the inch of 25.4 mm (NIST SP 811).
func TestReadLength(t *testing.T) {
	cases := []struct {
		text string
		sys  System
		want Range
	}{
		{"16 OC", US, Point(16)},
		{`16" o.c.`, US, Point(16)},
		{"19.2 oc", US, Point(19.2)},
		{`24" centers`, US, Point(24)},
		{"16 in on center", US, Point(16)},
		{"400 centres", Metric, Point(400 / 25.4)},
		{"400 centres", US, Point(400 / 25.4)},
		{"101 oc", US, Point(505.0 / 127)},
		{"100 oc", US, Point(100)},
		{"2' OC", US, Point(24)},
		{"9.9 ft oc", US, Point(9.9 * 12)},
		{"12'6", US, Point(150)},
		{`12' 6 1/2"`, US, Point(150.5)},
		{"12’ 6 ½”", US, Point(150.5)},
		{"12′ 6½″", US, Point(150.5)},
		{"12' 6''", US, Point(150)},
		{`7'-4"`, US, Point(88)},
		{"7 ft - 4 in", US, Point(88)},
		{"12 ft 6 in", US, Point(150)},
		{"12 feet 6 inches", US, Point(150)},
		{"5' 11.5\"", US, Point(71.5)},
		{"14ft", US, Point(168)},
		{"2 yd", US, Point(72)},
		{"3,8 m", Metric, Point(3800 / 25.4)},
		{"3,8 m", US, Point(3800 / 25.4)},
		{"3810mm", US, Point(150)},
		{"381 cm", Metric, Point(150)},
		{"3/4 ply", US, Point(0.75)},
		{"23/32", US, Point(23.0 / 32)},
		{`1-1/8"`, US, Point(1.125)},
		{"1 1/8", US, Point(1.125)},
		{"⅛ in", US, Point(0.125)},
		{"18mm", US, Point(90.0 / 127)},
		{"9.25 in.", US, Point(9.25)},
		{"0,125 in", US, Point(0.125)},
		{".5 in", US, Point(0.5)},
		{"0", US, Point(0)},
		{"1/8 in 10", US, Point(0.125)},
		{"1/8 in in 10 ft", US, Point(0.125)},
		{`1/8" over 10'`, US, Point(0.125)},
		{"1/16 in in 24 in", US, Point(0.0625)},
		{"3 mm in 2 m", Metric, Point(15.0 / 127)},
		{"3 mm under 3 m", Metric, Point(15.0 / 127)},
		{`3/8" dip`, US, Point(0.375)},
		{"-1/2 in", US, Point(-0.5)},
		{"+1/2 in", US, Point(0.5)},
		{"9 to 9.25 in", US, Range{9, 9.25}},
		{"9-1/4 to 9-1/2 in", US, Range{9.25, 9.5}},
		{"9-10 in", US, Range{9, 10}},
		{"1/8-1/4 in", US, Range{0.125, 0.25}},
		{"1-1/8-1-1/4 in", US, Range{1.125, 1.25}},
		{"between 5 and 6 ft", US, Range{60, 72}},
		{"from 5 to 6 ft", US, Range{60, 72}},
		{"12' - 14'", US, Range{144, 168}},
		{"12' to 14", US, Range{144, 168}},
		{"12'6 to 13", US, Range{150, 156}},
		{"16 to 24 oc", US, Range{16, 24}},
		{"-12 in .. 12 in", US, Range{-12, 12}},
		{"0 to 1/32 in", US, Range{0, 1.0 / 32}},
		{"about 3/8 in", US, Range{0.375 - 0.0375, 0.375 + 0.0375}},
		{"~ 10 in", US, Range{9, 11}},
		{"at least 5 ft", US, Range{60, inf}},
		{"5 ft or more", US, Range{60, inf}},
		{"5 ft+", US, Range{60, inf}},
		{"up to 3 mm", US, Range{-inf, 15.0 / 127}},
		{"2 in max", US, Range{-inf, 2}},
		{"less than 1/8 in", US, Range{-inf, before(0.125)}},
		{"more than 1/8 in", US, Range{after(0.125), inf}},
		{"> 1/8 in", US, Range{after(0.125), inf}},
		{"<= 1/8 in", US, Range{-inf, 0.125}},
		{"not known", US, Everything},
	}
	for _, c := range cases {
		check(t, Length, c.text, c.sys, c.want)
	}
}

// check reads a text and compares within two units in the last place, since
// a written 400 / 25.4 rounds twice.
func check(t *testing.T, d Dimension, text string, sys System, want Range) {
	t.Helper()
	got, err := Read(d, text, sys)
	if err != nil || !near(got.Lo, want.Lo) || !near(got.Hi, want.Hi) {
		t.Errorf("Read(%v, %q, %v) = %v, %v; want %v", d, text, sys, got, err, want)
	}
}

func near(a, b float64) bool {
	return a == b || !isOpen(a) && !isOpen(b) && math.Abs(a-b) <= 4e-16*math.Max(math.Abs(a), math.Abs(b))
}

func TestReadOthers(t *testing.T) {
	cases := []struct {
		d    Dimension
		text string
		sys  System
		want Range
	}{
		{Ratio, "L/360", US, Point(360)},
		{Ratio, "L360", US, Point(360)},
		{Ratio, "l / 360", US, Point(360)},
		{Ratio, "1/360", US, Point(360)},
		{Ratio, "360", Metric, Point(360)},
		{Ratio, "L/360 to L/480", US, Range{360, 480}},
		{Percent, "75% RH", US, Point(75)},
		{Percent, "75", US, Point(75)},
		{Percent, "RH 75 %", US, Point(75)},
		{Percent, "12 percent", US, Point(12)},
		{Percent, "about 95%", US, Range{85.5, 100}},
		{Points, "4 points", US, Point(4)},
		{Points, "2 to 3", US, Range{2, 3}},
		{Emission, "3 lb", US, Point(3)},
		{Emission, "3 lb/1000 ft2", US, Point(3)},
		// 1 lb on 1000 ft2 is 453.59237 g on 92.90304 m2 (NIST SP 811)
		{Emission, "453.59237 g/m²", Metric, Point(92.90304)},
		{Area, "120 sq ft", US, Point(120)},
		{Area, "120 ft²", US, Point(120)},
		// 1 ft2 is 0.09290304 m2 exactly (NIST SP 811, Appendix B)
		{Area, "0.09290304 m2", Metric, Point(1)},
		{Load, "40 psf", US, Point(40)},
		// 1 psf is 47.88025898 Pa to ten digits (NIST SP 811, Appendix B.8: 4.788026 E+01)
		{Load, "1 kPa", Metric, Point(1000 / 47.88025898033584)},
		{Load, "1 kN/m²", Metric, Point(1000 / 47.88025898033584)},
		{Weight, "250 lbs", US, Point(250)},
		{Weight, "0.45359237 kg", Metric, Point(1)}, // exact, NIST SP 811
		{Strength, "2,000 psi", US, Point(2000)},
		{Strength, "14 MPa", Metric, Point(14e6 / 6894.757293168361)}, // 1 psi is 6894.757 Pa, NIST SP 811
		{Strength, "14 N/mm2", Metric, Point(14e6 / 6894.757293168361)},
		{Days, "28 days", US, Point(28)},
		{Days, "6 weeks", US, Point(42)},
		{Days, "2 months", US, Point(56)},
		{Days, "less than 28 days", US, Range{-inf, before(28)}},
		{Number, "3", US, Point(3)},
		{Number, "2 to 4", US, Range{2, 4}},
	}
	for _, c := range cases {
		check(t, c.d, c.text, c.sys, c.want)
	}
}

func TestReadYear(t *testing.T) {
	cases := []struct {
		text string
		want Range
	}{
		{"1968", Point(1968)},
		{"built in 1968", Point(1968)},
		{"1960s", Range{1960, 1969}},
		{"the 1960's", Range{1960, 1969}},
		{"early 1960s", Range{1960, 1963}},
		{"mid-1960s", Range{1963, 1966}},
		{"late 1960s", Range{1966, 1969}},
		{"1900s", Range{1900, 1999}},
		{"early 1900s", Range{1900, 1939}},
		{"2000s", Range{2000, 2009}},
		{"before 1978", Range{-inf, 1977}},
		{"pre-1978", Range{-inf, 1977}},
		{"before the 1960s", Range{-inf, 1959}},
		{"after 1990", Range{1991, inf}},
		{"since 1990", Range{1990, inf}},
		{"1990 or later", Range{1990, inf}},
		{"1990 or older", Range{-inf, 1990}},
		{"about 1970", Range{1965, 1975}},
		{"circa 1970", Range{1965, 1975}},
		{"1981 to 1989", Range{1981, 1989}},
		{"1981–1989", Range{1981, 1989}},
		{"between 1981 and 1989", Range{1981, 1989}},
		{"1960s to 1970s", Range{1960, 1979}},
		{"1968 or 1969", Range{1968, 1969}},
	}
	for _, c := range cases {
		check(t, Year, c.text, US, c.want)
	}
}

func TestReadAsksBack(t *testing.T) {
	cases := []struct {
		d    Dimension
		text string
		sys  System
		want []string
	}{
		{Length, "12", US, []string{"12 in", "12 ft", "12 mm", "12 cm", "12 m"}},
		{Length, "12", Metric, []string{"12 mm", "12 cm", "12 m", "12 in", "12 ft"}},
		{Length, "12 1/2", US, []string{"12 1/2 in", "12 1/2 ft", "12 1/2 mm", "12 1/2 cm", "12 1/2 m"}},
		{Length, "9 to 10", US, []string{"9 in to 10", "9 ft to 10", "9 mm to 10", "9 cm to 10", "9 m to 10"}},
		{Length, "16 oc", Metric, []string{"16 mm oc", "16 cm oc", "16 m oc", "16 in oc"}},
		{Length, "16' OC", US, []string{"16 in", "16 ft"}},
		{Length, "16 ft on center", US, []string{"16 in", "16 ft"}},
		{Length, "8' - 10", US, []string{`8' 10"`, "8 to 10 ft"}},
		{Length, "3 in 2 m", Metric, []string{"3 mm in 2 m", "3 in over 2 m"}},
		{Length, "3 in 10", Metric, []string{"3 mm in 10", "3 in over 10"}},
		{Length, "3,810 mm", Metric, []string{"3810 mm", "3.810 mm"}},
		{Area, "120", US, []string{"120 ft2", "120 m2"}},
		{Load, "40", US, []string{"40 psf", "40 kPa"}},
		{Load, "2", Metric, []string{"2 kPa", "2 psf"}},
		{Weight, "300", US, []string{"300 lb", "300 kg"}},
		{Strength, "2000", US, []string{"2000 psi", "2000 MPa"}},
	}
	for _, c := range cases {
		_, err := Read(c.d, c.text, c.sys)
		var unclear *Unclear
		if !errors.As(err, &unclear) || unclear.Text != c.text {
			t.Errorf("Read(%v, %q) gave %v, not a question", c.d, c.text, err)
			continue
		}
		if !slices.Equal(unclear.Readings, c.want) {
			t.Errorf("Read(%v, %q) offers %q, want %q", c.d, c.text, unclear.Readings, c.want)
		}
		for _, reading := range unclear.Readings {
			if _, err := Read(c.d, reading, c.sys); err != nil {
				t.Errorf("the reading %q of %q is refused: %v", reading, c.text, err)
			}
		}
	}
}

func TestReadRefuses(t *testing.T) {
	cases := []struct {
		d    Dimension
		text string
	}{
		{Length, ""}, {Length, "   "}, {Length, "wide"}, {Length, "NaN"}, {Length, "Inf in"}, {Length, "1e400 in"},
		{Length, "2000000000 in"}, {Length, "12\x1b[31m in"}, {Length, "12\u202e in"}, {Length, "12\n in"}, {Length, "12\xff in"},
		{Length, "1/0 in"}, {Length, "5/"}, {Length, `5' 14"`}, {Length, "12 m2"}, {Length, "12 in 34 in"}, {Length, "5 in over 7 ft"},
		{Length, "10 to 9 in"}, {Length, "9 - 1/4 in"}, {Length, "at least 5 to 6 in"}, {Length, "at least 5 in or less"},
		{Length, "9 and 10 in"}, {Length, "2x10"}, {Length, "1.234,5 mm"}, {Length, strings.Repeat("9", 300)},
		{Area, "-3 ft2"}, {Load, "-5 psf"}, {Weight, "-1 lb"}, {Strength, "-1 psi"}, {Number, "-1"}, {Days, "-1"}, {Emission, "-3"},
		{Points, "-2"}, {Percent, "-1%"}, {Percent, "101%"}, {Percent, "12 in"}, {Ratio, "L/0"}, {Ratio, "-360"},
		{Year, "68"}, {Year, "19688"}, {Year, "1968.5"}, {Year, "0999"}, {Year, "3000"}, {Year, "early 1968"}, {Year, "about the sixties"},
		{Load, "40 in"}, {Weight, "3 psf"},
	}
	for _, c := range cases {
		r, err := Read(c.d, c.text, US)
		var malformed *Malformed
		if !errors.As(err, &malformed) || malformed.Want.IsZero() || len(malformed.Examples) == 0 {
			t.Errorf("Read(%v, %q) = %v, %v; want a refusal that says how to write it", c.d, c.text, r, err)
		}
	}
}

// Every example that a refusal gives is itself read.
func TestExamplesAreRead(t *testing.T) {
	for d, texts := range examples {
		for _, text := range texts {
			if _, err := Read(Dimension(d), text, US); err != nil {
				t.Errorf("the example %q of %v is refused: %v", text, Dimension(d), err)
			}
		}
	}
}

func TestErrorText(t *testing.T) {
	_, err := Read(Length, "12", US)
	if got, want := err.Error(), `"12" may mean 12 in, 12 ft, 12 mm, 12 cm or 12 m: write the one that is meant`; got != want {
		t.Errorf("got  %s\nwant %s", got, want)
	}
	_, err = Read(Length, "10 to 9 in", US)
	if got, want := err.Error(), `"10 to 9 in" is not a range from the smaller to the larger: write it like 9 to 10 in`; got != want {
		t.Errorf("got  %s\nwant %s", got, want)
	}
	_, err = Read(Length, strings.Repeat("x", 150), US)
	if len(err.Error()) > 200 {
		t.Errorf("a long text is repeated whole: %s", err)
	}
}
