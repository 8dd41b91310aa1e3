package cli

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"underfoot/assess/condition"
	"underfoot/assess/plaintext"
	"underfoot/assess/quantity"
	"underfoot/reports/book"
	"underfoot/rules"
	"underfoot/rules/judge"
	"underfoot/rules/pack"
)

const (
	headWidth = 13 // of the words before a rule's lines
	showWidth = 80
)

// A sheet prints lines under short heads, folded to the width of a terminal.
type sheet struct {
	*app
	engine *rules.Engine
}

func (s sheet) line(head, body string) {
	if body != "" {
		s.hang(head, "", body)
	}
}

// hang prints a text behind a mark, its further lines set in as far.
func (s sheet) hang(head, mark, body string) {
	for _, l := range plaintext.Wrap(body, showWidth-headWidth-len(mark)) {
		fmt.Fprintf(s.Out, "%-*s%s%s\n", headWidth, head, mark, l)
		head, mark = "", strings.Repeat(" ", len(mark))
	}
}

// show prints one rule whole, so that a reader needs no other page: what it
// looks for in words and as written, what it says, its figures in the region,
// its cautions and its sources.
func (a *app) show(e *rules.Engine, r *pack.Rule) error {
	s := sheet{a, e}
	s.line(a.say("cli/show.head.rule"), r.ID)
	s.line(a.say("cli/show.head.title"), r.Text.Title)
	s.line(a.say("cli/show.head.region"), e.Figures.Region)
	s.line(a.say("cli/show.head.scope"), r.Scope.String())
	s.condition(a.say("cli/show.head.applies"), r.Applies)
	s.condition(a.say("cli/show.head.when"), r.When)
	s.line(a.say("cli/show.head.unknown"), a.policies(r))
	s.line(a.say("cli/show.head.protects"), string(r.Protects))
	s.line(a.say("cli/show.head.does"), a.effects(r))
	s.sentences(r)
	s.line(a.say("cli/show.head.risk"), a.say("cli/show.risk", "mode", r.Text.Mode, "likelihood", r.Risk.Likelihood,
		"consequence", r.Risk.Consequence, "likelihood_after", r.Risk.LikelihoodAfter, "consequence_after", r.Risk.ConsequenceAfter))
	s.cases(r)
	s.figures(r)
	for _, id := range r.Cautions {
		s.line(a.say("cli/show.head.caution"), e.Pack.Cautions[id].Text)
	}
	for _, c := range r.Cited {
		s.line(a.say("cli/show.source", "id", c.ID), fmt.Sprintf("%s; %s. %s", book.Cited(c.Source), book.Known(a.language, c.Source), a.language.Say(c.States)))
	}
	return nil
}

// condition tells a condition in words, and below them as it is written.
func (s sheet) condition(head string, c *condition.Condition) {
	if c == nil {
		return
	}
	s.explained(head, "", c.Describe(judge.Show(s.engine.Catalogue, s.engine.Language, s.engine.System)))
	s.line("", c.Source())
}

func (s sheet) explained(head, mark string, x condition.Explanation) {
	if x.Joint == condition.Leaf {
		s.hang(head, mark, s.engine.Language.Say(x.Text))
		return
	}
	s.hang(head, mark, s.engine.Language.Say(x.Joint.Message())+":")
	for _, part := range x.Parts {
		s.explained("", strings.Repeat(" ", len(mark))+"- ", part)
	}
}

// sentences are what the rule says of a floor, each under its own head.
func (s sheet) sentences(r *pack.Rule) {
	t := r.Text
	for _, l := range [][2]string{{"fails", t.Fails}, {"presumed", t.Presumed}, {"open", t.Open}, {"holds", t.Holds},
		{"why", t.Why}, {"remedy", t.Remedy}} {
		s.line(s.say("cli/show.head."+l[0]), book.Filled(s.engine, l[1]))
	}
}

func (s sheet) cases(r *pack.Rule) {
	s.line(s.say("cli/show.head.cases"), strconv.Itoa(len(r.Cases)))
	for _, c := range r.Cases {
		s.line("", fmt.Sprintf("%s: %s", c.Expect, c.Name))
	}
}

// figures are the numbers that the rule compares with, as the region has them.
func (s sheet) figures(r *pack.Rule) {
	for _, id := range book.FiguresOf(r) {
		f, ok := s.engine.Figures.Figure(id)
		if !ok {
			continue
		}
		value := quantity.Write(f.Dimension, quantity.Point(f.Value), s.engine.System)
		s.line(s.say("cli/show.head.figure"), strings.Join(filled(s.language.Say(f.What())+": "+value, book.Cited(f.Source)+"; "+book.Known(s.language, f.Source), s.language.Say(f.Note()), s.language.Say(f.Differs())), ". "))
	}
}

// filled leaves out what is empty.
func filled(parts ...string) []string {
	return slices.DeleteFunc(parts, func(p string) bool { return p == "" })
}
