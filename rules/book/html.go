package book

import (
	"bufio"
	_ "embed"
	"fmt"
	"html"
	"io"
	"strings"
)

//go:embed book.css
var sheet string

// html writes the document as one file that needs nothing else: no network, no
// script, no other file.
func (d *document) html(w io.Writer) error {
	b := bufio.NewWriter(w)
	fmt.Fprintf(b, `<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">
<title>%s</title>
<style>
%s</style>
</head>
<body>
<main>
`, html.EscapeString(d.blocks[0].text[0].text), sheet)
	for i := range d.blocks {
		d.blocks[i].html(b)
	}
	b.WriteString("</main>\n</body>\n</html>\n")
	return b.Flush()
}

func (b *block) html(w *bufio.Writer) {
	switch b.kind {
	case heading:
		id := ""
		if b.id != "" {
			id = ` id="` + html.EscapeString(b.id) + `"`
		}
		fmt.Fprintf(w, "<h%d%s>%s</h%d>\n", b.level, id, b.text.html(), b.level)
	case paragraph:
		fmt.Fprintf(w, "<p>%s</p>\n", b.text.html())
	case list:
		htmlItems(w, b.items)
	case code:
		fmt.Fprintf(w, "<pre><code>%s</code></pre>\n", html.EscapeString(b.text[0].text))
	case grid:
		b.table.html(w)
	}
}

func htmlItems(w *bufio.Writer, items []item) {
	w.WriteString("<ul>\n")
	for _, i := range items {
		w.WriteString("<li>" + i.text.html())
		if len(i.items) > 0 {
			w.WriteString("\n")
			htmlItems(w, i.items)
		}
		w.WriteString("</li>\n")
	}
	w.WriteString("</ul>\n")
}

func (t *table) html(w *bufio.Writer) {
	w.WriteString("<div class=\"wide\"><table>\n<thead><tr>")
	for _, h := range t.heads {
		fmt.Fprintf(w, `<th scope="col">%s</th>`, html.EscapeString(h))
	}
	w.WriteString("</tr></thead>\n<tbody>\n")
	for _, row := range t.rows {
		w.WriteString("<tr>")
		for i, c := range row {
			if i == 0 {
				fmt.Fprintf(w, `<th scope="row">%s</th>`, c.html())
				continue
			}
			fmt.Fprintf(w, "<td>%s</td>", c.html())
		}
		w.WriteString("</tr>\n")
	}
	w.WriteString("</tbody>\n</table></div>\n")
}

func (l line) html() string {
	var b strings.Builder
	for _, s := range l {
		text := html.EscapeString(s.text)
		switch {
		case s.code:
			text = "<code>" + text + "</code>"
		case s.strong:
			text = "<strong>" + text + "</strong>"
		}
		if s.link != "" {
			text = `<a href="#` + html.EscapeString(s.link) + `">` + text + "</a>"
		}
		b.WriteString(text)
	}
	return b.String()
}
