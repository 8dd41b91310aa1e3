package quantity

import (
	"math"
	"os/exec"
	"strconv"
	"strings"
	"testing"
)

// Factors to SI as printed in NIST Special Publication 811 (2008), Appendix B.8
// (inexact ones to seven digits), and the unit that the base unit stands for.
func TestConversionsAgainstPrintedFactors(t *testing.T) {
	cases := []struct {
		name   string
		metric *unit
		factor float64 // metric units in one base unit
	}{
		{"inch to millimetre", millimetre, 25.4},
		{"inch to centimetre", centimetre, 2.54},
		{"inch to metre", metre, 0.0254},
		{"square foot to square metre", squareMetre, 9.290304e-02},
		{"pound-force per square foot to kilopascal", kilopascal, 4.788026e-02},
		{"pound per square foot to kilogram per square metre", kilogramOnM2, 4.882428},
		{"pound to kilogram", kilogram, 0.4535924},
		{"pound-force per square inch to megapascal", megapascal, 6.894757e-03},
	}
	for _, c := range cases {
		if got := c.metric.from(1); math.Abs(got/c.factor-1) > 1e-6 {
			t.Errorf("%s: %v, printed %v", c.name, got, c.factor)
		}
	}
}

// The program `units` of the GNU project is an independent second reckoning.
func TestConversionsAgainstUnits(t *testing.T) {
	program, err := exec.LookPath("units")
	if err != nil {
		t.Skip("the program units is not installed")
	}
	cases := []struct {
		unit     *unit
		from, to string
	}{
		{millimetre, "mm", "inch"}, {centimetre, "cm", "inch"}, {metre, "m", "inch"}, {foot, "ft", "inch"}, {yard, "yard", "inch"},
		{squareMetre, "m^2", "ft^2"}, {kilopascal, "kPa", "lbf/ft^2"}, {kilogramOnM2, "gravity kg/m^2", "lbf/ft^2"},
		{kilogram, "kg", "lb"}, {megapascal, "MPa", "lbf/inch^2"}, {emissionGram, "g/m^2", "lb/(1000 ft^2)"},
	}
	for _, c := range cases {
		out, err := exec.Command(program, "-t", "-d", "12", c.from, c.to).Output()
		if err != nil {
			t.Fatalf("units %s %s: %v", c.from, c.to, err)
		}
		want, err := strconv.ParseFloat(strings.TrimSpace(string(out)), 64)
		if err != nil {
			t.Fatalf("units %s %s printed %q", c.from, c.to, out)
		}
		if got := c.unit.base(1); math.Abs(got/want-1) > 1e-10 {
			t.Errorf("one %s is %v %s, units says %v", c.from, got, c.to, want)
		}
	}
}

// Every name of a unit is read as that unit, except those that two dimensions share.
func TestEveryUnitNameIsRead(t *testing.T) {
	for d, list := range units {
		for _, u := range list {
			for _, name := range u.names {
				check(t, Dimension(d), "7 "+name, US, Point(u.base(7)))
			}
		}
	}
}

func TestDimensionNames(t *testing.T) {
	for _, d := range dimensions() {
		if got, ok := ParseDimension(d.String()); !ok || got != d {
			t.Errorf("%v is parsed as %v, %v", d, got, ok)
		}
	}
	if _, ok := ParseDimension("furlong"); ok {
		t.Error("furlong is taken for a dimension")
	}
}
