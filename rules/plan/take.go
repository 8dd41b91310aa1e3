package plan

import (
	"slices"
	"strings"

	"underfoot/assess"
	"underfoot/assess/facts"
	"underfoot/assess/quantity"
	"underfoot/assess/result"
	"underfoot/assess/schema"
)

// take changes the zone's record to what it would be with the step done.
func (p *Planner) take(s *stage, zone *assess.Zone, path result.PathID) {
	p.makes(s, zone, p.Judge.Pack.Steps[path].Makes, "")
	for i := range s.evaluation.Rulings {
		r := &s.evaluation.Rulings[i]
		if r.Rule.Calls == path && r.Due() {
			p.makes(s, zone, r.Rule.Makes, r.Subject())
		}
	}
	switch path {
	case result.Remove:
		for i := range zone.Lists[schema.ScopeLayer][:s.takenUp()] {
			assume(&zone.Lists[schema.ScopeLayer][i].Assumed, "layer.coming_out", schema.SetYes)
		}
	case result.FindOut:
		closeLists(zone)
	}
}

// closeLists takes every list as it stands.
func closeLists(zone *assess.Zone) {
	if zone.Answers == nil {
		zone.Answers = assess.Answers{}
	}
	for _, list := range schema.ListScopes {
		zone.Answers[assess.CompleteField(list)] = assess.Answer{Set: schema.SetYes, Basis: assess.Assumed}
	}
}

// takenUp is how many layers come up: down to the deepest that a rule removes;
// and where a covering has to go for its height, down to the first that an
// engineer is asked about, or all of them.
func (s *stage) takenUp() int {
	layers := s.layers()
	if s.evaluation.LeadRuling == nil && s.evaluation.Lead == result.Remove {
		for n, frame := range layers {
			if slices.Contains(s.evaluation.Guarded, frame.ID()) {
				return n
			}
		}
		return len(layers)
	}
	return 1 + lastIndex(s.evaluation.Lifted(layers))
}

// lastIndex is the last place where it is so, or -1.
func lastIndex(list []bool) int {
	for i := len(list) - 1; i >= 0; i-- {
		if list[i] {
			return i
		}
	}
	return -1
}

// layers are those that the record names, from the top.
func (s *stage) layers() []*facts.Frame {
	return s.zone.Things(schema.ScopeLayer)[:len(s.job.Areas[0].Zones[0].Lists[schema.ScopeLayer])]
}

// makes assumes the values of a record: a zone's fact for the zone, an item's
// fact for the item named or for every item of its list.
func (p *Planner) makes(s *stage, zone *assess.Zone, values map[string]string, item string) {
	for name, text := range values {
		d := p.Judge.Schema.Find(name)
		if d == nil {
			continue
		}
		set, ok := p.value(s, d, text)
		switch {
		case !ok:
		case d.Scope == schema.ScopeZone:
			assume(&zone.Assumed, name, set)
		case d.Scope.Listed():
			for _, it := range meant(zone.Lists[d.Scope], item) {
				assume(&it.Assumed, name, set)
			}
		}
	}
}

// meant are the item of an id, or all of them where there is none of it.
func meant(items []assess.Item, id string) []*assess.Item {
	var all []*assess.Item
	for i := range items {
		if items[i].ID == id {
			return []*assess.Item{&items[i]}
		}
		all = append(all, &items[i])
	}
	return all
}

func assume(m *map[string]schema.Set, name string, set schema.Set) {
	if *m == nil {
		*m = map[string]schema.Set{}
	}
	(*m)[name] = set
}

// value reads what a record makes true: a value, or `=` and the name of a fact
// or figure to copy.
func (p *Planner) value(s *stage, d *schema.Declaration, text string) (schema.Set, bool) {
	name, copied := strings.CutPrefix(text, "=")
	if !copied {
		set, err := p.Describer.Catalogue.Read(d, text, quantity.US)
		return set, err == nil
	}
	if id, ok := strings.CutPrefix(name, "figure."); ok {
		f, ok := p.Describer.Figures.Figure(id)
		return schema.Set{Range: quantity.Point(f.Value)}, ok
	}
	f, ok := p.Judge.Schema.Lookup(name)
	if !ok {
		return schema.Set{}, false
	}
	return s.zone.Fact(f).Set, true
}
