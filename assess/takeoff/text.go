package takeoff

import (
	_ "embed"
	"sync"

	"github.com/pelletier/go-toml/v2"
)

//go:embed takeoff.en.toml
var english []byte

// A text is what a reader sees of one line.
type text struct {
	Text     string `toml:"text"`
	Unit     string `toml:"unit"`
	Whole    bool   `toml:"whole"` // sold or counted in whole ones
	Note     string `toml:"note"`
	Memory   string `toml:"memory"`
	Practice string `toml:"practice"`
}

// texts are the lines' texts by id; a fault in the file is a programming error,
// which a test finds before a reader does.
var texts = sync.OnceValue(func() map[string]text {
	all := map[string]text{}
	if err := toml.Unmarshal(english, &all); err != nil {
		panic("takeoff.en.toml: " + err.Error())
	}
	return all
})
