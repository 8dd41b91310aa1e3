// Package markdown writes a view as Markdown: headings with anchors that links
// point to, lists, and pipe tables.
package markdown

import (
	"bytes"
	"fmt"
	"io"
	"strings"

	"underfoot/reports"
)

// Write writes the view. The error is that of the writer.
func Write(w io.Writer, v *reports.View) error {
	var p printer
	p.view(v)
	if _, err := w.Write(p.Bytes()); err != nil {
		return fmt.Errorf("write Markdown: %w", err)
	}
	return nil
}

// A printer gathers the lines, so that a failing writer fails once.
type printer struct{ bytes.Buffer }

func (p *printer) view(v *reports.View) {
	p.heading(1, "", v.Title)
	p.paragraph(v.Subtitle)
	for _, banner := range v.Banners {
		p.paragraph("> " + literal(banner))
	}
	p.paras(v.Lead)
	p.gap()
	for _, s := range v.Sections {
		p.line("- " + link(reports.Link{Text: s.Heading, To: s.ID}))
	}
	for i := range v.Sections {
		s := &v.Sections[i]
		p.heading(2, s.ID, s.Heading)
		p.paras(s.Lead)
		for k := range s.Parts {
			p.part(&s.Parts[k])
		}
	}
}

func (p *printer) part(part *reports.Part) {
	level := 3
	if part.Heading != "" {
		p.heading(level, part.ID, part.Heading)
		level++
	}
	p.paras(part.Lead)
	if part.Table != nil {
		p.table(part.Table, level)
	}
}

// heading is a heading with an anchor before it where something may point to it.
func (p *printer) heading(level int, id, text string) {
	p.gap()
	if id != "" {
		p.line(anchor(id) + "\n")
	}
	p.line(strings.Repeat("#", level) + " " + literal(text))
}

func anchor(id string) string { return `<a id="` + id + `"></a>` }

// paras are paragraphs, and those with a label lines of a list.
func (p *printer) paras(list []reports.Para) {
	listed := false
	for _, para := range list {
		if para.Label == "" {
			p.paragraph(first(literal(para.Text)))
			listed = false
			continue
		}
		if !listed {
			p.gap()
		}
		listed = true
		if len(para.Links) == 0 {
			p.labelled(para.Label, literal(para.Text))
			continue
		}
		p.labelled(para.Label, links(para.Links, "\n"))
	}
}

func (p *printer) paragraph(text string) {
	if text != "" {
		p.gap()
		p.line(text)
	}
}

// labelled is one line of a list, with further lines as a list below it, set in
// as deep as the text has them.
func (p *printer) labelled(label, marked string) {
	lines := strings.Split(marked, "\n")
	if len(lines) == 1 {
		p.line(strings.TrimRight("- **"+literal(label)+":** "+marked, " "))
		return
	}
	p.line("- **" + literal(label) + ":**")
	for _, l := range lines {
		text := strings.TrimLeft(l, " ")
		p.line(l[:len(l)-len(text)] + "  - " + first(text))
	}
}

func (p *printer) line(text string) { p.WriteString(text + "\n") }

// gap is one empty line, and none at the top.
func (p *printer) gap() {
	if p.Len() > 0 && !bytes.HasSuffix(p.Bytes(), []byte("\n\n")) {
		p.WriteByte('\n')
	}
}
