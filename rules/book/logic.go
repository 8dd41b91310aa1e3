package book

import (
	"cmp"
	"slices"
	"strings"

	"underfoot/assess"
	"underfoot/rules/pack"
)

func (w *writer) verdicts() {
	w.chapter("verdicts")
	var list []item
	for v := assess.Ready; v <= assess.Hold; v++ {
		list = append(list, item{text: labelled(v.String(), w.text.Verdict[v.String()])})
	}
	w.list(list)
}

// paths tells every step and base with what its record says.
func (w *writer) paths() {
	w.chapter("paths")
	for _, p := range assess.Paths() {
		step := w.main.Pack.Steps[p]
		w.heading(3, "path-"+p.String(), step.Text.Label)
		w.list(w.path(p, step))
	}
}

func (w *writer) path(p assess.PathID, step *pack.Step) []item {
	kind := "a step; the least verdict that it allows is '" + p.Asks().String() + "'"
	if p.IsBase() {
		kind = "a base"
	}
	t := step.Text
	list := []item{{text: line{{text: "Name in records:", strong: true}, {text: " "}, {text: p.String(), code: true}, {text: ", " + kind + "."}}}}
	add := func(label, text string) {
		if text != "" {
			list = append(list, item{text: labelled(label, text)})
		}
	}
	add("What is done", t.Text)
	add("Who", t.Who)
	add("Hold point", t.Hold)
	list = append(list, nested("Look at or measure first", t.Verify)...)
	list = append(list, nested("Needs", t.Needs)...)
	add("For it", t.For)
	add("Against it", t.Against)
	add("Afterwards", t.Uncovered)
	if len(step.Reveals) > 0 {
		list = append(list, item{text: line{{text: "Lays open:", strong: true}, {text: " "}, {text: strings.Join(step.Reveals, ", "), code: true}}})
	}
	return append(list, w.cautionItem(step.Cautions)...)
}

// nested is a label with a list below it, or nothing for an empty list.
func nested(label string, texts []string) []item {
	if len(texts) == 0 {
		return nil
	}
	i := item{text: line{{text: label + ":", strong: true}}}
	for _, t := range texts {
		i.items = append(i.items, item{text: plain(t)})
	}
	return []item{i}
}

func (w *writer) unknown() {
	w.chapter("unknown")
	var list []item
	for _, p := range []pack.Policy{pack.Presume, pack.Hold, pack.Verify, pack.Note} {
		list = append(list, item{text: labelled(string(p), w.text.Policy[string(p)])})
	}
	w.list(list)
	w.paragraphs(w.text.Text["lists"])
}

func (w *writer) order() {
	w.chapter("order")
	w.paragraphs(w.text.Text["order_topics"])
	var list []item
	for _, t := range w.topics() {
		list = append(list, item{text: line{{text: t.title, link: "topic-" + t.id}}})
	}
	w.list(list)
}

func (w *writer) risk() {
	w.chapter("risk")
	for _, words := range []struct {
		what  string
		order []string
		means map[string]string
	}{
		{"Likelihood", []string{"likely", "possible", "unlikely"}, w.text.Likelihood},
		{"Consequence", []string{"severe", "serious", "slight"}, w.text.Consequence},
	} {
		i := item{text: line{{text: words.what + ":", strong: true}}}
		for _, word := range words.order {
			i.items = append(i.items, item{text: labelled(word, words.means[word])})
		}
		w.list([]item{i})
	}
}

// A topic is the rules of one file.
type topic struct {
	id, title string
	rules     []*entry
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
				t = &topic{id: id, title: cmp.Or(w.text.Topic[id], id)}
				byID[id], list = t, append(list, t)
			}
			seen[r.ID] = &entry{Rule: r, engine: e, regions: []string{e.Figures.Region}}
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
