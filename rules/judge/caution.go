package judge

import (
	"underfoot/assess/logic"
	"underfoot/assess/result"
)

// Cautions are the ids of the warnings that the rulings attach: of what is
// there or presumed, and, where the rule protects people, of what may be.
func (e *Evaluation) Cautions() []string {
	var out []string
	seen := map[string]bool{}
	for i := range e.Rulings {
		r := &e.Rulings[i]
		if !r.AttachesCautions() || !e.concerns(r) {
			continue
		}
		for _, id := range r.Rule.Cautions {
			if !seen[id] {
				seen[id] = true
				out = append(out, id)
			}
		}
	}
	return out
}

// AttachesCautions reports whether the rule's cautions are attached: what it speaks of is
// there or presumed, or may be there and would hurt people.
func (r *Ruling) AttachesCautions() bool {
	return r.Proven() || r.Outcome.Truth == logic.Open && r.Rule.Protects == result.ProtectsPeople && r.Applies
}
