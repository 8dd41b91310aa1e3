package reports

import (
	"strconv"
	"strings"

	"underfoot/assess/result"
)

// sources are the numbered sources that the sections before it cited, and the
// rule packs that took part.
func (b *builder) sources() Section {
	s := b.section(SourcesSection)
	s.Detail = true
	var list []numbered
	for i, src := range b.list {
		list = append(list, numbered{i + 1, src})
	}
	s.addTable("", b.sourceTable().Of(b.language, list))
	s.addTable(b.say("report/sources.packs"), b.packTable().Of(b.language, b.r.Packs))
	if len(list) > 0 {
		s.Lead = []Para{{Text: b.say("report/sources.lead")}}
	}
	return s
}

// A numbered source is one that was cited, with its number.
type numbered struct {
	n int
	result.Source
}

func (b *builder) sourceTable() TableOf[numbered] {
	return TableOf[numbered]{ID: "sources", Shape: Grid, Tone: sourceTone, Columns: []ColumnOf[numbered]{
		numberColumn("report/column.number", 6, func(s numbered) Cell {
			n := float64(s.n)
			return Cell{Text: strconv.Itoa(s.n), Number: &n}
		}),
		TextColumn("report/column.title", Title, 50, func(s numbered) string { return s.Title }),
		TextColumn("report/column.edition", Detail, 40, func(s numbered) string { return s.Edition }),
		TextColumn("report/column.known", Detail, 28, func(s numbered) string {
			if s.Known == "" {
				return b.say("report/known.unsaid")
			}
			return b.or("report/known."+s.Known, s.Known)
		}),
	}}
}

// sourceTone marks what nobody has looked up.
func sourceTone(s numbered) Tone {
	if s.Known == "lookup" || s.Known == "computed" {
		return Plain
	}
	return Waiting
}

// packTable names the rule packs, and everything that a local one relaxes.
func (b *builder) packTable() TableOf[result.PackRef] {
	return TableOf[result.PackRef]{ID: "packs", Shape: Grid, Columns: []ColumnOf[result.PackRef]{
		TextColumn("report/column.pack", Title, 28, func(p result.PackRef) string { return p.ID }),
		TextColumn("report/column.edition", Detail, 28, func(p result.PackRef) string { return p.Edition }),
		TextColumn("report/column.where", Detail, 26, func(p result.PackRef) string {
			if p.Local {
				return b.say("report/sources.local")
			}
			return b.say("report/sources.shipped")
		}),
		TextColumn("report/column.relaxes", Detail, 50, func(p result.PackRef) string { return strings.Join(p.Relaxed(b.language), "\n") }),
	}}
}
