package interview

import (
	"underfoot/assess"
	"underfoot/rules/inquiry"
)

// Text is the one sentence of a prompt.
func (p *Prompt) Text() string {
	switch {
	case p.Form == Family:
		return p.language.Text("interview/family." + p.Question.Decl.Family + ".ask")
	case p.Form == List && len(p.Items) == 0:
		return p.language.Text("interview/first." + p.Address.Topic)
	}
	return p.Question.Text.Ask
}

// Why is why the prompt matters.
func (p *Prompt) Why() string {
	if p.Form == Family {
		return p.language.Text("interview/family." + p.Question.Decl.Family + ".why")
	}
	return p.Question.Text.Why
}

// WantsBasis reports whether how the answer is known decides what it counts
// for: only a paper or a marking dates a layer, and a stiffness figure from
// hearsay is none.
func (p *Prompt) WantsBasis() bool {
	switch p.Question.Decl.ID {
	case "layer.year", "joist.known_ratio":
		return p.Form == One
	}
	return false
}

// BasisChoices are the ways an answer may be known, in the order in which they are offered.
func BasisChoices() []assess.Basis {
	return []assess.Basis{assess.Document, assess.Seen, assess.Measured, assess.Told, assess.Assumed}
}

// StageTitle is the heading over the questions of a stage.
func (s *Session) StageTitle(stage inquiry.Stage) string {
	return s.Language.Text("interview/stage." + [...]string{"danger", "suspect", "deciding", "before"}[stage])
}
