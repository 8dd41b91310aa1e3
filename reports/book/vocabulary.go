package book

import (
	"slices"
	"strings"

	"underfoot/assess/condition"
	"underfoot/reports"
)

// names are the parts on what conditions have names for: sets of words, and
// pieces of conditions.
func (w *writer) names() []reports.Part {
	users := w.users()
	v := w.main.Pack.Words
	return []reports.Part{
		{ID: "sets", Heading: w.say("book/part.sets"), Table: w.setTable(users).Of(w.language, v.Sets())},
		{ID: "conditions", Heading: w.say("book/part.conditions"), Table: w.partTable(users).Of(w.language, v.Parts())},
	}
}

func (w *writer) setTable(users []user) reports.TableOf[*condition.Set] {
	return reports.TableOf[*condition.Set]{ID: "sets", Shape: reports.Grid, Columns: []reports.ColumnOf[*condition.Set]{
		reports.CellColumn("book/column.name", reports.Title, 24, func(s *condition.Set) reports.Cell {
			return reports.Cell{Text: s.ID, ID: "set-" + s.ID, Code: true}
		}),
		codeColumn("book/column.of", 20, func(s *condition.Set) string { return s.Of }),
		reports.TextColumn("book/column.kind", reports.Detail, 16, func(s *condition.Set) string {
			if s.Family {
				return w.say("book/set.family")
			}
			return w.say("book/set.set")
		}),
		linkColumn("book/column.made_of", func(s *condition.Set) []reports.Link { return linked("set-", s.Sets) }),
		reports.TextColumn("book/column.members", reports.Detail, 70, w.members),
		linkColumn("book/column.used_by", func(s *condition.Set) []reports.Link { return usedBy(users, s.ID) }),
	}}
}

// members are the words of a set as a reader knows them.
func (w *writer) members(s *condition.Set) string {
	f, ok := w.main.Catalogue.Schema().Lookup(s.Of)
	if !ok {
		return strings.Join(s.Words, "; ")
	}
	words := make([]string, len(s.Words))
	for i, word := range s.Words {
		words[i] = w.main.Catalogue.Word(f, word)
	}
	return strings.Join(words, "; ")
}

func (w *writer) partTable(users []user) reports.TableOf[*condition.Part] {
	return reports.TableOf[*condition.Part]{ID: "conditions", Columns: []reports.ColumnOf[*condition.Part]{
		reports.CellColumn("book/column.name", reports.Title, 24, func(p *condition.Part) reports.Cell {
			return reports.Cell{Text: p.ID, ID: "condition-" + p.ID, Code: true}
		}),
		reports.TextColumn("book/column.stands_for", reports.Detail, 50, func(p *condition.Part) string { return described(w.main, p.Condition) }),
		writtenColumn("book/column.written", func(p *condition.Part) string { return p.Source }),
		linkColumn("book/column.used_by", func(p *condition.Part) []reports.Link { return usedBy(users, p.ID) }),
	}}
}

// A user is something that has conditions, and the names that they use.
type user struct {
	reports.Link
	names []string
}

// users are all named conditions, tallies and rules.
func (w *writer) users() []user {
	var list []user
	for _, p := range w.main.Pack.Words.Parts() {
		list = append(list, user{reports.Link{Text: p.ID, To: "condition-" + p.ID}, namesIn(p.Source)})
	}
	c := w.main.Catalogue
	for i := range c.Tallies {
		t := &c.Tallies[i]
		id := c.Schema().Decl(t.ID).ID
		list = append(list, user{reports.Link{Text: id, To: "fact-" + id}, namesIn(text(t.When), text(t.Where))})
	}
	for _, t := range w.topics() {
		for _, e := range t.rules {
			written := []string{text(e.Applies), text(e.When), text(e.TakesUp)}
			for _, p := range e.UnknownWhen {
				written = append(written, text(p.When))
			}
			list = append(list, user{reports.Link{Text: e.ID, To: "rule-" + e.ID}, namesIn(written...)})
		}
	}
	return list
}

func usedBy(users []user, name string) []reports.Link {
	var links []reports.Link
	for _, u := range users {
		if slices.Contains(u.names, name) {
			links = append(links, u.Link)
		}
	}
	return links
}

// namesIn are the names that stand in conditions as they are written.
func namesIn(written ...string) []string {
	var names []string
	for _, src := range written {
		names = append(names, condition.Mentions(src)...)
	}
	return names
}
