// Package plaintext is what a plain text may hold, and how it is shown: which
// characters no record, measure, screen or report may have, what is taken out
// of a text that has them, how wide it is, and where its lines break.
package plaintext

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// Hidden reports whether a character controls a screen, turns the direction of
// a text, breaks its lines unseen or is none that texts may exchange. Tabs and
// line ends are not hidden.
func Hidden(r rune) bool {
	switch {
	case ' ' <= r && r <= '~', r == '\t', r == '\n':
		return false
	case r == '\u2028', r == '\u2029', r == '\ufeff', r == '\ufffe', r == '\uffff':
		return true
	}
	return unicode.IsControl(r) || unicode.Is(unicode.Bidi_Control, r)
}

// HasHidden reports whether a text holds a hidden character or is not UTF-8.
func HasHidden(text string) bool {
	return strings.ContainsFunc(text, Hidden) || !utf8.ValidString(text)
}

// Marked is the text with a question mark for each hidden character and for
// each byte that is no character, so that what was written can be shown.
func Marked(text string) string {
	return strings.Map(func(r rune) rune {
		if r == utf8.RuneError || Hidden(r) {
			return '?'
		}
		return r
	}, text)
}
