package record

import (
	"slices"
	"strings"

	"go.yaml.in/yaml/v4"

	"underfoot/assess"
	"underfoot/assess/schema"
)

// answers brings the answers below a thing up to date.
func (w *writer) answers(thing *yaml.Node, scope schema.Scope, was, now assess.Answers) {
	m := child(thing, "answers")
	if m == nil || m.Kind != yaml.MappingNode {
		if len(now) == 0 {
			return
		}
		setChild(thing, "answers", newMapping())
		m = child(thing, "answers")
	}
	unfold(m)
	w.fill(m, scope, was, now)
}

// fill brings a mapping of answers up to date: those of an area, or an item
// with its id.
func (w *writer) fill(m *yaml.Node, scope schema.Scope, was, now assess.Answers) {
	w.split(m, scope, now)
	for name := range was {
		if _, still := now[name]; !still {
			dropChild(m, name)
		}
	}
	for i := range w.schema.All() {
		d := &w.schema.All()[i]
		if ans, said := now[d.ID]; said && !w.stands(m, d, was, ans) {
			setChild(m, d.ID, w.answer(d, ans))
		}
	}
	w.gather(m, scope, was, now)
	sortKeys(m, w.rank)
}

// stands reports whether the tree says the answer already, by the fact's own
// key or by its family's.
func (w *writer) stands(m *yaml.Node, d *schema.Declaration, was assess.Answers, now assess.Answer) bool {
	before, said := was[d.ID]
	return said && same(before, now) && (child(m, d.ID) != nil || d.Family != "" && child(m, d.Family) != nil)
}

// rank is the place of an answer's key: that of its fact, or of its family's
// first member.
func (w *writer) rank(key string) int {
	if key == "id" {
		return -1
	}
	if f, ok := w.schema.Lookup(key); ok {
		return 2*int(f) + 1
	}
	i := slices.IndexFunc(w.schema.All(), func(d schema.Declaration) bool { return d.Family == key })
	if i < 0 {
		return 2 * w.schema.Len()
	}
	return 2 * i
}

// answer is one answer as it is written: the value alone, or a mapping where
// more is known of it.
func (w *writer) answer(d *schema.Declaration, ans assess.Answer) *yaml.Node {
	value := valueNode(d, ans)
	if ans.Basis == assess.NoBasis && ans.With == "" && ans.Note == "" && ans.On == "" && len(ans.Photos) == 0 {
		return value
	}
	m := newMapping()
	m.Style = yaml.FlowStyle
	setChild(m, "value", value)
	for _, a := range [...]struct{ key, text string }{
		{"basis", ans.Basis.String()}, {"with", ans.With}, {"on", string(ans.On)}, {"note", ans.Note}} {
		if a.text != "" {
			setChild(m, a.key, newScalar(a.text))
		}
	}
	if len(ans.Photos) > 0 {
		setChild(m, "photos", newWords(ans.Photos))
	}
	return m
}

func valueNode(d *schema.Declaration, ans assess.Answer) *yaml.Node {
	if ans.Reply != assess.Given {
		return newScalar(ans.Reply.String())
	}
	if words := strings.Split(ans.Text, ", "); len(words) > 1 && len(d.Choices) > 0 {
		return newWords(words)
	}
	return newScalar(ans.Text)
}

// split writes a family's members out one by one where one of them is no
// longer answered, since the family would answer it still.
func (w *writer) split(m *yaml.Node, scope schema.Scope, now assess.Answers) {
	for _, family := range families(w.schema, scope) {
		if n := child(m, family); n == nil || isNull(n) {
			continue
		}
		ms := members(w.schema, family, scope)
		if slices.ContainsFunc(ms, func(d *schema.Declaration) bool { _, said := now[d.ID]; return !said }) {
			dropChild(m, family)
		}
	}
}

// gather writes a family as a whole where every member has just been answered
// alike and none stood there before.
func (w *writer) gather(m *yaml.Node, scope schema.Scope, was, now assess.Answers) {
	for _, family := range families(w.schema, scope) {
		ms := members(w.schema, family, scope)
		like := now[ms[0].ID]
		alike := !slices.ContainsFunc(ms, func(d *schema.Declaration) bool {
			_, before := was[d.ID]
			ans, said := now[d.ID]
			return before || !said || !same(ans, none(d, like))
		})
		if !alike || child(m, family) != nil {
			continue
		}
		for _, d := range ms {
			dropChild(m, d.ID)
		}
		if like.Reply == assess.Given {
			like.Text = "none"
		}
		setChild(m, family, w.answer(familyWords(family), like))
	}
}
