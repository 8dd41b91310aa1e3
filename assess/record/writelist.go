package record

import (
	"go.yaml.in/yaml/v4"

	"underfoot/assess"
	"underfoot/assess/schema"
)

// list brings one list of a zone up to date.
func (w *writer) list(zone *yaml.Node, list schema.Scope, was, now *assess.Zone) {
	name := assess.CompleteField(list)
	closed, said := now.Answers[name]
	before, saidBefore := was.Answers[name]
	items := now.Lists[list]
	unchanged := said == saidBefore && same(before, closed)
	n := child(zone, list.String())
	switch {
	case len(items) == 0 && !said && (n == nil || isNull(n)), unchanged && len(items) == 0 && isNone(n):
		return
	case len(items) == 0 && said && same(closed, closedEmpty()) && n == nil:
		setChild(zone, list.String(), newScalar("none"))
		return
	case n == nil || n.Kind != yaml.MappingNode:
		unchanged = false
		setChild(zone, list.String(), newMapping())
		n = child(zone, list.String())
	}
	switch {
	case unchanged:
	case said:
		setChild(n, "complete", w.answer(completeWords(w.schema, list), closed))
	default:
		dropChild(n, "complete")
	}
	w.items(n, list, was, now)
	sortKeys(n, rankIn(listFields))
	if len(n.Content) == 0 {
		dropChild(zone, list.String())
	}
}

func isNone(n *yaml.Node) bool { return n != nil && n.Kind == yaml.ScalarNode && n.Value == "none" }

func (w *writer) items(n *yaml.Node, list schema.Scope, was, now *assess.Zone) {
	items := now.Lists[list]
	seq := sequenceOf(n, "items", len(items))
	arrange(seq, len(items), func(i int) string { return items[i].ID }, func(i int, m *yaml.Node) {
		var before assess.Answers
		if k := findItem(was, list, items[i].ID); k >= 0 {
			before = was.Lists[list][k].Answers
		}
		w.fill(m, list, before, items[i].Answers)
	})
}
