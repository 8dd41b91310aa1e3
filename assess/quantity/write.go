package quantity

import (
	"math"
	"strconv"
	"strings"
)

// Write is a range as a reader of the system sees it: US lengths in feet and
// inches with fractions to 1/32 where that is within two thousandths of an
// inch and else in decimals, metric lengths in millimetres; other dimensions
// in square feet or metres, psf or kPa, lb or kg, psi or MPa. Decimal inches
// have four digits that count, other numbers three. The N of L/N is rounded
// down, so that a floor below its limit never prints as the limit. Open ends
// read `at least`, `more than`, `up to`, `less than`, `not known`.
func Write(d Dimension, r Range, sys System) string {
	if word, end, ok := ruledOut(d, r); ok {
		return word + printed(d, end, sys)
	}
	return arrange(d, r, func(v float64) string { return printed(d, v, sys) })
}

// ruledOut finds the round number that a half-open range stops just short of,
// and the words for it. A neighbour in floating point that needs far fewer
// digits, in either system, is the number that was written.
func ruledOut(d Dimension, r Range) (word string, end float64, ok bool) {
	var v float64
	switch {
	case d == Year || isOpen(r.Lo) == isOpen(r.Hi):
		return "", 0, false
	case isOpen(r.Hi):
		word, v, end = "more than ", r.Lo, math.Nextafter(r.Lo, math.Inf(-1))
	default:
		word, v, end = "less than ", r.Hi, math.Nextafter(r.Hi, math.Inf(1))
	}
	const fewer = 8
	for _, sys := range []System{US, Metric} {
		u := d.unit(sys)
		if len(decimal(u.from(end)))+fewer < len(decimal(u.from(v))) {
			return word, end, true
		}
	}
	return "", 0, false
}

// arrange puts the texts of the ends together.
func arrange(d Dimension, r Range, end func(float64) string) string {
	lo, hi := isOpen(r.Lo), isOpen(r.Hi)
	switch {
	case r.IsEmpty():
		return "none possible"
	case lo && hi:
		return notKnown
	case lo && d == Year:
		return end(r.Hi) + " or earlier"
	case hi && d == Year:
		return end(r.Lo) + " or later"
	case lo:
		return "up to " + end(r.Hi)
	case hi:
		return "at least " + end(r.Lo)
	}
	from, to := end(r.Lo), end(r.Hi)
	if from == to {
		return from
	}
	return share(from, to) + " to " + to
}

// share is the first end without its unit, where the second has the same one.
// Feet with inches behind them are no unit: 5 ft 6 in to 6 ft 6 in keeps both.
func share(from, to string) string {
	number, unit, ok := strings.Cut(from, " ")
	if _, same, _ := strings.Cut(to, " "); ok && same == unit && !strings.HasPrefix(unit, "ft ") {
		return number
	}
	return from
}

// printed is one value for a reader.
func printed(d Dimension, v float64, sys System) string {
	if d == Length && sys == US {
		return printedLength(v)
	}
	u := d.unit(sys)
	switch d {
	case Year:
		return strconv.FormatFloat(v, 'f', 0, 64)
	case Ratio:
		return withUnit(d, decimal(math.Floor(v+1e-9)), u)
	}
	return withUnit(d, digits(u.from(v), 3), u)
}

// withUnit is a number with the sign or name of its unit.
func withUnit(d Dimension, number string, u *unit) string {
	switch {
	case d == Ratio:
		return "L/" + number
	case u.symbol == "":
		return number
	case u == percent:
		return number + "%"
	case number == "1" && (u == day || u == point):
		return number + " " + strings.TrimSuffix(u.symbol, "s")
	}
	return number + " " + u.symbol
}

// inchesBelow is the length in inches from which feet are written.
const inchesBelow = 60

// printedLength is a length in feet and inches, or in inches where it is short.
func printedLength(v float64) string {
	if v < 0 {
		return "-" + printedLength(-v)
	}
	text, exact := thirtySeconds(v)
	if !exact {
		text = digits(v, 4)
	}
	if v < inchesBelow {
		return text + " in"
	}
	if exact {
		v = math.Round(v*32) / 32
	}
	feet := math.Floor(v / 12)
	rest := v - 12*feet
	if rest == 0 {
		return decimal(feet) + " ft"
	}
	if text, exact = thirtySeconds(rest); !exact {
		text = decimal(math.Floor(rest*100) / 100)
	}
	return decimal(feet) + " ft " + text + " in"
}

// thirtySeconds is v as a whole number and a fraction to 1/32, and whether that
// is within two thousandths of it.
func thirtySeconds(v float64) (text string, exact bool) {
	const near = 0.002
	n := math.Round(v * 32)
	if math.Abs(v-n/32) > near || n == 0 && v != 0 {
		return "", false
	}
	whole, part, den := math.Floor(n/32), int(math.Mod(n, 32)), 32
	if part == 0 {
		return decimal(whole), true
	}
	for part%2 == 0 {
		part, den = part/2, den/2
	}
	fraction := strconv.Itoa(part) + "/" + strconv.Itoa(den)
	if whole == 0 {
		return fraction, true
	}
	return decimal(whole) + "-" + fraction, true
}

// digits is a number with n digits that count, or all its whole ones.
func digits(v float64, n int) string {
	if math.Abs(v) >= math.Pow10(n-1) {
		return strconv.FormatFloat(v, 'f', 0, 64)
	}
	rounded, _ := strconv.ParseFloat(strconv.FormatFloat(v, 'g', n, 64), 64)
	return decimal(rounded)
}

// decimal is a number in the fewest digits that give it back, in the form that
// Read knows.
func decimal(v float64) string {
	if v != 0 && math.Abs(v) < 1e-6 {
		return strconv.FormatFloat(v, 'e', -1, 64)
	}
	return strconv.FormatFloat(v, 'f', -1, 64)
}
