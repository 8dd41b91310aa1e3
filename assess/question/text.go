package question

import (
	"io/fs"

	"github.com/pelletier/go-toml/v2"
)

// A Text is what a person reads of one question.
type Text struct {
	Label   string            `toml:"label"`
	Ask     string            `toml:"ask"`
	Why     string            `toml:"why"`
	How     string            `toml:"how"`
	Limits  string            `toml:"limits"`
	Who     string            `toml:"who"`
	Example string            `toml:"example"`
	Choices map[string]string `toml:"choices"`
}

// synonyms are the words a person may type for choice words, by fact.
type synonyms map[string]map[string][]string

type texts struct {
	groups map[string]string
	words  synonyms
	facts  map[string]Text
}

// readTexts reads the text file: two named tables, and one table a question.
func readTexts(files fs.FS) (texts, error) {
	var t texts
	data, err := fs.ReadFile(files, "text.en.toml")
	if err != nil {
		return t, err
	}
	var named struct {
		Groups map[string]string `toml:"groups"`
		Words  synonyms          `toml:"words"`
	}
	if err := toml.Unmarshal(data, &named); err != nil {
		return t, err
	}
	var tables map[string]any
	if err := toml.Unmarshal(data, &tables); err != nil {
		return t, err
	}
	delete(tables, "groups")
	delete(tables, "words")
	rest, err := toml.Marshal(tables)
	if err != nil {
		return t, err
	}
	t.groups, t.words = named.Groups, named.Words
	return t, toml.Unmarshal(rest, &t.facts)
}
