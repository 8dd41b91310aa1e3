package book

import (
	"fmt"
	"math"
	"regexp"
	"strings"

	"underfoot/assess"
	"underfoot/assess/condition"
	"underfoot/assess/figure"
	"underfoot/assess/message"
	"underfoot/assess/quantity"
	"underfoot/rules"
	"underfoot/rules/judge"
	"underfoot/rules/pack"
)

// An entry is a rule with the regions in which it holds, and the engine of the
// first of them.
type entry struct {
	*pack.Rule
	engine  *rules.Engine
	regions []string
}

// order puts rules without a rank last.
func (e *entry) order() float64 {
	if e.Rank == 0 {
		return math.Inf(1)
	}
	return e.Rank
}

func (w *writer) rules() {
	w.chapter("rules")
	for _, t := range w.topics() {
		w.heading(3, "topic-"+t.id, t.title)
		for _, e := range t.rules {
			w.rule(e)
		}
	}
}

// rule tells one rule whole.
func (w *writer) rule(e *entry) {
	w.heading(4, "rule-"+e.ID, e.Text.Title)
	w.list(w.head(e))
	w.condition(e, "Looked at only where", e.Applies)
	w.condition(e, "Holds where", e.When)
	for _, c := range e.UnknownWhen {
		w.condition(e, fmt.Sprintf("While it is open: %s, where", c.Then), c.When)
	}
	list := []item{{text: labelled(otherwise(e, "While it is open"), string(e.Unknown)+". "+w.text.Policy[string(e.Unknown)])}}
	list = append(list, w.sentences(e)...)
	list = append(list, w.tail(e)...)
	w.list(list)
}

// otherwise is the label of the last policy.
func otherwise(e *entry, label string) string {
	if len(e.UnknownWhen) > 0 {
		return label + ", otherwise"
	}
	return label
}

func (w *writer) head(e *entry) []item {
	rank := "without a rank"
	if e.Rank != 0 {
		rank = fmt.Sprintf("rank %g", e.Rank)
	}
	list := []item{
		{text: line{{text: e.ID, code: true}, {text: fmt.Sprintf(", %s; looks at each %s", rank, e.Scope)}}},
		{text: labelled("Protects", w.text.Protects[e.Protects])},
		{text: w.effects(e.Rule)},
	}
	if e.Local {
		list = append(list, item{text: line{{text: "Of a local pack, not of the program.", strong: true}}})
	}
	if len(e.regions) < len(w.engines) {
		list = append(list, item{text: labelled("Only in", strings.Join(e.regions, ", "))})
	}
	return list
}

// way is what a reader calls a step or a base.
func (w *writer) way(p assess.PathID) string { return "'" + w.main.Pack.Steps[p].Text.Label + "'" }

// effects are what the rule does once it holds, with links to the ways.
func (w *writer) effects(r *pack.Rule) line {
	out := line{{text: "Does:", strong: true}}
	verb := func(what string, paths []assess.PathID) {
		for i, p := range paths {
			lead := ", "
			if i == 0 {
				lead = map[bool]string{true: " ", false: "; "}[len(out) == 1] + what + " "
			}
			out = append(out, span{text: lead}, span{text: w.way(p), link: "path-" + p.String()})
		}
	}
	if r.Calls != assess.NoPath {
		verb("calls for", []assess.PathID{r.Calls})
	}
	verb("permits", r.Permits)
	verb("bars", r.Bars)
	verb("names as other ways", r.Alternatives)
	verb("warns at", r.AtSteps)
	if r.BarsThis {
		out = append(out, span{text: " bars the base that it looks at"})
	}
	if len(out) == 1 {
		out = append(out, span{text: " adds what it says to the report"})
	}
	return out
}

// condition tells a condition in words, and below them as it is written.
func (w *writer) condition(e *entry, label string, c *condition.Condition) {
	if c == nil {
		return
	}
	told := c.Tell(w.show(e.engine))
	w.list([]item{{text: line{{text: label + ":", strong: true}}, items: []item{explained(e.engine.Language, told)}}})
	w.code(c.String())
}

func explained(l *message.Language, x condition.Explanation) item {
	if x.Joint == condition.Leaf {
		return item{text: plain(l.Say(x.Text))}
	}
	i := item{text: plain(l.Say(x.Joint.Message()) + ":")}
	for _, p := range x.Parts {
		i.items = append(i.items, explained(l, p))
	}
	return i
}

// show names facts and choices as a reader does.
func (w *writer) show(e *rules.Engine) condition.Show { return judge.Show(e.Catalogue, e.System) }

// name is what a reader calls a fact.
func (w *writer) name(e *rules.Engine, f assess.FactID) string { return judge.Name(e.Catalogue, f) }

func (w *writer) sentences(e *entry) []item {
	t := e.Text
	var list []item
	for _, s := range []struct{ label, text string }{
		{"Says", t.Fails}, {"Says while it is taken as there", t.Presumed}, {"Says while it is open", t.Open},
		{"Says otherwise", t.Holds}, {"Why", t.Why}, {"Remedy", t.Remedy},
	} {
		if s.text != "" {
			list = append(list, item{text: labelled(s.label, w.filled(e.engine, s.text))})
		}
	}
	return list
}

// holes are where a sentence takes a fact or a figure.
var holes = regexp.MustCompile(`{[^{}]*}`)

func (w *writer) filled(e *rules.Engine, text string) string { return Filled(e, text) }

// Filled is a sentence of a rule as a reader of rules sees it: with the figures
// of the engine's region, and the names of facts in square brackets.
func Filled(e *rules.Engine, text string) string {
	return holes.ReplaceAllStringFunc(text, func(hole string) string {
		name := hole[1 : len(hole)-1]
		if id, ok := strings.CutPrefix(name, "figure."); ok {
			if f, ok := e.Figures.Figure(id); ok {
				return quantity.Write(f.Dimension, quantity.Point(f.Value), e.System)
			}
		}
		if f, ok := e.Catalogue.Schema().Lookup(name); ok {
			return "[" + judge.Name(e.Catalogue, f) + "]"
		}
		return "[" + name + "]"
	})
}

func (w *writer) tail(e *entry) []item {
	r := e.Risk
	var list []item
	if e.Text.Mode != "" {
		list = append(list, item{text: labelled("Risk", fmt.Sprintf("%s: %s and %s; after the remedy %s and %s",
			e.Text.Mode, r.Likelihood, r.Consequence, r.LikelihoodAfter, r.ConsequenceAfter))})
	}
	if ids := FiguresOf(e.Rule); len(ids) > 0 {
		list = append(list, item{text: linked("Figures", "figure-", ids)})
	}
	list = append(list, w.cautionItem(e.Cautions)...)
	list = append(list, item{text: sources(e.Cited)})
	cases := item{text: line{{text: "Cases that test it:", strong: true}}}
	for _, c := range e.Cases {
		cases.items = append(cases.items, item{text: plain(c.Expect + ": " + c.Name)})
	}
	return append(list, cases)
}

func (w *writer) cautionItem(ids []string) []item {
	if len(ids) == 0 {
		return nil
	}
	return []item{{text: linked("Cautions", "caution-", ids)}}
}

// linked is a label and ids, each a link.
func linked(label, prefix string, ids []string) line {
	out := line{{text: label + ":", strong: true}, {text: " "}}
	for i, id := range ids {
		if i > 0 {
			out = append(out, span{text: ", "})
		}
		out = append(out, span{text: id, link: prefix + id})
	}
	return out
}

// sources are linked, and say how they are known where they were not read.
func sources(list []figure.Citation) line {
	out := line{{text: "Sources:", strong: true}, {text: " "}}
	for i, c := range list {
		if i > 0 {
			out = append(out, span{text: ", "})
		}
		out = append(out, span{text: c.ID, link: "source-" + c.ID})
		if how := Known(c.Source); how != read {
			out = append(out, span{text: " (" + how + ")"})
		}
	}
	return out
}

// figuresOf are the figures that the rule names, in its conditions first.
// FiguresOf are the ids of the figures that a rule compares with, or shows.
func FiguresOf(r *pack.Rule) []string {
	var ids []string
	seen := map[string]bool{}
	add := func(list ...string) {
		for _, id := range list {
			if !seen[id] {
				seen[id] = true
				ids = append(ids, id)
			}
		}
	}
	if r.Applies != nil {
		add(r.Applies.Figures()...)
	}
	add(r.When.Figures()...)
	if id, ok := strings.CutPrefix(r.Limit, "figure."); ok {
		add(id)
	}
	return ids
}
