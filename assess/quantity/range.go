package quantity

import "math"

// A Range is a closed interval of possible values in the base unit of some
// dimension. An end that nothing is known about is infinite, so the range of
// an unanswered quantity is Everything. The zero Range is the point 0.
type Range struct {
	Lo, Hi float64
}

// Everything is the range of a quantity nobody has stated.
var Everything = Range{math.Inf(-1), math.Inf(1)}

// Point is the range that holds v alone.
func Point(v float64) Range { return Range{v, v} }

// AtLeast is the range from v upwards.
func AtLeast(v float64) Range { return Range{v, math.Inf(1)} }

// AtMost is the range up to v.
func AtMost(v float64) Range { return Range{math.Inf(-1), v} }

// IsPoint reports whether only one value is possible.
func (r Range) IsPoint() bool { return r.Lo == r.Hi }

// IsEmpty reports whether no value is possible.
func (r Range) IsEmpty() bool { return r.Lo > r.Hi }

// Bounded reports whether both ends are finite.
func (r Range) Bounded() bool { return !math.IsInf(r.Lo, 0) && !math.IsInf(r.Hi, 0) }

// Contains reports whether v is possible.
func (r Range) Contains(v float64) bool { return r.Lo <= v && v <= r.Hi }

// Within reports whether every value of r is a value of s.
func (r Range) Within(s Range) bool { return s.Lo <= r.Lo && r.Hi <= s.Hi }

// Hull is the smallest range that holds both.
func (r Range) Hull(s Range) Range { return Range{math.Min(r.Lo, s.Lo), math.Max(r.Hi, s.Hi)} }

// Meet is what both ranges hold; it may be empty.
func (r Range) Meet(s Range) Range { return Range{math.Max(r.Lo, s.Lo), math.Min(r.Hi, s.Hi)} }

// Add, Sub, Mul and Div are interval arithmetic: the result holds every value
// that the operation gives for some value of each operand.
func (r Range) Add(s Range) Range { return Range{r.Lo + s.Lo, r.Hi + s.Hi} }

// Sub is the range of r minus s.
func (r Range) Sub(s Range) Range { return Range{r.Lo - s.Hi, r.Hi - s.Lo} }

// Mul is the range of r times s; zero times infinity counts as zero, since an
// infinite end stands for an unknown finite value.
func (r Range) Mul(s Range) Range {
	a, b, c, d := product(r.Lo, s.Lo), product(r.Lo, s.Hi), product(r.Hi, s.Lo), product(r.Hi, s.Hi)
	return Range{math.Min(math.Min(a, b), math.Min(c, d)), math.Max(math.Max(a, b), math.Max(c, d))}
}

// Div is the range of r over s. A divisor that may be zero gives Everything.
// Each end is one division, so that points divide as plain numbers do.
func (r Range) Div(s Range) Range {
	if s.Lo <= 0 && s.Hi >= 0 {
		return Everything
	}
	a, b, c, d := quotient(r.Lo, s.Lo), quotient(r.Lo, s.Hi), quotient(r.Hi, s.Lo), quotient(r.Hi, s.Hi)
	return Range{math.Min(math.Min(a, b), math.Min(c, d)), math.Max(math.Max(a, b), math.Max(c, d))}
}

func quotient(a, b float64) float64 {
	if a == 0 || math.IsInf(b, 0) {
		return 0
	}
	return a / b
}

func product(a, b float64) float64 {
	if a == 0 || b == 0 {
		return 0
	}
	return a * b
}
