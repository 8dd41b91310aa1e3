package text

import (
	"strings"

	"github.com/rivo/uniseg"
)

// Wrap breaks a text into lines of at most width columns, at spaces where it
// can. Line feeds in the text stay. An empty text is one empty line.
func Wrap(text string, width int) []string {
	var lines []string
	for paragraph := range strings.SplitSeq(text, "\n") {
		lines = append(lines, fold(paragraph, width)...)
	}
	return lines
}

func fold(paragraph string, width int) []string {
	var lines []string
	line := ""
	for word := range strings.FieldsSeq(paragraph) {
		if line != "" && columns(line)+1+columns(word) <= width {
			line += " " + word
			continue
		}
		if line != "" {
			lines = append(lines, line)
		}
		pieces := split(word, width)
		lines = append(lines, pieces[:len(pieces)-1]...)
		line = pieces[len(pieces)-1]
	}
	return append(lines, line)
}

// split cuts a word that is longer than a line between characters as people
// see them.
func split(word string, width int) []string {
	var pieces []string
	piece, used := "", 0
	for g := uniseg.NewGraphemes(word); g.Next(); {
		if used > 0 && used+g.Width() > width {
			pieces, piece, used = append(pieces, piece), "", 0
		}
		piece += g.Str()
		used += g.Width()
	}
	return append(pieces, piece)
}

// columns is how many columns of a terminal the text takes.
func columns(text string) int { return uniseg.StringWidth(text) }

// pad fills a text up with spaces, before it where it is set flush right.
func pad(text string, width int, right bool) string {
	fill := strings.Repeat(" ", max(0, width-columns(text)))
	if right {
		return fill + text
	}
	return text + fill
}
