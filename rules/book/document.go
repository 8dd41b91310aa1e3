package book

import (
	"fmt"
	"strings"
)

// A document is a text without a format yet: blocks in reading order.
type document struct {
	blocks []block
}

// A block is one heading, paragraph, list, condition or table.
type block struct {
	kind  kind
	level int    // of a heading: 1 for the title
	id    string // of a heading: what links point to
	text  line   // of a heading, a paragraph or a code block
	items []item
	table table
}

type kind uint8

const (
	heading kind = iota
	paragraph
	list
	code
	grid
)

// An item is one line of a list with those that are set in below it.
type item struct {
	text  line
	items []item
}

// A table is rows under headings; the first cell names its row.
type table struct {
	heads []string
	rows  [][]line
}

// A line is a run of spans.
type line []span

// A span is a few words: plain, strong, as code, or as a link inside the document.
type span struct {
	text   string
	strong bool
	code   bool
	link   string
}

func plain(text string) line { return line{{text: text}} }

// labelled is a strong label with its text behind it.
func labelled(label, text string) line {
	return line{{text: label + ":", strong: true}, {text: " " + text}}
}

func (d *document) add(b block) { d.blocks = append(d.blocks, b) }

func (d *document) heading(level int, id, text string) {
	d.add(block{kind: heading, level: level, id: id, text: plain(text)})
}

func (d *document) paragraph(text line) { d.add(block{kind: paragraph, text: text}) }

// paragraphs adds a text paragraph by paragraph.
func (d *document) paragraphs(text string) {
	for p := range strings.SplitSeq(strings.TrimSpace(text), "\n\n") {
		d.paragraph(plain(strings.Join(strings.Fields(p), " ")))
	}
}

func (d *document) list(items []item) {
	if len(items) > 0 {
		d.add(block{kind: list, items: items})
	}
}

func (d *document) code(text string) { d.add(block{kind: code, text: plain(text)}) }

func (d *document) grid(t table) { d.add(block{kind: grid, table: t}) }

// links are the ids that spans point to and no heading has: a fault of the book.
func (d *document) links() (broken []string) {
	ids := map[string]bool{}
	for _, b := range d.blocks {
		ids[b.id] = true
	}
	check := func(l line) {
		for _, s := range l {
			if s.link != "" && !ids[s.link] {
				broken = append(broken, fmt.Sprintf("%s (%s)", s.link, s.text))
			}
		}
	}
	for _, b := range d.blocks {
		b.lines(check)
	}
	return broken
}

// lines visits every line of a block.
func (b *block) lines(visit func(line)) {
	visit(b.text)
	var items func([]item)
	items = func(list []item) {
		for _, i := range list {
			visit(i.text)
			items(i.items)
		}
	}
	items(b.items)
	for _, row := range b.table.rows {
		for _, cell := range row {
			visit(cell)
		}
	}
}
