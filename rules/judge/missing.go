package judge

import (
	"underfoot/assess"
	"underfoot/assess/facts"
)

// Missing gathers the addresses that rulings of one floor miss, each once, in
// the order in which they come.
type Missing struct {
	seen  []bool // by number
	refs  assess.Deps
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
func (m *Missing) List() []assess.Address {
	if m.thing == nil {
		return nil
	}
	return m.thing.Named(m.refs)
}

// Missing are the addresses whose answers would settle the ruling.
func (r *Ruling) Missing() []assess.Address { return r.Thing.Named(r.Outcome.Deps) }
