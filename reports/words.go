package reports

import "underfoot/assess/message"

// words are what a report says by itself, in the language of its reader.
type words struct{ language *message.Language }

// say is the sentence of a key, with pairs of a hole's name and its value.
func (w words) say(key string, pairs ...any) string { return w.language.Text(key, pairs...) }

// or is the sentence of a key, or the word given where it is a word of somebody
// else's that has none.
func (w words) or(key, word string) string { return w.language.Or(key, word) }

// text is what a message says.
func (w words) text(m message.Message) string { return w.language.Say(m) }

// tellAll are what several messages say.
func (w words) tellAll(all []message.Message) []string {
	texts := make([]string, len(all))
	for i, m := range all {
		texts[i] = w.text(m)
	}
	return texts
}
