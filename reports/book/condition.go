package book

import (
	"regexp"
	"slices"
	"strings"

	"underfoot/assess/condition"
	"underfoot/assess/message"
	"underfoot/assess/quantity"
	"underfoot/reports"
	"underfoot/rules"
	"underfoot/rules/judge"
	"underfoot/rules/pack"
)

// conditions are those of a rule, each in words and as it is written.
func (w *writer) conditions() []reports.ColumnOf[*entry] {
	return slices.Concat(
		conditionColumns("book/column.applies", "book/column.applies_written", func(e *entry) *condition.Condition { return e.Applies }),
		conditionColumns("book/column.when", "book/column.when_written", func(e *entry) *condition.Condition { return e.When }),
		conditionColumns("book/column.takes_up", "book/column.takes_up_written", func(e *entry) *condition.Condition { return e.TakesUp }),
		[]reports.ColumnOf[*entry]{
			reports.TextColumn("book/column.unknown", reports.Detail, 40, w.whileOpen),
			writtenColumn("book/column.unknown_written", policiesWritten),
		})
}

// conditionColumns are a condition of a rule in words, and as it is written.
func conditionColumns(words, written string, of func(*entry) *condition.Condition) []reports.ColumnOf[*entry] {
	return []reports.ColumnOf[*entry]{
		reports.TextColumn(words, reports.Detail, 50, func(e *entry) string { return described(e.engine, of(e)) }),
		writtenColumn(written, func(e *entry) string { return text(of(e)) }),
	}
}

// writtenColumn is a column of conditions as they are written, which paper has
// no room for.
func writtenColumn[T any](key string, written func(T) string) reports.ColumnOf[T] {
	return reports.CellColumn(key, reports.Aside, 60, func(thing T) reports.Cell { return reports.Cell{Text: written(thing), Code: true} })
}

// described is a condition in words: a line for each comparison, those that belong
// together set in below what joins them; empty where there is no condition.
func described(e *rules.Engine, c *condition.Condition) string {
	if c == nil {
		return ""
	}
	return strings.Join(outline(e.Language, c.Describe(judge.Show(e.Catalogue, e.Language, e.System)), ""), "\n")
}

func outline(l *message.Language, x condition.Explanation, indent string) []string {
	if x.Joint == condition.Leaf {
		return []string{indent + l.Say(x.Text)}
	}
	lines := []string{indent + l.Say(x.Joint.Message()) + ":"}
	for _, p := range x.Parts {
		lines = append(lines, outline(l, p, indent+"  ")...)
	}
	return lines
}

// text is a condition as it is written; empty where there is none.
func text(c *condition.Condition) string {
	if c == nil {
		return ""
	}
	return c.Source()
}

// whileOpen is what the rule does while its outcome is open: by conditions, and
// otherwise.
func (w *writer) whileOpen(e *entry) string {
	var lines []string
	for _, c := range e.UnknownWhen {
		lines = append(lines, w.say("book/rule.where", "policy", string(c.Then)))
		lines = append(lines, outline(w.language, c.When.Describe(judge.Show(e.engine.Catalogue, e.engine.Language, e.engine.System)), "  ")...)
	}
	policy := []any{"policy", string(e.Unknown), "means", w.say("book/policy." + string(e.Unknown))}
	if len(lines) > 0 {
		return strings.Join(append(lines, w.say("book/rule.otherwise", policy...)), "\n")
	}
	return w.say("book/rule.policy", policy...)
}

func policiesWritten(e *entry) string {
	var lines []string
	for _, c := range e.UnknownWhen {
		lines = append(lines, string(c.Then)+": "+text(c.When))
	}
	return strings.Join(lines, "\n")
}

// holes are where a sentence takes a fact or a figure.
var holes = regexp.MustCompile(`{[^{}]*}`)

// Filled is a sentence of a rule as a reader of rules sees it: with the figures
// of the engine's region, and the names of facts in square brackets.
func Filled(e *rules.Engine, sentence string) string {
	return holes.ReplaceAllStringFunc(sentence, func(hole string) string {
		name := hole[1 : len(hole)-1]
		if id, ok := strings.CutPrefix(name, "figure."); ok {
			if f, ok := e.Figures.Figure(id); ok {
				return quantity.Write(f.Dimension, quantity.Point(f.Value), e.System)
			}
		}
		if f, ok := e.Catalogue.Schema().Lookup(name); ok {
			return "[" + judge.Name(e.Catalogue, e.Language, f) + "]"
		}
		return "[" + name + "]"
	})
}

// FiguresOf are the ids of the figures that a rule compares with, or shows.
func FiguresOf(r *pack.Rule) []string {
	var ids []string
	if r.Applies != nil {
		ids = append(ids, r.Applies.Figures()...)
	}
	ids = append(ids, r.When.Figures()...)
	if id, ok := strings.CutPrefix(r.Limit, "figure."); ok {
		ids = append(ids, id)
	}
	return distinct(ids)
}

func distinct(ids []string) []string {
	seen := map[string]bool{}
	return slices.DeleteFunc(ids, func(id string) bool {
		again := seen[id]
		seen[id] = true
		return again
	})
}
