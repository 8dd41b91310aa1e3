package judge

import (
	"underfoot/assess/condition"
	"underfoot/assess/logic"
	"underfoot/assess/result"
	"underfoot/assess/schema"
)

// Why is what decided a ruling: the branches of its conditions that did, with
// the values that their facts have. A condition that decided nothing is left out.
func (d *Describer) Why(r *Ruling) []condition.Explanation {
	return r.Rule.Explain(r.Thing, Show(d.Catalogue, d.Language, d.System))
}

// Gone reports whether the ruling is a no because the layer is coming out.
func (r *Ruling) Gone() bool {
	return r.Rule.Scope == schema.ScopeLayer && r.Rule.Protects != result.ProtectsPeople && r.Outcome.Truth == logic.No &&
		r.Thing.Stays().Truth == logic.No
}

// Rest reports whether the ruling is about items that nobody has named.
func (r *Ruling) Rest() bool { return r.Thing.IsRest() }
