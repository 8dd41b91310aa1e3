package quantity

import (
	"math"
	"strings"
	"testing"
)

func TestWrite(t *testing.T) {
	cases := []struct {
		d          Dimension
		r          Range
		us, metric string
	}{
		{Length, Point(0), "0 in", "0 mm"},
		{Length, Point(0.125), "1/8 in", "3.17 mm"},
		{Length, Point(9.25), "9-1/4 in", "235 mm"},
		{Length, Point(23.0 / 32), "23/32 in", "18.3 mm"},
		{Length, Point(90.0 / 127), "0.7087 in", "18 mm"},
		{Length, Point(1.5 / 127), "0.01181 in", "0.3 mm"},
		{Length, Point(0.001), "0.001 in", "0.0254 mm"},
		{Length, Point(16), "16 in", "406 mm"},
		{Length, Point(19.2), "19.2 in", "488 mm"},
		{Length, Point(54), "54 in", "1372 mm"},
		{Length, Point(60), "5 ft", "1524 mm"},
		{Length, Point(150.5), "12 ft 6-1/2 in", "3823 mm"},
		{Length, Point(119.9995), "10 ft", "3048 mm"},
		{Length, Point(149.60629921259843), "12 ft 5.6 in", "3800 mm"},
		{Length, Point(-0.5), "-1/2 in", "-12.7 mm"},
		{Length, Range{9.25, 9.5}, "9-1/4 to 9-1/2 in", "235 to 241 mm"},
		{Length, Range{54, 72}, "54 in to 6 ft", "1372 to 1829 mm"},
		{Length, AtLeast(60), "at least 5 ft", "at least 1524 mm"},
		{Length, AtMost(15.0 / 127), "up to 0.1181 in", "up to 3 mm"},
		{Length, AtLeast(after(0.125)), "more than 1/8 in", "more than 3.17 mm"},
		{Length, AtMost(before(0.125)), "less than 1/8 in", "less than 3.17 mm"},
		{Length, Everything, "not known", "not known"},
		{Length, Range{2, 1}, "none possible", "none possible"},
		{Area, Point(120), "120 ft2", "11.1 m2"},
		{Load, Point(40), "40 psf", "1.92 kPa"},
		{Load, Point(8.75), "8.75 psf", "0.419 kPa"},
		{Weight, Point(250), "250 lb", "113 kg"},
		{Strength, Point(2000), "2000 psi", "13.8 MPa"},
		{Ratio, Point(360), "L/360", "L/360"},
		{Ratio, Point(359.9), "L/359", "L/359"},
		{Ratio, Point(360 - 1e-12), "L/360", "L/360"},
		{Ratio, Range{340, 420}, "L/340 to L/420", "L/340 to L/420"},
		{Percent, Point(75), "75%", "75%"},
		{Points, Point(1), "1 point", "1 point"},
		{Points, Range{2, 4}, "2 to 4 points", "2 to 4 points"},
		{Days, Point(1), "1 day", "1 day"},
		{Days, Point(28), "28 days", "28 days"},
		{Emission, Point(3), "3 lb/1000 ft2", "14.6 g/m2"},
		{Year, Range{1960, 1969}, "1960 to 1969", "1960 to 1969"},
		{Year, AtMost(1977), "1977 or earlier", "1977 or earlier"},
		{Year, AtLeast(1991), "1991 or later", "1991 or later"},
		{Number, Range{2, 4}, "2 to 4", "2 to 4"},
	}
	for _, c := range cases {
		if got := Write(c.d, c.r, US); got != c.us {
			t.Errorf("Write(%v, %v, us) = %q, want %q", c.d, c.r, got, c.us)
		}
		if got := Write(c.d, c.r, Metric); got != c.metric {
			t.Errorf("Write(%v, %v, mm) = %q, want %q", c.d, c.r, got, c.metric)
		}
	}
}

// Short exact texts stay as a person writes them.
func TestWriteExact(t *testing.T) {
	cases := []struct {
		d    Dimension
		r    Range
		sys  System
		want string
	}{
		{Length, Point(150.5), US, "12 ft 6-1/2 in"},
		{Length, Point(0.3), US, "0.3 in"},
		{Length, Point(149.60629921259843), Metric, "3800 mm"},
		{Length, Range{9, 9.25}, US, "9 to 9-1/4 in"},
		{Length, AtLeast(after(0.125)), US, "more than 1/8 in"},
		{Length, Point(1e-9), US, "1e-09 in"},
		{Ratio, Point(359.75), US, "L/359.75"},
		{Load, Point(40.123456), US, "40.123456 psf"},
		{Year, AtMost(1977), US, "1977 or earlier"},
		{Days, Everything, US, "not known"},
	}
	for _, c := range cases {
		if got := WriteExact(c.d, c.r, c.sys); got != c.want {
			t.Errorf("WriteExact(%v, %v) = %q, want %q", c.d, c.r, got, c.want)
		}
	}
}

// A printed US length lies within two thousandths of an inch of the value
// where it is a fraction, and within a hundredth where it is a decimal.
func TestPrintedLengthIsNear(t *testing.T) {
	for v := 0.0; v < 400; v += 0.0137 {
		text := Write(Length, Point(v), US)
		got, err := Read(Length, text, US)
		tolerance := 0.0101
		if strings.Contains(text, "/") {
			tolerance = 0.0021
		}
		if err != nil || math.Abs(got.Lo-v) > tolerance {
			t.Fatalf("%v prints as %q, which reads as %v, %v", v, text, got, err)
		}
	}
}

// TestFeetAndInchesAreNotShared: the inches behind the feet belong to each end.
func TestFeetAndInchesAreNotShared(t *testing.T) {
	for r, want := range map[Range]string{
		{66, 78}: "5 ft 6 in to 6 ft 6 in", {60, 72}: "5 to 6 ft", {9, 9.25}: "9 to 9-1/4 in",
	} {
		if got := Write(Length, r, US); got != want {
			t.Errorf("%v is written %q, want %q", r, got, want)
		}
		if got := WriteExact(Length, r, US); !isRead(Length, got, r, US) {
			t.Errorf("%v is written %q, which is not read as it", r, got)
		}
	}
}
