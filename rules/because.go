package rules

import (
	_ "embed"
	"strings"
	"sync"
	"unicode"
	"unicode/utf8"

	"github.com/pelletier/go-toml/v2"

	"underfoot/assess"
	"underfoot/rules/judge"
)

//go:embed said.en.toml
var saidEnglish []byte

// sentences say why a way leads where no rule's own sentence does.
var sentences = sync.OnceValue(func() map[string]string {
	s := map[string]string{}
	if err := toml.Unmarshal(saidEnglish, &s); err != nil {
		panic("rules: embedded sentences: " + err.Error())
	}
	return s
})

// sentence fills one hole after the other of a sentence.
func sentence(key string, holes ...string) string {
	return strings.NewReplacer(holes...).Replace(sentences()[key])
}

// muchOpen is how many rules have to wait before so much is open that naming
// one matter alone would mislead.
const muchOpen = 12

// because says in a sentence why the path leads: never nothing.
func (e *Engine) because(l *judge.Evaluation) string {
	switch {
	case l.By != nil:
		return e.describer.Text(l.By)
	case l.Behind != assess.NoPath:
		return e.behind(l)
	case l.Lead == assess.FindOut:
		return e.open(l)
	}
	key := map[bool]string{true: "covered", false: "struck"}[l.Lead == assess.Remove]
	if bar := l.First(func(r *judge.Ruling) bool { return r.Proven() && l.Strikes(r) }); bar != nil {
		return sentence(key, "{bar}", e.describer.Text(bar))
	}
	return sentence("no_rule")
}

// behind names the step that is settled and the question that comes before it.
func (e *Engine) behind(l *judge.Evaluation) string {
	step := l.First(func(r *judge.Ruling) bool { return r.Rule.Calls == l.Behind && r.Proven() })
	return sentence("behind", "{step}", e.describer.Text(step), "{gate}", e.describer.Text(l.Gate()))
}

// open names the first matter that waits, and says so where a great many do.
func (e *Engine) open(l *judge.Evaluation) string {
	first := l.First((*judge.Ruling).Waits)
	if first == nil {
		return sentence("no_rule")
	}
	rules := map[string]bool{}
	for i := range l.Rulings {
		if r := &l.Rulings[i]; r.Waits() {
			rules[r.Rule.ID] = true
		}
	}
	text := e.describer.Text(first)
	if len(rules) < muchOpen {
		return text
	}
	return sentence("much_open", "{first}", lower(text))
}

// lower makes the first letter small, unless it belongs to a word in capitals.
func lower(text string) string {
	first, n := utf8.DecodeRuneInString(text)
	if second, _ := utf8.DecodeRuneInString(text[n:]); unicode.IsUpper(second) {
		return text
	}
	return string(unicode.ToLower(first)) + text[n:]
}
