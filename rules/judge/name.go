package judge

import (
	_ "embed"
	"sync"

	"github.com/pelletier/go-toml/v2"

	"underfoot/assess"
	"underfoot/assess/condition"
	"underfoot/assess/quantity"
	"underfoot/assess/question"
)

//go:embed fact.en.toml
var english []byte

// derivedNames are what a reader calls the facts that nobody is asked.
var derivedNames = sync.OnceValue(func() map[string]string {
	names := map[string]string{}
	if err := toml.Unmarshal(english, &names); err != nil {
		panic("rules/judge: embedded names: " + err.Error())
	}
	return names
})

// Name is what a reader calls a fact: the label of its question, or the words
// for what is tallied and worked out; else its short name.
func Name(c *question.Catalogue, f assess.FactID) string {
	id := c.Schema().Decl(f).ID
	if q := c.Question(f); q != nil && q.Text.Label != "" {
		return q.Text.Label
	}
	if name := derivedNames()[id]; name != "" {
		return name
	}
	return id
}

// Show names facts and choices in a told or explained condition as a reader does.
func Show(c *question.Catalogue, sys quantity.System) condition.Show {
	return condition.Show{Units: sys, Label: func(f assess.FactID) string { return Name(c, f) }, Word: c.Word}
}
