package data

import "underfoot/assess/message"

// A tongue says messages in the language of the result.
type tongue struct{ language *message.Language }

// text is what a message says; English where the result has no language.
func (t tongue) text(m message.Message) string {
	if t.language == nil {
		return message.English().Say(m)
	}
	return t.language.Say(m)
}

// tellAll are what several messages say; nil for none.
func (t tongue) tellAll(all []message.Message) []string {
	var texts []string
	for _, m := range all {
		texts = append(texts, t.text(m))
	}
	return texts
}
