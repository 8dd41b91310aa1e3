package logic

import "slices"

// A Ref is a place in an Index of addresses.
type Ref int32

// Deps is a sorted set of the addresses that an open outcome or an unsettled
// fact depends on. A settled one has none.
type Deps []Ref

// DependOn is the set of one address.
func DependOn(r Ref) Deps { return Deps{r} }

// Union is the set of what stands in either. It may share memory with its
// operands, which are never changed.
func (d Deps) Union(e Deps) Deps {
	switch {
	case len(e) == 0:
		return d
	case len(d) == 0:
		return e
	}
	out := make(Deps, 0, len(d)+len(e))
	i, j := 0, 0
	for i < len(d) && j < len(e) {
		switch {
		case d[i] < e[j]:
			out = append(out, d[i])
			i++
		case d[i] > e[j]:
			out = append(out, e[j])
			j++
		default:
			out = append(out, d[i])
			i, j = i+1, j+1
		}
	}
	return append(append(out, d[i:]...), e[j:]...)
}

// Has reports whether the address is in the set.
func (d Deps) Has(r Ref) bool {
	_, ok := slices.BinarySearch(d, r)
	return ok
}

// Truth is what is known of a condition. The zero value is open.
type Truth uint8

// The three truths: Open is neither proven.
const (
	Open Truth = iota
	Yes
	No
)

// String is yes, no or open.
func (t Truth) String() string { return [...]string{"open", "yes", "no"}[t] }

// TruthOf is yes where it is proven, no where it is refuted, else open; yes wins.
func TruthOf(yes, no bool) Truth {
	switch {
	case yes:
		return Yes
	case no:
		return No
	}
	return Open
}

// An Outcome is the truth of a condition and, while it is open, the addresses
// whose answers may settle it. The zero value is open.
type Outcome struct {
	Truth Truth
	Deps  Deps
}

// The settled outcomes.
var (
	Proven  = Outcome{Truth: Yes}
	Refuted = Outcome{Truth: No}
)

// OpenOn is an open outcome that depends on the addresses.
func OpenOn(d Deps) Outcome { return Outcome{Deps: d} }

// And: a proven no wins and depends on nothing; all yes is yes; else open on
// the union of the open operands.
func (o Outcome) And(p Outcome) Outcome {
	switch {
	case o.Truth == No || p.Truth == No:
		return Refuted
	case o.Truth == Yes:
		return p
	case p.Truth == Yes:
		return o
	}
	return Outcome{Deps: o.Deps.Union(p.Deps)}
}

// Or is the dual of And.
func (o Outcome) Or(p Outcome) Outcome {
	switch {
	case o.Truth == Yes || p.Truth == Yes:
		return Proven
	case o.Truth == No:
		return p
	case p.Truth == No:
		return o
	}
	return Outcome{Deps: o.Deps.Union(p.Deps)}
}

// Not turns the truth round and keeps what it depends on.
func (o Outcome) Not() Outcome {
	switch o.Truth {
	case Yes:
		return Refuted
	case No:
		return Proven
	}
	return o
}
