package book

import (
	"maps"
	"slices"
	"strings"

	"underfoot/assess/figure"
	"underfoot/assess/message"
	"underfoot/assess/quantity"
	"underfoot/assess/result"
	"underfoot/reports"
)

// figures lists every figure with the values of the regions, and the other side
// where sources differ.
func (w *writer) figures() reports.Section {
	s := w.chapter("figures", w.say("book/lead.figures"))
	var list []figure.Figure
	for _, id := range w.main.Figures.IDs() {
		list = append(list, w.byRegion(id)...)
	}
	s.Parts = table(w.figureTable().Of(w.language, list))
	return s
}

func (w *writer) figureTable() reports.TableOf[figure.Figure] {
	return reports.TableOf[figure.Figure]{ID: "figures", Shape: reports.Grid, Columns: []reports.ColumnOf[figure.Figure]{
		reports.CellColumn("book/column.figure", reports.Group, 40, func(f figure.Figure) reports.Cell {
			return reports.Cell{Text: w.language.Say(f.What()) + " (" + f.ID + ")", ID: "figure-" + f.ID}
		}),
		reports.TextColumn("book/column.region", reports.Title, 10, func(f figure.Figure) string { return f.Region }),
		reports.TextColumn("book/column.value", reports.Detail, 16, func(f figure.Figure) string {
			return quantity.Write(f.Dimension, quantity.Point(f.Value), w.main.System)
		}),
		reports.TextColumn("book/column.stricter", reports.Detail, 10, func(f figure.Figure) string { return w.say("book/stricter." + f.Stricter.String()) }),
		reports.TextColumn("book/column.source", reports.Detail, 40, func(f figure.Figure) string { return Cited(f.Source) }),
		reports.TextColumn("book/column.known", reports.Detail, 16, func(f figure.Figure) string { return Known(w.language, f.Source) }),
		reports.TextColumn("book/column.note", reports.Detail, 40, func(f figure.Figure) string { return w.language.Say(f.Note()) }),
		reports.TextColumn("book/column.differs", reports.Detail, 40, func(f figure.Figure) string { return w.language.Say(f.Differs()) }),
	}}
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

// Known says how something is known, in a reader's words.
func Known(l *message.Language, s figure.Source) string {
	return l.Or("book/known."+s.Known, strings.ReplaceAll(s.Known, "-", " "))
}

func (w *writer) cautions() reports.Section {
	s := w.chapter("cautions")
	all := w.main.Pack.Cautions
	s.Parts = table(cautionTable(all).Of(w.language, slices.Sorted(maps.Keys(all))))
	return s
}

func cautionTable(all map[string]result.Caution) reports.TableOf[string] {
	return reports.TableOf[string]{ID: "cautions", Shape: reports.Grid, Columns: []reports.ColumnOf[string]{
		reports.CellColumn("book/column.caution", reports.Title, 24, func(id string) reports.Cell {
			return reports.Cell{Text: strings.ReplaceAll(id, "-", " "), ID: "caution-" + id}
		}),
		reports.TextColumn("book/column.text", reports.Detail, 90, func(id string) string { return all[id].Text }),
		linkColumn("book/column.sources", func(id string) []reports.Link {
			var ids []string
			for _, s := range all[id].Sources {
				ids = append(ids, s.ID)
			}
			return linked("source-", ids)
		}),
	}}
}

// citations are listed whole, with those of local packs: what no rule leans on
// yet is knowledge too.
func (w *writer) citations() reports.Section {
	s := w.chapter("citations")
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
	var list []figure.Citation
	for _, id := range slices.Sorted(maps.Keys(all)) {
		list = append(list, all[id])
	}
	s.Parts = table(w.citationTable().Of(w.language, list))
	return s
}

func (w *writer) citationTable() reports.TableOf[figure.Citation] {
	return reports.TableOf[figure.Citation]{ID: "citations", Shape: reports.Grid, Columns: []reports.ColumnOf[figure.Citation]{
		reports.CellColumn("book/column.id", reports.Title, 10, func(c figure.Citation) reports.Cell {
			return reports.Cell{Text: c.ID, ID: "source-" + c.ID}
		}),
		reports.TextColumn("book/column.states", reports.Detail, 70, func(c figure.Citation) string { return w.language.Say(c.States) }),
		reports.TextColumn("book/column.source", reports.Detail, 50, func(c figure.Citation) string { return Cited(c.Source) }),
		reports.TextColumn("book/column.known", reports.Detail, 16, func(c figure.Citation) string { return Known(w.language, c.Source) }),
	}}
}
