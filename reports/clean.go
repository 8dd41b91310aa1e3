package reports

import (
	"regexp"
	"strings"
	"unicode"
)

// sequence is a terminal's escape sequence; what stands between its first byte
// and its last is no text either.
var sequence = regexp.MustCompile("\x1b(\\[[0-9:;<=>?]*[ -/]*[@-~]|\\][^\x07\x1b]*(\x07|\x1b\\\\)?)")

// Clean takes out what a terminal, a browser or an office program might obey
// rather than show: control characters, escape bytes and marks that turn the
// direction of writing. Line feeds stay; tabs become spaces; bytes that are no
// text become the replacement mark.
func Clean(text string) string {
	if plain(text) {
		return text
	}
	text = sequence.ReplaceAllString(text, "")
	text = strings.ToValidUTF8(strings.ReplaceAll(text, "\r\n", "\n"), "\uFFFD")
	return strings.Map(func(r rune) rune {
		switch {
		case r == '\n':
			return r
		case r == '\t' || r == '\r' || r == '\u2028' || r == '\u2029':
			return ' '
		case unicode.IsControl(r), unicode.Is(unicode.Bidi_Control, r), r == '\uFEFF', r == '\uFFFE', r == '\uFFFF':
			return -1
		}
		return r
	}, text)
}

// plain reports whether a text is printable ASCII and line feeds alone, which
// most are.
func plain(text string) bool {
	for i := range len(text) {
		if c := text[i]; c != '\n' && (c < ' ' || c > '~') {
			return false
		}
	}
	return true
}

// Clean cleans every text of the view, so that no format has to. Who makes a view
// does it last.
func (v *View) Clean() {
	cleanParas(v.Lead)
	for _, text := range []*string{&v.Title, &v.Subtitle} {
		*text = Clean(*text)
	}
	for i := range v.Banners {
		v.Banners[i] = Clean(v.Banners[i])
	}
	for i := range v.Sections {
		s := &v.Sections[i]
		cleanParas(s.Lead)
		for j := range s.Parts {
			s.Parts[j].clean()
		}
	}
}

func (p *Part) clean() {
	p.Heading = Clean(p.Heading)
	cleanParas(p.Lead)
	if p.Table != nil {
		for _, row := range p.Table.Rows {
			for i := range row.Cells {
				row.Cells[i].Text = Clean(row.Cells[i].Text)
				cleanLinks(row.Cells[i].Links)
			}
		}
	}
	if p.Calculation != nil {
		for i := range p.Calculation.Lines {
			l := &p.Calculation.Lines[i]
			l.What, l.Source = Clean(l.What), Clean(l.Source)
		}
	}
	if p.Build != nil {
		for i := range p.Build.Layers {
			l := &p.Build.Layers[i]
			l.Name, l.Source = Clean(l.Name), Clean(l.Source)
		}
	}
}

func cleanParas(list []Para) {
	for i := range list {
		list[i].Label, list[i].Text = Clean(list[i].Label), Clean(list[i].Text)
		cleanLinks(list[i].Links)
	}
}

func cleanLinks(list []Link) {
	for i := range list {
		list[i].Text, list[i].Note = Clean(list[i].Text), Clean(list[i].Note)
	}
}
