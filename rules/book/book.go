// Package book writes the whole decision logic as one document that a person
// can read: generated from the records, so that it says what the program does.
package book

import (
	"io"

	"underfoot/rules"
)

// A Book is the logic of one or several regions.
type Book struct {
	doc document
}

// New is the book of the engines, one for each region. The first is the one in
// whose figures and units conditions are put in words, and by which the matrix
// of old floors is judged. There must be at least one.
func New(engines []*rules.Engine) (*Book, error) {
	w := &writer{engines: engines, main: engines[0], text: say()}
	for _, chapter := range []func(){w.preface, w.verdicts, w.paths, w.unknown, w.order, w.risk, w.rules} {
		chapter()
	}
	if err := w.matrix(); err != nil {
		return nil, err
	}
	for _, chapter := range []func(){w.facts, w.figures, w.cautions, w.citations} {
		chapter()
	}
	return &Book{w.document}, nil
}

// Markdown writes the book as Markdown. The error is that of the writer.
func (b *Book) Markdown(w io.Writer) error { return b.doc.markdown(w) }

// HTML writes the book as one page that needs nothing else.
func (b *Book) HTML(w io.Writer) error { return b.doc.html(w) }

// A writer fills the document chapter by chapter.
type writer struct {
	document
	engines []*rules.Engine
	main    *rules.Engine
	text    *texts
}

// chapters are the ids of the chapters in reading order.
var chapters = []string{"verdicts", "paths", "unknown", "order", "risk", "rules", "matrix", "facts", "figures", "cautions", "citations"}

func (w *writer) preface() {
	w.heading(1, "", w.text.Title)
	w.paragraphs(w.text.Preface)
	w.packs()
	var contents []item
	for _, id := range chapters {
		contents = append(contents, item{text: line{{text: w.text.Chapter[id], link: id}}})
	}
	w.list(contents)
}

// packs names the packs that the program does not ship, with what they relax.
func (w *writer) packs() {
	for _, p := range w.main.Pack.Locals {
		w.paragraph(labelled("Local pack", p.ID+", edition "+p.Edition))
		w.list(nested("It relaxes", p.Relaxed(w.main.Language)))
	}
}

// chapter opens a chapter with its own sentences.
func (w *writer) chapter(id string) {
	w.heading(2, id, w.text.Chapter[id])
	w.paragraphs(w.text.Text[id])
}
