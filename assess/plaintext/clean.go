package plaintext

import (
	"strings"

	"github.com/charmbracelet/x/ansi"
)

// Clean takes out what a terminal, a browser or an office program might obey
// rather than show: escape sequences whole, and hidden characters. Line feeds
// stay; tabs and other ends of lines become spaces; bytes that are no text
// become the replacement mark.
func Clean(text string) string {
	if !HasHidden(text) && strings.IndexByte(text, '\t') < 0 {
		return text
	}
	text = strings.ReplaceAll(strings.ToValidUTF8(text, "\uFFFD"), "\r\n", "\n")
	return strings.Map(func(r rune) rune {
		switch {
		case r == '\t' || r == '\r' || r == '\u2028' || r == '\u2029':
			return ' '
		case Hidden(r):
			return -1
		}
		return r
	}, ansi.Strip(text))
}

// Line is Clean on one line: tabs and line feeds become single spaces.
func Line(text string) string {
	return Clean(strings.Join(strings.FieldsFunc(text, func(r rune) bool { return r == '\n' || r == '\t' }), " "))
}
