package reports

import (
	_ "embed"
	"fmt"
	"strings"
	"sync"

	"github.com/pelletier/go-toml/v2"
)

//go:embed heading.en.toml
var english []byte

// words are a language's sentences by table and key.
type words map[string]map[string]string

// languages are read when the first view is made, not when the program starts.
var languages = map[string]func() words{
	"en": sync.OnceValue(func() words { return mustRead(english) }),
}

func mustRead(text []byte) words {
	var w words
	if err := toml.Unmarshal(text, &w); err != nil {
		panic(fmt.Sprintf("reports: embedded headings: %v", err))
	}
	return w
}

// speak finds the language, English where there is no such one.
func speak(language string) (string, words) {
	if open, ok := languages[language]; ok {
		return language, open()
	}
	return "en", languages["en"]()
}

// say is the sentence of a key, with pairs of hole and text filled in. A key
// that is not there is a programming error and panics.
func (w words) say(table, key string, holes ...string) string {
	text, ok := w[table][key]
	if !ok {
		panic("reports: no words for " + table + "." + key)
	}
	if len(holes) == 0 {
		return text
	}
	pairs := make([]string, len(holes))
	for i, h := range holes {
		if i%2 == 0 {
			h = "{" + h + "}"
		}
		pairs[i] = h
	}
	return strings.NewReplacer(pairs...).Replace(text)
}

// or is the sentence of a key, or the key itself where it is a word of somebody
// else's that has none.
func (w words) or(table, key string) string {
	if text, ok := w[table][key]; ok {
		return text
	}
	return key
}

// Words are the sentences that a format says by itself, in the view's language.
type Words struct{ words }

// Say is the sentence of a key of the format's table, with pairs of hole and
// text filled in. A key that is not there panics.
func (w Words) Say(table, key string, holes ...string) string { return w.say(table, key, holes...) }
