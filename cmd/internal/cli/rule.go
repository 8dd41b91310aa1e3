package cli

import (
	"fmt"
	"io"
	"strings"

	"underfoot/assess/condition"
	"underfoot/assess/quantity"
	"underfoot/reports/text"
	"underfoot/rules"
	"underfoot/rules/book"
	"underfoot/rules/judge"
	"underfoot/rules/pack"
)

const (
	headWidth = 13 // of the words before a rule's lines
	showWidth = 80
)

// A sheet prints lines under short heads, folded to the width of a terminal.
type sheet struct{ io.Writer }

func (s sheet) line(head, body string) {
	if body != "" {
		s.hang(head, "", body)
	}
}

// hang prints a text behind a mark, its further lines set in as far.
func (s sheet) hang(head, mark, body string) {
	for _, l := range text.Wrap(body, showWidth-headWidth-len(mark)) {
		fmt.Fprintf(s, "%-*s%s%s\n", headWidth, head, mark, l)
		head, mark = "", strings.Repeat(" ", len(mark))
	}
}

// show prints one rule whole, so that a reader needs no other page: what it
// looks for in words and as written, what it says, its figures in the region,
// its cautions and its sources.
func (a *app) show(e *rules.Engine, r *pack.Rule) error {
	s := sheet{a.Out}
	s.line("rule", r.ID)
	s.line("title", r.Text.Title)
	s.line("region", e.Figures.Region)
	s.line("looks at", r.Scope.String())
	s.condition(e, "applies", r.Applies)
	s.condition(e, "when", r.When)
	s.line("not known", policies(r))
	s.line("protects", r.Protects)
	s.line("does", effects(r))
	s.sentences(e, r)
	s.line("risk", fmt.Sprintf("%s: %s and %s; after the remedy %s and %s", r.Text.Mode,
		r.Risk.Likelihood, r.Risk.Consequence, r.Risk.LikelihoodAfter, r.Risk.ConsequenceAfter))
	s.cases(r)
	s.figures(e, r)
	for _, id := range r.Cautions {
		s.line("caution", e.Pack.Cautions[id].Text)
	}
	for _, c := range r.Cited {
		s.line("source "+c.ID, fmt.Sprintf("%s; %s. %s", book.Cited(c.Source), book.Known(c.Source), c.States))
	}
	return nil
}

// condition tells a condition in words, and below them as it is written.
func (s sheet) condition(e *rules.Engine, head string, c *condition.Condition) {
	if c == nil {
		return
	}
	s.explained(head, "", c.Tell(judge.Show(e.Catalogue, e.System)))
	s.line("", c.String())
}

func (s sheet) explained(head, mark string, x condition.Explanation) {
	if x.Joint == condition.Leaf {
		s.hang(head, mark, x.Text)
		return
	}
	s.hang(head, mark, x.Joint.String()+":")
	for _, part := range x.Parts {
		s.explained("", strings.Repeat(" ", len(mark))+"- ", part)
	}
}

func (s sheet) sentences(e *rules.Engine, r *pack.Rule) {
	t := r.Text
	for _, l := range [][2]string{{"says", t.Fails}, {"presumed", t.Presumed}, {"open", t.Open}, {"otherwise", t.Holds},
		{"why", t.Why}, {"remedy", t.Remedy}} {
		s.line(l[0], book.Filled(e, l[1]))
	}
}

func (s sheet) cases(r *pack.Rule) {
	s.line("cases", fmt.Sprintf("%d", len(r.Cases)))
	for _, c := range r.Cases {
		s.line("", fmt.Sprintf("%s: %s", c.Expect, c.Name))
	}
}

// figures are the numbers that the rule compares with, as the region has them.
func (s sheet) figures(e *rules.Engine, r *pack.Rule) {
	for _, id := range book.FiguresOf(r) {
		f, ok := e.Figures.Figure(id)
		if !ok {
			continue
		}
		value := quantity.Write(f.Dimension, quantity.Point(f.Value), e.System)
		s.line("figure", strings.Join(filled(f.What+": "+value, book.Cited(f.Source)+"; "+book.Known(f.Source), f.Note, f.Differs), ". "))
	}
}

// filled leaves out what is empty.
func filled(parts ...string) []string {
	var out []string
	for _, p := range parts {
		if p != "" {
			out = append(out, p)
		}
	}
	return out
}
