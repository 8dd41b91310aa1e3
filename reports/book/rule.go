package book

import (
	"fmt"
	"slices"
	"strings"

	"underfoot/assess/figure"
	"underfoot/assess/result"
	"underfoot/reports"
	"underfoot/rules/pack"
)

// rules tells each rule whole, topic by topic.
func (w *writer) rules() reports.Section {
	s := w.chapter("rules")
	var list []*entry
	for _, t := range w.topics() {
		list = append(list, t.rules...)
	}
	s.Parts = table(w.ruleTable().Of(w.language, list))
	return s
}

func (w *writer) ruleTable() reports.TableOf[*entry] {
	return reports.TableOf[*entry]{ID: "rules", Columns: slices.Concat(w.head(), w.conditions(), w.sentences(), w.tail())}
}

// head is what the rule is, and what it does once it holds.
func (w *writer) head() []reports.ColumnOf[*entry] {
	return []reports.ColumnOf[*entry]{
		reports.CellColumn("book/column.topic", reports.Group, 18, func(e *entry) reports.Cell {
			return reports.Cell{Text: e.topic.title, ID: "topic-" + e.topic.id}
		}),
		reports.CellColumn("book/column.rule", reports.Title, 34, func(e *entry) reports.Cell {
			return reports.Cell{Text: e.Text.Title, ID: "rule-" + e.ID}
		}),
		codeColumn("book/column.id", 22, func(e *entry) string { return e.ID }),
		reports.TextColumn("book/column.rank", reports.Detail, 10, w.rank),
		reports.TextColumn("book/column.scope", reports.Detail, 10, func(e *entry) string { return w.say("book/rule.each", "thing", e.Scope) }),
		reports.TextColumn("book/column.protects", reports.Detail, 20, func(e *entry) string { return w.say("book/protects." + string(e.Protects)) }),
		w.wayColumn("book/column.calls", func(e *entry) []result.PathID { return []result.PathID{e.Calls} }),
		w.wayColumn("book/column.permits", func(e *entry) []result.PathID { return e.Permits }),
		w.wayColumn("book/column.bars", func(e *entry) []result.PathID { return e.Bars }),
		w.wayColumn("book/column.others", func(e *entry) []result.PathID { return e.Alternatives }),
		w.wayColumn("book/column.warns", func(e *entry) []result.PathID { return e.AtSteps }),
		reports.TextColumn("book/column.does", reports.Detail, 20, w.does),
		reports.TextColumn("book/column.from", reports.Detail, 14, w.from),
		reports.TextColumn("book/column.only", reports.Detail, 10, w.only),
	}
}

func (w *writer) wayColumn(key string, paths func(*entry) []result.PathID) reports.ColumnOf[*entry] {
	return reports.CellColumn(key, reports.Detail, 24, func(e *entry) reports.Cell { return reports.LinkCell(w.ways(paths(e)...)) })
}

func (w *writer) rank(e *entry) string {
	if e.Rank == 0 {
		return w.say("book/rule.no_rank")
	}
	return fmt.Sprintf("%g", e.Rank)
}

// does is what no list of ways says.
func (w *writer) does(e *entry) string {
	switch {
	case e.BarsThis:
		return w.say("book/rule.bars_this")
	case e.Calls == result.NoPath && len(e.Permits)+len(e.Bars)+len(e.Alternatives)+len(e.AtSteps) == 0:
		return w.say("book/rule.adds")
	}
	return ""
}

func (w *writer) from(e *entry) string {
	if e.Local {
		return w.say("book/rule.local")
	}
	return ""
}

// only are the regions of a rule that does not hold in all of them.
func (w *writer) only(e *entry) string {
	if len(e.regions) == len(w.engines) {
		return ""
	}
	return strings.Join(e.regions, ", ")
}

// sentences are what the rule says of a floor.
func (w *writer) sentences() []reports.ColumnOf[*entry] {
	sentence := func(key string, say func(pack.Text) string) reports.ColumnOf[*entry] {
		return reports.TextColumn(key, reports.Detail, 40, func(e *entry) string { return Filled(e.engine, say(e.Text)) })
	}
	return []reports.ColumnOf[*entry]{
		sentence("book/column.fails", func(t pack.Text) string { return t.Fails }),
		sentence("book/column.presumed", func(t pack.Text) string { return t.Presumed }),
		sentence("book/column.open", func(t pack.Text) string { return t.Open }),
		sentence("book/column.holds", func(t pack.Text) string { return t.Holds }),
		sentence("book/column.why", func(t pack.Text) string { return t.Why }),
		sentence("book/column.remedy", func(t pack.Text) string { return t.Remedy }),
	}
}

// tail is what the rule rests on.
func (w *writer) tail() []reports.ColumnOf[*entry] {
	return []reports.ColumnOf[*entry]{
		reports.TextColumn("book/column.risk", reports.Aside, 40, w.riskOf),
		linkColumn("book/column.figures", func(e *entry) []reports.Link { return linked("figure-", FiguresOf(e.Rule)) }),
		linkColumn("book/column.cautions", func(e *entry) []reports.Link { return linked("caution-", e.Cautions) }),
		linkColumn("book/column.sources", func(e *entry) []reports.Link { return w.sources(e.Cited) }),
		reports.TextColumn("book/column.cases", reports.Aside, 60, cases),
	}
}

func linkColumn[T any](key string, links func(T) []reports.Link) reports.ColumnOf[T] {
	return reports.CellColumn(key, reports.Aside, 24, func(thing T) reports.Cell { return reports.LinkCell(links(thing)) })
}

func (w *writer) riskOf(e *entry) string {
	if e.Text.Mode == "" {
		return ""
	}
	return w.say("book/rule.risk", "mode", e.Text.Mode, "likelihood", e.Risk.Likelihood, "consequence", e.Risk.Consequence,
		"likelihood_after", e.Risk.LikelihoodAfter, "consequence_after", e.Risk.ConsequenceAfter)
}

// sources say how they are known where they were not read.
func (w *writer) sources(list []figure.Citation) []reports.Link {
	var links []reports.Link
	for _, c := range list {
		link := reports.Link{Text: c.ID, To: "source-" + c.ID}
		if c.Source.Known != "lookup" {
			link.Note = Known(w.language, c.Source)
		}
		links = append(links, link)
	}
	return links
}

func cases(e *entry) string {
	var list []string
	for _, c := range e.Cases {
		list = append(list, c.Expect+": "+c.Name)
	}
	return strings.Join(list, "\n")
}
