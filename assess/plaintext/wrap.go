package plaintext

import (
	"strings"

	"github.com/charmbracelet/x/ansi"
)

// Width is how many columns of a terminal a text takes: wide characters take
// two, combining marks and escape sequences none.
func Width(text string) int { return ansi.StringWidth(text) }

// Shorten is a text in at most so many columns, cut with an ellipsis.
func Shorten(text string, columns int) string { return ansi.Truncate(text, columns, "…") }

// Wrap breaks a text into lines of at most so many columns, at spaces where it
// can: a fraction is never broken at its hyphen. A word that is longer is broken
// between characters as people see them. Line feeds in the text stay. An empty
// text is one empty line.
func Wrap(text string, columns int) []string {
	var lines []string
	for paragraph := range strings.SplitSeq(text, "\n") {
		lines = append(lines, fold(paragraph, max(columns, 1))...)
	}
	return lines
}

func fold(paragraph string, columns int) []string {
	var lines []string
	line, used := "", 0
	for word := range strings.FieldsSeq(paragraph) {
		size := Width(word)
		if line != "" && used+1+size <= columns {
			line, used = line+" "+word, used+1+size
			continue
		}
		if line != "" {
			lines = append(lines, line)
		}
		parts := strings.Split(ansi.Hardwrap(word, columns, true), "\n")
		lines = append(lines, parts[:len(parts)-1]...)
		line = parts[len(parts)-1]
		used = Width(line)
	}
	return append(lines, line)
}
