package facts

import (
	"slices"

	"underfoot/assess/schema"
)

// Asked are the questions that a fact is made from, in catalogue order: itself
// where it is one. Those that only close a list are left out.
func (p *Plan) Asked(f schema.FactID) []schema.FactID {
	var out []schema.FactID
	seen := map[schema.FactID]bool{}
	var visit func(schema.FactID)
	visit = func(f schema.FactID) {
		switch {
		case seen[f] || slices.Contains(p.lists[:], f):
			return
		case p.catalogue.Question(f) != nil:
			seen[f] = true
			out = append(out, f)
			return
		}
		seen[f] = true
		for i := range p.order {
			if slices.Contains(p.order[i].gives, f) {
				for _, r := range p.order[i].reads {
					visit(r)
				}
			}
		}
	}
	visit(f)
	slices.Sort(out)
	return out
}
