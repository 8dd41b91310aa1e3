package book

import (
	"bufio"
	"fmt"
	"io"
	"regexp"
	"strings"
)

// markdown writes the document with the common marks of Markdown: headings,
// lists, pipe tables, and an anchor before each heading that links point to.
func (d *document) markdown(w io.Writer) error {
	b := bufio.NewWriter(w)
	for i, block := range d.blocks {
		if i > 0 {
			b.WriteString("\n")
		}
		block.markdown(b)
	}
	return b.Flush()
}

func (b *block) markdown(w *bufio.Writer) {
	switch b.kind {
	case heading:
		if b.id != "" {
			fmt.Fprintf(w, "<a id=\"%s\"></a>\n\n", b.id)
		}
		fmt.Fprintf(w, "%s %s\n", strings.Repeat("#", b.level), b.text.markdown())
	case paragraph:
		fmt.Fprintln(w, first(b.text.markdown()))
	case list:
		markdownItems(w, b.items, "")
	case code:
		fmt.Fprintf(w, "```\n%s\n```\n", b.text[0].text)
	case grid:
		b.table.markdown(w)
	}
}

func markdownItems(w *bufio.Writer, items []item, indent string) {
	for _, i := range items {
		fmt.Fprintln(w, indent+"- "+first(i.text.markdown()))
		markdownItems(w, i.items, indent+"  ")
	}
}

func (t *table) markdown(w *bufio.Writer) {
	fmt.Fprintln(w, "| "+strings.Join(t.heads, " | ")+" |")
	fmt.Fprintln(w, "|"+strings.Repeat(" --- |", len(t.heads)))
	for _, row := range t.rows {
		cells := make([]string, len(row))
		for i, c := range row {
			cells[i] = strings.ReplaceAll(c.markdown(), "|", `\|`)
		}
		fmt.Fprintln(w, "| "+strings.Join(cells, " | ")+" |")
	}
}

// marks are what Markdown would read as more than text.
var marks = strings.NewReplacer(`\`, `\\`, "*", `\*`, "_", `\_`, "`", "\\`", "<", "&lt;", ">", "&gt;", "[", `\[`, "]", `\]`, "&", "&amp;")

func (l line) markdown() string {
	var b strings.Builder
	for _, s := range l {
		text := marks.Replace(s.text)
		switch {
		case s.code:
			text = "`" + s.text + "`"
		case s.strong:
			text = "**" + text + "**"
		}
		if s.link != "" {
			text = "[" + text + "](#" + s.link + ")"
		}
		b.WriteString(text)
	}
	return b.String()
}

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
