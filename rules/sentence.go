package rules

import (
	"unicode"
	"unicode/utf8"

	"underfoot/assess/result"
	"underfoot/rules/judge"
)

// muchOpen is how many rules have to wait before so much is open that naming
// one matter alone would mislead.
const muchOpen = 12

// sentence says in a sentence why the path leads: never nothing.
func (e *Engine) sentence(l *judge.Evaluation) string {
	switch {
	case l.LeadRuling != nil:
		return e.describer.Text(l.LeadRuling)
	case l.Blocked != result.NoPath:
		return e.behind(l)
	case l.Lead == result.FindOut:
		return e.open(l)
	}
	bar := l.First(func(r *judge.Ruling) bool { return r.Proven() && l.Strikes(r) })
	switch {
	case bar == nil:
		return e.Language.Text("rules/because.no_rule")
	case l.Lead == result.Remove:
		return e.Language.Text("rules/because.covered", "bar", e.describer.Text(bar))
	}
	return e.Language.Text("rules/because.struck", "bar", e.describer.Text(bar))
}

// behind names the step that is settled and the question that comes before it.
func (e *Engine) behind(l *judge.Evaluation) string {
	step := l.First(func(r *judge.Ruling) bool { return r.Rule.Calls == l.Blocked && r.Proven() })
	return e.Language.Text("rules/because.behind", "step", e.describer.Text(step), "gate", e.describer.Text(l.Gate()))
}

// open names the first matter that waits, and says so where a great many do.
func (e *Engine) open(l *judge.Evaluation) string {
	first := l.First((*judge.Ruling).Waits)
	if first == nil {
		return e.Language.Text("rules/because.no_rule")
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
	return e.Language.Text("rules/because.much_open", "first", lower(text))
}

// lower makes the first letter small, unless it belongs to a word in capitals.
func lower(text string) string {
	first, n := utf8.DecodeRuneInString(text)
	if second, _ := utf8.DecodeRuneInString(text[n:]); unicode.IsUpper(second) {
		return text
	}
	return string(unicode.ToLower(first)) + text[n:]
}
