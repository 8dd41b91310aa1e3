package book

import (
	_ "embed"
	"sync"

	"github.com/pelletier/go-toml/v2"
)

//go:embed book.en.toml
var english []byte

// texts are the sentences that the book says by itself.
type texts struct {
	Title       string            `toml:"title"`
	Preface     string            `toml:"preface"`
	Chapter     map[string]string `toml:"chapter"`
	Verdict     map[string]string `toml:"verdict"`
	Text        map[string]string `toml:"text"`
	Policy      map[string]string `toml:"policy"`
	Likelihood  map[string]string `toml:"likelihood"`
	Consequence map[string]string `toml:"consequence"`
	Protects    map[string]string `toml:"protects"`
	Topic       map[string]string `toml:"topic"`
}

// say is read when the first book is made, not when the program starts.
var say = sync.OnceValue(func() *texts {
	t := &texts{}
	if err := toml.Unmarshal(english, t); err != nil {
		panic("rules/book: embedded texts: " + err.Error())
	}
	return t
})
