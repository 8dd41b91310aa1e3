package console

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"github.com/mattn/go-runewidth"
)

// Clean is a text as it may be shown on a screen: without escape sequences,
// without control characters but tab and line end, and without characters that
// turn the direction of a text. Bytes that are no UTF-8 become the replacement
// character.
func Clean(text string) string {
	if !strings.ContainsFunc(text, unwanted) && utf8.ValidString(text) {
		return text
	}
	var out strings.Builder
	out.Grow(len(text))
	for runes := []rune(text); len(runes) > 0; {
		if n := escape(runes); n > 0 {
			runes = runes[n:]
			continue
		}
		if !unwanted(runes[0]) {
			out.WriteRune(runes[0])
		}
		runes = runes[1:]
	}
	return out.String()
}

// CleanLine is Clean on one line: tabs and line ends become single spaces.
func CleanLine(text string) string {
	return strings.Join(strings.FieldsFunc(Clean(text), func(r rune) bool { return r == '\n' || r == '\t' }), " ")
}

// Columns is the number of columns that a clean text takes on a screen.
func Columns(text string) int { return runewidth.StringWidth(text) }

// Shorten is a clean text in at most so many columns, cut with an ellipsis.
func Shorten(text string, columns int) string {
	return runewidth.Truncate(text, columns, "…")
}

// unwanted reports whether a character steers a screen or turns a text.
func unwanted(r rune) bool {
	switch r {
	case '\t', '\n':
		return false
	case '\u061c', '\u200e', '\u200f', '\u2028', '\u2029', '\ufeff':
		return true
	}
	return unicode.Is(unicode.Cc, r) || '\u202a' <= r && r <= '\u202e' || '\u2066' <= r && r <= '\u2069'
}

// The characters that begin and end escape sequences (ECMA-48, 5th edition,
// sections 5.3 to 5.6).
const (
	esc = '\u001b'
	csi = '\u009b' // control sequence introducer; also ESC [
	st  = '\u009c' // string terminator; also ESC \
	bel = '\u0007' // ends a string on most terminals
)

// escape is the length of the escape sequence that a text starts with; 0 where
// it starts with none. One that does not end takes its introducer alone, so
// that no text behind it is lost.
func escape(text []rune) int {
	first, rest := text[0], text[1:]
	lead := 1
	if first == esc && len(rest) > 0 && '@' <= rest[0] && rest[0] <= '_' {
		first, rest, lead = rest[0]+0x40, rest[1:], 2
	}
	switch {
	case first == csi:
		return lead + control(rest)
	case first == '\u0090' || first == '\u0098' || '\u009d' <= first && first <= '\u009f':
		return lead + stringEnd(rest)
	case first == esc && len(rest) > 0 && ' ' <= rest[0] && rest[0] <= '~':
		return lead + short(rest)
	case lead == 2:
		return lead
	}
	return 0
}

// control is the length of a control sequence: parameters, intermediate
// characters and a final one.
func control(text []rune) int {
	for i, r := range text {
		switch {
		case '@' <= r && r <= '~':
			return i + 1
		case r < ' ' || r > '?':
			return 0
		}
	}
	return 0
}

// stringEnd is the length of a string with its terminator.
func stringEnd(text []rune) int {
	for i, r := range text {
		switch {
		case r == st || r == bel:
			return i + 1
		case r == esc && i+1 < len(text) && text[i+1] == '\\':
			return i + 2
		}
	}
	return 0
}

// short is the length of a sequence of intermediate characters and a final one.
func short(text []rune) int {
	for i, r := range text {
		switch {
		case '0' <= r && r <= '~':
			return i + 1
		case r < ' ' || r > '~':
			return i
		}
	}
	return 0
}
