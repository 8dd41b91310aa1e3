package book

import (
	"strings"

	"underfoot/assess/result"
	"underfoot/reports"
	"underfoot/rules/pack"
)

func (w *writer) verdicts() reports.Section {
	s := w.chapter("verdicts", w.say("book/lead.verdicts"))
	for v := result.Ready; v <= result.Hold; v++ {
		s.Lead = append(s.Lead, reports.Para{Label: v.String(), Text: w.say("book/verdict." + v.String())})
	}
	return s
}

// paths tells every step and base with what its record says.
func (w *writer) paths() reports.Section {
	s := w.chapter("paths", w.say("book/lead.paths"))
	s.Parts = table(w.pathTable().Of(w.language, result.Paths()))
	return s
}

func (w *writer) pathTable() reports.TableOf[result.PathID] {
	step := func(p result.PathID) *pack.Step { return w.main.Pack.Steps[p] }
	text := func(key string, say func(pack.StepText) string) reports.ColumnOf[result.PathID] {
		return reports.TextColumn(key, reports.Detail, 34, func(p result.PathID) string { return say(step(p).Text) })
	}
	return reports.TableOf[result.PathID]{ID: "paths", Columns: []reports.ColumnOf[result.PathID]{
		reports.CellColumn("book/column.way", reports.Title, 28, func(p result.PathID) reports.Cell {
			return reports.Cell{Text: step(p).Text.Label, ID: "path-" + p.String()}
		}),
		codeColumn("book/column.id", 16, result.PathID.String),
		reports.TextColumn("book/column.kind", reports.Detail, 20, w.kind),
		text("book/column.done", func(t pack.StepText) string { return t.Text }),
		text("book/column.who", func(t pack.StepText) string { return t.Who }),
		text("book/column.hold", func(t pack.StepText) string { return t.Hold }),
		text("book/column.verify", func(t pack.StepText) string { return strings.Join(t.Verify, "\n") }),
		text("book/column.needs", func(t pack.StepText) string { return strings.Join(t.Needs, "\n") }),
		text("book/column.for", func(t pack.StepText) string { return t.For }),
		text("book/column.against", func(t pack.StepText) string { return t.Against }),
		text("book/column.afterwards", func(t pack.StepText) string { return t.Uncovered }),
		codeColumn("book/column.reveals", 34, func(p result.PathID) string { return strings.Join(step(p).Reveals, ", ") }),
		reports.CellColumn("book/column.cautions", reports.Detail, 20, func(p result.PathID) reports.Cell {
			return reports.LinkCell(linked("caution-", step(p).Cautions))
		}),
	}}
}

// codeColumn is a column of words as records have them.
func codeColumn[T any](key string, width int, text func(T) string) reports.ColumnOf[T] {
	return reports.CellColumn(key, reports.Detail, width, func(thing T) reports.Cell { return reports.Cell{Text: text(thing), Code: true} })
}

func (w *writer) kind(p result.PathID) string {
	if p.IsAssembly() {
		return w.say("book/path.base")
	}
	return w.say("book/path.step", "verdict", p.MinVerdict())
}

func (w *writer) unknown() reports.Section {
	s := w.chapter("unknown", w.say("book/lead.unknown"))
	for _, p := range []result.Policy{result.PolicyPresume, result.PolicyHold, result.PolicyVerify, result.PolicyNote} {
		s.Lead = append(s.Lead, reports.Para{Label: string(p), Text: w.say("book/policy." + string(p))})
	}
	s.Lead = append(s.Lead, reports.Para{Text: w.say("book/lead.lists")})
	return s
}

func (w *writer) order() reports.Section {
	s := w.chapter("order", w.say("book/lead.order"))
	var links []reports.Link
	for _, t := range w.topics() {
		links = append(links, reports.Link{Text: t.title, To: "topic-" + t.id})
	}
	s.Lead = append(s.Lead, reports.LinkPara(w.say("book/lead.order_topics"), links))
	return s
}

// risk explains the words for likelihood and consequence, the gravest first.
func (w *writer) risk() reports.Section {
	s := w.chapter("risk", w.say("book/lead.risk"))
	likelihood := reports.Part{Heading: w.say("book/part.likelihood")}
	for _, word := range []string{"likely", "possible", "unlikely"} {
		likelihood.Lead = append(likelihood.Lead, reports.Para{Label: word, Text: w.say("book/likelihood." + word)})
	}
	consequence := reports.Part{Heading: w.say("book/part.consequence")}
	for _, word := range []string{"severe", "serious", "slight"} {
		consequence.Lead = append(consequence.Lead, reports.Para{Label: word, Text: w.say("book/consequence." + word)})
	}
	s.Parts = []reports.Part{likelihood, consequence}
	return s
}
