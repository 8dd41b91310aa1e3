package reports

import (
	"strconv"
	"strings"
)

// sources are the numbered sources that the sections before it cited, and the
// rule packs that took part.
func (b *builder) sources() Section {
	s := b.section(SourcesSection)
	s.Detail = true
	t := &Table{ID: "sources", Shape: Grid, Columns: []Column{
		b.numbers("number", 6), b.column("title", Title, 50), b.column("edition", Detail, 40), b.column("known", Detail, 28),
	}}
	for i, src := range b.list {
		n := float64(i + 1)
		known, tone := b.say("report/known.unsaid"), Waiting
		if src.Known != "" {
			known = b.or("report/known."+src.Known, src.Known)
		}
		if src.Known == "lookup" || src.Known == "computed" {
			tone = Plain
		}
		row := Row{Tone: tone, Cells: cells("", src.Title, src.Edition, known)}
		row.Cells[0] = Cell{Text: strconv.Itoa(i + 1), Number: &n}
		t.Rows = append(t.Rows, row)
	}
	s.addTable("", t)
	s.addTable(b.say("report/sources.packs"), b.packs())
	if len(t.Rows) > 0 {
		s.Lead = []Para{{Text: b.say("report/sources.lead")}}
	}
	return s
}

// packs names the rule packs, and everything that a local one relaxes.
func (b *builder) packs() *Table {
	t := &Table{ID: "packs", Shape: Grid, Columns: []Column{
		b.column("pack", Title, 28), b.column("edition", Detail, 28), b.column("where", Detail, 26), b.column("relaxes", Detail, 50),
	}}
	for _, p := range b.r.Packs {
		key := "shipped"
		if p.Local {
			key = "local"
		}
		t.add(Plain, p.ID, p.Edition, b.say("report/sources."+key), strings.Join(p.Relaxed(b.r.Language), "\n"))
	}
	return t
}
