package markdown

import (
	"regexp"
	"strings"

	"underfoot/reports"
)

// marks are what Markdown would read as more than text.
var marks = strings.NewReplacer(`\`, `\\`, "*", `\*`, "_", `\_`, "`", "\\`", "<", "&lt;", ">", "&gt;", "[", `\[`, "]", `\]`, "&", "&amp;")

// literal is a text that reads as it was written.
func literal(text string) string { return marks.Replace(text) }

// opener is a line that Markdown would take for a list or a heading.
var opener = regexp.MustCompile(`^(#|[-+] |\d+[.)] )`)

// first keeps the start of a line from being read as a mark.
func first(text string) string {
	if at := opener.FindStringIndex(text); at != nil {
		mark := strings.TrimRight(text[:at[1]], " ")
		return mark[:len(mark)-1] + `\` + mark[len(mark)-1:] + text[len(mark):]
	}
	return text
}

func link(l reports.Link) string {
	text := "[" + literal(l.Text) + "](#" + l.To + ")"
	if l.Note != "" {
		text += " (" + literal(l.Note) + ")"
	}
	return text
}

func links(list []reports.Link, between string) string {
	texts := make([]string, len(list))
	for i, l := range list {
		texts[i] = link(l)
	}
	return strings.Join(texts, between)
}

// blank is a line to be filled in by hand.
const blank = `\_\_\_\_\_\_\_\_`

// marked is what a cell says.
func marked(c reports.Cell) string {
	switch {
	case c.Blank:
		return blank
	case len(c.Links) > 0:
		return links(c.Links, "; ")
	case c.Code:
		return code(c.Text)
	}
	return literal(c.Text)
}

// code is each line as it is written.
func code(text string) string {
	if text == "" {
		return ""
	}
	return "`" + strings.ReplaceAll(text, "\n", "`\n`") + "`"
}
