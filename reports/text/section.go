package text

import (
	"strings"

	"underfoot/reports"
)

func (p *printer) view(v *reports.View) {
	p.paragraph("", v.Title, strong)
	p.paragraph("", v.Subtitle, plain)
	for _, banner := range v.Banners {
		p.gap()
		p.hanging("* ", banner, 2, plain)
	}
	for i := range v.Sections {
		if s := &v.Sections[i]; p.all || !s.Detail {
			p.section(s)
		}
	}
	if !p.all {
		p.gap()
		p.paragraph("", v.Words.Say("view", "more"), faint)
	}
}

func (p *printer) section(s *reports.Section) {
	p.gap()
	p.paragraph("", strings.ToUpper(s.Heading), strong)
	p.line("", strings.Repeat("=", min(p.width, columns(s.Heading))), plain)
	p.paras(s.Lead)
	for i := range s.Parts {
		if part := &s.Parts[i]; p.all || !part.Detail {
			p.part(part)
		}
	}
}

func (p *printer) part(part *reports.Part) {
	if part.Heading != "" {
		p.gap()
		p.paragraph("", part.Heading, strong)
		p.line("", strings.Repeat("-", min(p.width, columns(part.Heading))), plain)
	}
	p.paras(part.Lead)
	if part.Table != nil {
		p.table(part.Table)
	}
}

func (p *printer) paras(list []reports.Para) {
	for _, para := range list {
		p.gap()
		if para.Label == "" {
			p.paragraph("", para.Text, plain)
			continue
		}
		p.labelled("", para.Label, para.Text, styleOf(para.Tone))
	}
}

// labelled prints a label and its text behind it, further lines set in.
func (p *printer) labelled(indent, label, text string, s style) {
	lines := wrap(label+": "+text, p.width-len(indent)-2)
	if text == "" {
		lines = wrap(label, p.width-len(indent)-2)
	}
	for i, l := range lines {
		if i == 0 {
			head, tail := l, ""
			if rest, ok := strings.CutPrefix(l, label); ok {
				head, tail = label, rest
			}
			p.out.WriteString(indent + p.styled(head, s) + tail + "\n")
			continue
		}
		p.line(indent+"  ", l, plain)
	}
}

func (p *printer) paragraph(indent, text string, s style) {
	for _, l := range wrap(text, p.width-len(indent)) {
		p.line(indent, l, s)
	}
}

// hanging prints a text behind a first word, further lines set in by n columns.
func (p *printer) hanging(first, text string, n int, s style) {
	for i, l := range wrap(text, p.width-n) {
		if i == 0 {
			p.line(first, l, s)
			continue
		}
		p.line(strings.Repeat(" ", n), l, s)
	}
}

func (p *printer) line(indent, text string, s style) {
	p.out.WriteString(strings.TrimRight(indent+p.styled(text, s), " ") + "\n")
}

// gap is one empty line, never two and none at the top.
func (p *printer) gap() {
	if b := p.out.Bytes(); len(b) > 0 && !strings.HasSuffix(string(b[max(0, len(b)-2):]), "\n\n") {
		p.out.WriteByte('\n')
	}
}
