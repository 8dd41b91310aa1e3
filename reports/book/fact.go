package book

import (
	"slices"
	"strings"

	"underfoot/assess/condition"
	"underfoot/assess/quantity"
	"underfoot/assess/question"
	"underfoot/assess/schema"
	"underfoot/reports"
)

// facts lists what conditions may name: answers, tallies, what is computed, and
// the names of the rule language itself.
func (w *writer) facts() reports.Section {
	s := w.chapter("facts", w.say("book/lead.facts"))
	c := w.main.Catalogue
	var asked []*question.Question
	for _, group := range c.Groups() {
		for i := range c.Questions {
			if q := &c.Questions[i]; q.Group == group {
				asked = append(asked, q)
			}
		}
	}
	var tallies []*question.Tally
	for i := range c.Tallies {
		tallies = append(tallies, &c.Tallies[i])
	}
	s.Parts = []reports.Part{
		{Table: w.askedTable().Of(w.language, asked)},
		{ID: "tallies", Heading: w.say("book/part.tallies"), Table: w.tallyTable().Of(w.language, tallies)},
		{ID: "computed", Heading: w.say("book/part.computed"), Table: w.computedTable().Of(w.language, w.computed())},
	}
	s.Parts = append(s.Parts, w.names()...)
	return s
}

func (w *writer) askedTable() reports.TableOf[*question.Question] {
	c := w.main.Catalogue
	return reports.TableOf[*question.Question]{ID: "asked", Shape: reports.Grid, Columns: []reports.ColumnOf[*question.Question]{
		reports.CellColumn("book/column.group", reports.Group, 18, func(q *question.Question) reports.Cell {
			return reports.Cell{Text: c.GroupTitle(q.Group), ID: "group-" + q.Group}
		}),
		reports.CellColumn("book/column.name", reports.Title, 24, func(q *question.Question) reports.Cell {
			return reports.Cell{Text: q.Decl.ID, Code: true}
		}),
		reports.TextColumn("book/column.words", reports.Detail, 26, func(q *question.Question) string { return q.Text.Label }),
		reports.TextColumn("book/column.ask", reports.Detail, 40, func(q *question.Question) string { return q.Text.Ask }),
		reports.TextColumn("book/column.values", reports.Detail, 50, w.values),
	}}
}

// values are what a question's answer may be.
func (w *writer) values(q *question.Question) string {
	d := q.Decl
	switch d.Kind {
	case schema.KindQuantity:
		return quantity.Write(d.Dimension, d.Bounds, w.main.System)
	case schema.KindText:
		return w.say("book/fact.text")
	}
	words := make([]string, len(d.Choices))
	for i, choice := range d.Choices {
		words[i] = w.main.Catalogue.Word(q.ID, choice)
	}
	return strings.Join(words, "; ")
}

func (w *writer) tallyTable() reports.TableOf[*question.Tally] {
	written := func(key string, of func(*question.Tally) *condition.Condition) reports.ColumnOf[*question.Tally] {
		return writtenColumn(key, func(t *question.Tally) string { return text(of(t)) })
	}
	words := func(key string, of func(*question.Tally) *condition.Condition) reports.ColumnOf[*question.Tally] {
		return reports.TextColumn(key, reports.Detail, 50, func(t *question.Tally) string { return described(w.main, of(t)) })
	}
	when := func(t *question.Tally) *condition.Condition { return t.When }
	where := func(t *question.Tally) *condition.Condition { return t.Where }
	return reports.TableOf[*question.Tally]{ID: "tallies", Columns: []reports.ColumnOf[*question.Tally]{
		reports.CellColumn("book/column.words", reports.Title, 30, func(t *question.Tally) reports.Cell {
			return reports.Cell{Text: w.name(t.ID), ID: "fact-" + w.main.Catalogue.Schema().Decl(t.ID).ID}
		}),
		codeColumn("book/column.name", 24, func(t *question.Tally) string { return w.main.Catalogue.Schema().Decl(t.ID).ID }),
		reports.TextColumn("book/column.over", reports.Detail, 10, func(t *question.Tally) string { return t.Over.String() }),
		reports.TextColumn("book/column.fold", reports.Detail, 16, func(t *question.Tally) string { return w.say("book/fold." + string(t.Fold)) }),
		reports.TextColumn("book/column.of", reports.Detail, 20, func(t *question.Tally) string {
			if t.When != nil {
				return ""
			}
			return w.name(t.Of)
		}),
		words("book/column.counts", when), written("book/column.counts_written", when),
		words("book/column.where", where), written("book/column.where_written", where),
	}}
}

// computed are the facts that are neither asked nor tallied.
func (w *writer) computed() []schema.FactID {
	c := w.main.Catalogue
	var list []schema.FactID
	for i, d := range c.Schema().All() {
		f := schema.FactID(i)
		tallied := slices.ContainsFunc(c.Tallies, func(t question.Tally) bool { return t.ID == f })
		if d.Nature == schema.Derived && !tallied {
			list = append(list, f)
		}
	}
	return list
}

func (w *writer) computedTable() reports.TableOf[schema.FactID] {
	return reports.TableOf[schema.FactID]{ID: "computed", Shape: reports.Grid, Columns: []reports.ColumnOf[schema.FactID]{
		reports.CellColumn("book/column.name", reports.Title, 30, func(f schema.FactID) reports.Cell {
			return reports.Cell{Text: w.main.Catalogue.Schema().Decl(f).ID, Code: true}
		}),
		reports.TextColumn("book/column.words", reports.Detail, 60, w.name),
	}}
}
