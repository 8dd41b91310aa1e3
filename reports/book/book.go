// Package book makes a view of the whole decision logic, for a person to read:
// generated from the records, so that it says what the program does. It is the
// one report that is about rules and not about a floor.
package book

import (
	"cmp"
	"strings"

	"underfoot/assess/message"
	"underfoot/assess/result"
	"underfoot/assess/schema"
	"underfoot/reports"
	"underfoot/rules"
	"underfoot/rules/judge"
)

// New is the book of the engines, one for each region, in the language of the
// first. The first is also the one in whose figures and units conditions are put
// in words, and by which the matrix of old floors is judged. There must be at
// least one. The error is of the floors that the matrix judges.
func New(engines []*rules.Engine) (*reports.View, error) {
	main := engines[0]
	w := &writer{engines: engines, main: main, language: cmp.Or(main.Language, message.English())}
	matrix, err := w.matrix()
	if err != nil {
		return nil, err
	}
	v := &reports.View{Title: w.say("book/title"), Language: w.language, Lead: w.preface(), Sections: []reports.Section{
		w.verdicts(), w.paths(), w.unknown(), w.order(), w.risk(), w.rules(), matrix, w.facts(), w.figures(), w.cautions(), w.citations(),
	}}
	v.Clean()
	return v, nil
}

// A writer writes the chapters.
type writer struct {
	engines  []*rules.Engine
	main     *rules.Engine
	language *message.Language
}

func (w *writer) say(key string, pairs ...any) string { return w.language.Text(key, pairs...) }

// chapter is an empty chapter that begins with paragraphs.
func (w *writer) chapter(id string, paragraphs ...string) reports.Section {
	s := reports.Section{ID: id, Heading: w.say("book/heading." + id), Sheet: w.say("book/sheet." + id)}
	for _, text := range paragraphs {
		s.Lead = append(s.Lead, reports.Para{Text: text})
	}
	return s
}

// preface says what the book is, and names the packs that the program does not
// ship, with what they relax.
func (w *writer) preface() []reports.Para {
	list := []reports.Para{{Text: w.say("book/preface.holds")}, {Text: w.say("book/preface.years")},
		{Text: w.say("book/preface.screening")}, {Text: w.say("book/preface.marks")}}
	for _, p := range w.main.Pack.Locals {
		list = append(list, reports.Para{Text: w.say("book/preface.local_pack", "pack", p.ID, "edition", p.Edition)})
		if relaxed := p.Relaxed(w.language); len(relaxed) > 0 {
			list = append(list, reports.Para{Label: w.say("book/preface.relaxes"), Text: strings.Join(relaxed, "\n")})
		}
	}
	return list
}

// table is a part of one table.
func table(t *reports.Table) []reports.Part { return []reports.Part{{Table: t}} }

// linked are ids as links to where each stands.
func linked(prefix string, ids []string) []reports.Link {
	var list []reports.Link
	for _, id := range ids {
		list = append(list, reports.Link{Text: id, To: prefix + id})
	}
	return list
}

// ways are steps and bases as links to what is said of each.
func (w *writer) ways(paths ...result.PathID) []reports.Link {
	var list []reports.Link
	for _, p := range paths {
		if p != result.NoPath {
			list = append(list, reports.Link{Text: w.main.Pack.Steps[p].Text.Label, To: "path-" + p.String()})
		}
	}
	return list
}

// name is what a reader calls a fact.
func (w *writer) name(f schema.FactID) string {
	return judge.Name(w.main.Catalogue, w.main.Language, f)
}
