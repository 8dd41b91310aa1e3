package book

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"underfoot/rules"
	"underfoot/rules/pack"
)

// A topic is the rules of one file.
type topic struct {
	id, title string
	rules     []*entry
}

// An entry is a rule with its topic, the regions in which it holds, and the
// engine of the first of them.
type entry struct {
	*pack.Rule
	topic   *topic
	engine  *rules.Engine
	regions []string
}

// order puts rules without a rank last.
func (e *entry) order() float64 {
	if e.Rank == 0 {
		return math.Inf(1)
	}
	return e.Rank
}

// rank is the lowest rank of the topic; topics without one come last.
func (t *topic) rank() float64 { return t.rules[0].order() }

// topics are the rules of every region, each once, by topic and rank.
func (w *writer) topics() []*topic {
	byID := map[string]*topic{}
	seen := map[string]*entry{}
	var list []*topic
	for _, e := range w.engines {
		for _, r := range e.Pack.Rules {
			if known := seen[r.ID]; known != nil {
				known.regions = append(known.regions, e.Figures.Region)
				continue
			}
			id := topicOf(r.File)
			t := byID[id]
			if t == nil {
				t = &topic{id: id, title: w.language.Or("book/topic."+id, id)}
				byID[id], list = t, append(list, t)
			}
			seen[r.ID] = &entry{Rule: r, topic: t, engine: e, regions: []string{e.Figures.Region}}
			t.rules = append(t.rules, seen[r.ID])
		}
	}
	for _, t := range list {
		slices.SortStableFunc(t.rules, func(a, b *entry) int {
			return cmp.Or(cmp.Compare(a.order(), b.order()), strings.Compare(a.ID, b.ID))
		})
	}
	slices.SortStableFunc(list, func(a, b *topic) int {
		return cmp.Or(cmp.Compare(a.rank(), b.rank()), strings.Compare(a.id, b.id))
	})
	return list
}

// topicOf is the name of a rule's file without folder and ending.
func topicOf(file string) string {
	name := file[strings.LastIndexByte(file, '/')+1:]
	return strings.TrimSuffix(name, ".toml")
}
