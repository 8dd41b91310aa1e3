package text

import (
	"strings"

	"underfoot/assess/plaintext"
	"underfoot/reports"
)

func (p *printer) view(v *reports.View) {
	p.paragraph("", v.Title, strong)
	p.paragraph("", v.Subtitle, plain)
	for _, banner := range v.Banners {
		p.gap()
		p.hanging("* ", banner, 2, plain)
	}
	p.paras(v.Lead)
	for i := range v.Sections {
		if s := &v.Sections[i]; p.all || !s.Detail {
			p.section(s)
		}
	}
	if !p.all {
		p.gap()
		p.paragraph("", v.Language.Text("report/view.more"), faint)
	}
}

func (p *printer) section(s *reports.Section) {
	p.gap()
	p.paragraph("", strings.ToUpper(s.Heading), strong)
	p.line("", strings.Repeat("=", min(p.width, plaintext.Width(s.Heading))), plain)
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
		p.line("", strings.Repeat("-", min(p.width, plaintext.Width(part.Heading))), plain)
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

// labelled prints a label and its text behind it, further lines set in; a text
// of several lines becomes a list below the label.
func (p *printer) labelled(indent, label, text string, s style) {
	if strings.Contains(text, "\n") {
		p.line(indent, label+":", s)
		for l := range strings.SplitSeq(text, "\n") {
			set := indent + l[:len(l)-len(strings.TrimLeft(l, " "))]
			p.hanging(set+"  - ", l, len(set)+4, plain)
		}
		return
	}
	whole := label + ": " + text
	if text == "" {
		whole = label
	}
	p.lead(indent, label, whole, s)
}

// lead prints a text of which the first words, head, are set in a style.
func (p *printer) lead(indent, head, whole string, s style) {
	for i, l := range plaintext.Wrap(whole, p.width-len(indent)-2) {
		if rest, ok := strings.CutPrefix(l, head); ok && i == 0 {
			p.out.WriteString(indent + p.styled(head, s) + rest + "\n")
			continue
		}
		if i > 0 {
			l = "  " + l
		}
		p.line(indent, l, plain)
	}
}

func (p *printer) paragraph(indent, text string, s style) {
	for _, l := range plaintext.Wrap(text, p.width-len(indent)) {
		p.line(indent, l, s)
	}
}

// hanging prints a text behind a first word, further lines set in by n columns.
func (p *printer) hanging(first, text string, n int, s style) {
	for i, l := range plaintext.Wrap(text, p.width-n) {
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
