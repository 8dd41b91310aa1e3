package judge

import (
	"underfoot/assess/condition"
	"underfoot/assess/message"
	"underfoot/assess/quantity"
	"underfoot/assess/question"
	"underfoot/assess/schema"
)

// Name is what a reader calls a fact: the label of its question, or the words
// for what is tallied and worked out; else its short name.
func Name(c *question.Catalogue, l *message.Language, f schema.FactID) string {
	id := c.Schema().Decl(f).ID
	if q := c.Question(f); q != nil && q.Text.Label != "" {
		return q.Text.Label
	}
	return l.Or("judge/fact."+id, id)
}

// Show names facts and choices in a told or explained condition as a reader does.
func Show(c *question.Catalogue, l *message.Language, sys quantity.System) condition.Show {
	return condition.Show{Units: sys, Label: func(f schema.FactID) string { return Name(c, l, f) }, Word: c.Word}
}
