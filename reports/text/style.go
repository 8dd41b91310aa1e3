package text

import "underfoot/reports"

// A style is a terminal's own weight or inversion; no colour carries anything.
type style string

const (
	plain  style = ""
	strong style = "1"
	invert style = "1;7"
	faint  style = "2"
)

func styleOf(t reports.Tone) style {
	switch t {
	case reports.Urgent:
		return invert
	case reports.Waiting:
		return strong
	case reports.Quiet:
		return faint
	}
	return plain
}

func (p *printer) styled(text string, s style) string {
	if !p.color || s == plain || text == "" {
		return text
	}
	return "\x1b[" + string(s) + "m" + text + "\x1b[0m"
}
