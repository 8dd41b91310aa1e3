package judge

import (
	"underfoot/assess/facts"
	"underfoot/assess/logic"
	"underfoot/assess/schema"
)

// Missing gathers the addresses that rulings of one floor miss, each once, in
// the order in which they come.
type Missing struct {
	seen  []bool // by number
	refs  logic.Deps
	thing *facts.Frame
}

// Add adds what the ruling misses.
func (m *Missing) Add(r *Ruling) {
	m.thing = r.Thing
	for _, ref := range r.Outcome.Deps {
		for int(ref) >= len(m.seen) {
			m.seen = append(m.seen, false)
		}
		if !m.seen[ref] {
			m.seen[ref] = true
			m.refs = append(m.refs, ref)
		}
	}
}

// List are the addresses so far; nil where nothing is missing.
func (m *Missing) List() []schema.Address {
	if m.thing == nil {
		return nil
	}
	return m.thing.Named(m.refs)
}

// Missing are the addresses whose answers would settle the ruling.
func (r *Ruling) Missing() []schema.Address { return r.Thing.Named(r.Outcome.Deps) }
