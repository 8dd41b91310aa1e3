package book

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"underfoot/assess"
	"underfoot/assess/figure"
	"underfoot/assess/quantity"
	"underfoot/assess/question"
)

// facts lists what conditions may name.
func (w *writer) facts() {
	w.chapter("facts")
	c := w.main.Catalogue
	for _, group := range c.Groups() {
		t := table{heads: []string{"Name", "In words", "What is asked", "What it may be"}}
		for i := range c.Questions {
			if q := &c.Questions[i]; q.Group == group {
				t.rows = append(t.rows, []line{{{text: q.Decl.ID, code: true}}, plain(q.Text.Label), plain(q.Text.Ask), plain(w.values(q))})
			}
		}
		w.heading(3, "group-"+group, c.GroupTitle(group))
		w.grid(t)
	}
	w.tallies()
	w.computed()
}

// values are what a question's answer may be.
func (w *writer) values(q *question.Question) string {
	d := q.Decl
	switch d.Kind {
	case assess.KindQuantity:
		return quantity.Write(d.Dimension, d.Bounds, w.main.System)
	case assess.KindText:
		return "a text"
	}
	words := make([]string, len(d.Choices))
	for i, choice := range d.Choices {
		words[i] = w.main.Catalogue.Word(q.ID, choice)
	}
	return strings.Join(words, "; ")
}

var folds = map[question.Fold]string{
	question.Any: "yes if any counts", question.All: "yes if all count", question.Count: "how many count", question.Sum: "the sum",
	question.Most: "the largest", question.Least: "the smallest", question.First: "that of the topmost one",
}

func (w *writer) tallies() {
	w.heading(3, "tallies", w.text.Text["tallies"])
	c := w.main.Catalogue
	for i := range c.Tallies {
		t := &c.Tallies[i]
		id := c.Schema().Decl(t.ID).ID
		text := fmt.Sprintf(" over each %s, %s", t.Over, folds[t.Fold])
		if t.When == nil {
			text += " of: " + w.name(w.main, t.Of)
		}
		w.list([]item{{text: line{{text: w.name(w.main, t.ID), strong: true}, {text: " ("}, {text: id, code: true}, {text: "):" + text}}}})
		e := &entry{engine: w.main}
		w.condition(e, "Counts where", t.When)
		w.condition(e, "Takes part where", t.Where)
	}
}

func (w *writer) computed() {
	w.heading(3, "computed", w.text.Text["computed"])
	t := table{heads: []string{"Name", "In words"}}
	c := w.main.Catalogue
	tallied := map[assess.FactID]bool{}
	for i := range c.Tallies {
		tallied[c.Tallies[i].ID] = true
	}
	for i, d := range c.Schema().All() {
		f := assess.FactID(i)
		if d.Nature == assess.Derived && !tallied[f] {
			t.rows = append(t.rows, []line{{{text: d.ID, code: true}}, plain(w.name(w.main, f))})
		}
	}
	w.grid(t)
}

// figures lists every figure with the values of the regions, and the other
// side where sources differ.
func (w *writer) figures() {
	w.chapter("figures")
	for _, id := range w.main.Figures.IDs() {
		f, _ := w.main.Figures.Figure(id)
		w.heading(3, "figure-"+id, f.What().String())
		t := table{heads: []string{"Region", "Value", "Source", "How known", "Note", "Sources differ"}}
		for _, f := range w.byRegion(id) {
			t.rows = append(t.rows, []line{plain(f.Region), plain(quantity.Write(f.Dimension, quantity.Point(f.Value), w.main.System)),
				plain(Cited(f.Source)), plain(Known(f.Source)), plain(f.Note().String()), plain(f.Differs().String())})
		}
		w.list([]item{{text: line{{text: id, code: true}, {text: stricter(f)}}}})
		w.grid(t)
	}
}

func stricter(f figure.Figure) string {
	if f.Stricter == figure.Neither {
		return "; a plain property"
	}
	return "; stricter is " + f.Stricter.String()
}

// byRegion are the different values of a figure, in the order of the engines.
func (w *writer) byRegion(id string) []figure.Figure {
	var list []figure.Figure
	seen := map[string]bool{}
	for _, e := range w.engines {
		if f, ok := e.Figures.Figure(id); ok && !seen[f.Region] {
			seen[f.Region] = true
			list = append(list, f)
		}
	}
	return list
}

// Cited is a title with its edition and section.
func Cited(s figure.Source) string {
	if s.Edition == "" {
		return s.Title
	}
	return s.Title + " (" + s.Edition + ")"
}

// read is how most sources are known.
const read = "read"

// Known says how something is known, in a reader's words.
func Known(s figure.Source) string {
	switch s.Known {
	case "lookup":
		return read
	case "memory":
		return "from memory"
	}
	return strings.ReplaceAll(s.Known, "-", " ")
}

func (w *writer) cautions() {
	w.chapter("cautions")
	for _, id := range slices.Sorted(maps.Keys(w.main.Pack.Cautions)) {
		c := w.main.Pack.Cautions[id]
		w.heading(3, "caution-"+id, strings.ReplaceAll(id, "-", " "))
		w.paragraph(plain(c.Text))
		var ids []string
		for _, s := range c.Sources {
			ids = append(ids, s.ID)
		}
		if len(ids) > 0 {
			w.paragraph(linked("Sources", "source-", ids))
		}
	}
}

// citations are listed whole, with those of local packs: what no rule leans on
// yet is knowledge too.
func (w *writer) citations() {
	w.chapter("citations")
	all := map[string]figure.Citation{}
	for _, id := range figure.CitationIDs() {
		all[id], _ = figure.Cite(id)
	}
	for _, e := range w.engines {
		for _, r := range e.Pack.Rules {
			for _, c := range r.Cited {
				all[c.ID] = c
			}
		}
	}
	for _, id := range slices.Sorted(maps.Keys(all)) {
		c := all[id]
		w.heading(3, "source-"+id, id)
		w.paragraph(line{{text: Cited(c.Source)}, {text: " (" + Known(c.Source) + "): " + c.States.String()}})
	}
}
