package judge

import (
	"underfoot/assess"
	"underfoot/assess/condition"
)

// Why is what decided a ruling: the branches of its conditions that did, with
// the values that their facts have. A condition that decided nothing is left out.
func (d *Describer) Why(r *Ruling) []condition.Explanation {
	show := Show(d.Catalogue, d.System)
	var out []condition.Explanation
	for _, c := range []*condition.Condition{r.Rule.Applies, r.Rule.When} {
		if c == nil {
			continue
		}
		x := c.Explain(r.Thing, show)
		if x.Truth == assess.No {
			return []condition.Explanation{x} // a no settles the whole
		}
		out = append(out, x)
	}
	return out
}

// Gone reports whether the ruling is a no because the layer is coming out.
func (r *Ruling) Gone() bool {
	return r.Rule.Scope == assess.ScopeLayer && r.Rule.Protects != "people" && r.Outcome.Truth == assess.No &&
		r.Thing.Stays().Truth == assess.No
}

// Rest reports whether the ruling is about items that nobody has named.
func (r *Ruling) Rest() bool { return r.Thing.IsRest() }
