package facts

import (
	"slices"

	"underfoot/assess"
)

// Asked are the questions that a fact is made from, in catalogue order: itself
// where it is one. Those that only close a list are left out.
func (p *Plan) Asked(f assess.FactID) []assess.FactID {
	var out []assess.FactID
	seen := map[assess.FactID]bool{}
	var visit func(assess.FactID)
	visit = func(f assess.FactID) {
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
