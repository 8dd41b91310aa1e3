package screen

import (
	"io"
	"strings"

	"github.com/charmbracelet/huh"
	"github.com/charmbracelet/lipgloss"
	"github.com/charmbracelet/x/ansi"
	"github.com/muesli/termenv"
)

// cursorMark stands before the row that Enter would take.
const cursorMark = "> "

// A look is how the screen is drawn. Colour and bold only repeat what a word,
// a mark or a place says; without colour only the writing cursor is turned.
type look struct {
	theme               *huh.Theme
	strong, soft, plain lipgloss.Style
}

// newLook draws with one colour of the terminal's own sixteen, for where the
// person is.
func newLook(color bool) *look {
	// The writer is never asked what it can do: asking would read from it.
	r := lipgloss.NewRenderer(io.Discard)
	r.SetColorProfile(termenv.ANSI)
	r.SetHasDarkBackground(true)
	l := &look{strong: r.NewStyle(), soft: r.NewStyle(), plain: r.NewStyle()}
	if color {
		l.strong, l.soft = l.strong.Bold(true), l.soft.Foreground(lipgloss.Color("6"))
	}
	l.theme = l.fields()
	return l
}

func (l *look) fields() *huh.Theme {
	s := huh.FieldStyles{Base: l.plain, Title: l.plain, Description: l.plain, SelectSelector: l.soft.SetString(cursorMark),
		SelectedOption: l.strong, UnselectedOption: l.plain, Option: l.plain}
	s.TextInput = huh.TextInputStyles{Cursor: l.plain, CursorText: l.plain, Placeholder: l.soft, Prompt: l.soft, Text: l.plain}
	return &huh.Theme{Focused: s, Blurred: s}
}

// wrap breaks a text into lines of at most so many columns, between words; a
// word that is longer is broken. An empty text is one empty line.
func wrap(text string, columns int) []string {
	columns = max(columns, 1)
	var lines []string
	line, used := "", 0
	for _, word := range strings.Fields(text) {
		size := ansi.StringWidth(word)
		if used > 0 && used+1+size <= columns {
			line, used = line+" "+word, used+1+size
			continue
		}
		if used > 0 {
			lines = append(lines, line)
		}
		parts := strings.Split(ansi.Hardwrap(word, columns, true), "\n")
		lines = append(lines, parts[:len(parts)-1]...)
		line = parts[len(parts)-1]
		used = ansi.StringWidth(line)
	}
	return append(lines, line)
}
