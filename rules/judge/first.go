package judge

import (
	"slices"

	"underfoot/assess/result"
)

// First is the first ruling, by rank, of which something holds; nil where there
// is none.
func (e *Evaluation) First(holds func(*Ruling) bool) *Ruling {
	for i := range e.Rulings {
		if holds(&e.Rulings[i]) {
			return &e.Rulings[i]
		}
	}
	return nil
}

// Strikes reports whether the ruling is about a bar of a base that some rule
// permits now.
func (e *Evaluation) Strikes(r *Ruling) bool {
	return e.First(func(p *Ruling) bool {
		return permitsNow(p) && slices.ContainsFunc(p.Rule.Permits, func(b result.PathID) bool { return bars(r, b) })
	}) != nil
}
