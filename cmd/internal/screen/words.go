package screen

import (
	_ "embed"
	"fmt"

	"github.com/pelletier/go-toml/v2"
)

//go:embed words.en.toml
var wordsFile []byte

var words = readWords()

func readWords() map[string]map[string]string {
	var w map[string]map[string]string
	if err := toml.Unmarshal(wordsFile, &w); err != nil {
		panic("screen: words.en.toml: " + err.Error())
	}
	return w
}

// say is the text of a key with its values put in. A key that is not in the
// file is a programming error and panics.
func say(section, key string, values ...any) string {
	text, ok := words[section][key]
	if !ok {
		panic("screen: words.en.toml has no " + section + "." + key)
	}
	if len(values) == 0 {
		return text
	}
	return fmt.Sprintf(text, values...)
}
