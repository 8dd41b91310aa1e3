package pack

import (
	"underfoot/assess/condition"
	"underfoot/assess/logic"
	"underfoot/assess/schema"
)

// Eval is what the rule says of the facts of one thing: `applies` and `when`
// together. Applies is false where the rule is proven not to look at the thing.
func (r *Rule) Eval(facts schema.Reader) (o logic.Outcome, applies bool) {
	if r.Applies == nil {
		return r.When.Eval(facts), true
	}
	of := r.Applies.Eval(facts)
	return of.And(r.When.Eval(facts)), of.Truth != logic.No
}

// Conditions are all that the rule has, those that Eval joins first.
func (r *Rule) Conditions() []*condition.Condition {
	all := r.decisive()
	for _, c := range r.UnknownWhen {
		all = append(all, c.When)
	}
	if r.TakesUp != nil {
		all = append(all, r.TakesUp)
	}
	return all
}

// decisive are the conditions that Eval joins.
func (r *Rule) decisive() []*condition.Condition {
	if r.Applies == nil {
		return []*condition.Condition{r.When}
	}
	return []*condition.Condition{r.Applies, r.When}
}

// Explain is what decided the rule: the branches of its conditions that did,
// with the values that their facts have. A no settles the whole, and what else
// was looked at is left out.
func (r *Rule) Explain(facts schema.Reader, show condition.Show) []condition.Explanation {
	var out []condition.Explanation
	for _, c := range r.decisive() {
		x := c.Explain(facts, show)
		if x.Truth == logic.No {
			return []condition.Explanation{x}
		}
		out = append(out, x)
	}
	return out
}
