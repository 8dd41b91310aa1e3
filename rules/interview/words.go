package interview

import (
	_ "embed"

	"github.com/pelletier/go-toml/v2"

	"underfoot/assess"
	"underfoot/rules/inquiry"
)

//go:embed words.en.toml
var wordsFile []byte

// Words are what an interview says around the questions, by section and key.
type Words map[string]map[string]string

// Said holds the words of the program's language.
var Said = readWords()

var families = readFamilies()

func readWords() Words {
	var all map[string]any
	if err := toml.Unmarshal(wordsFile, &all); err != nil {
		panic("interview: words.en.toml: " + err.Error())
	}
	words := Words{}
	for section, keys := range all {
		words[section] = map[string]string{}
		table, _ := keys.(map[string]any)
		for key, text := range table {
			if s, ok := text.(string); ok {
				words[section][key] = s
			}
		}
	}
	return words
}

// A familyText is how a family is asked as one.
type familyText struct {
	Ask string `toml:"ask"`
	Why string `toml:"why"`
}

func readFamilies() map[string]familyText {
	var file struct {
		Family map[string]familyText `toml:"family"`
	}
	if err := toml.Unmarshal(wordsFile, &file); err != nil {
		panic("interview: words.en.toml: " + err.Error())
	}
	return file.Family
}

// Ask is the one sentence of a prompt.
func (p *Prompt) Ask() string {
	switch {
	case p.Form == Family:
		return families[p.Question.Decl.Family].Ask
	case p.Form == List && len(p.Items) == 0:
		return Said["first"][p.Address.Topic]
	}
	return p.Question.Text.Ask
}

// Why is why the prompt matters.
func (p *Prompt) Why() string {
	if p.Form == Family {
		return families[p.Question.Decl.Family].Why
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

// Bases are the ways an answer may be known, in the order in which they are offered.
func Bases() []assess.Basis {
	return []assess.Basis{assess.Document, assess.Seen, assess.Measured, assess.Told, assess.Assumed}
}

// StageTitle is the heading over the questions of a stage.
func StageTitle(s inquiry.Stage) string {
	return Said["stage"][[...]string{"danger", "suspect", "deciding", "before"}[s]]
}
