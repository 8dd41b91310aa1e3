package screen

import (
	"io"

	"github.com/charmbracelet/huh"
	"github.com/charmbracelet/lipgloss"
	"github.com/muesli/termenv"
)

// cursorMark stands before the row that Enter would take.
const cursorMark = "> "

// A theme is how the screen is drawn. Colour and bold only repeat what a word,
// a mark or a place says; without colour only the writing cursor is turned.
type theme struct {
	theme               *huh.Theme
	strong, soft, plain lipgloss.Style
}

// newTheme draws with one colour of the terminal's own sixteen, for where the
// person is.
func newTheme(color bool) *theme {
	// The writer is never asked what it can do: asking would read from it.
	r := lipgloss.NewRenderer(io.Discard)
	r.SetColorProfile(termenv.ANSI)
	r.SetHasDarkBackground(true)
	l := &theme{strong: r.NewStyle(), soft: r.NewStyle(), plain: r.NewStyle()}
	if color {
		l.strong, l.soft = l.strong.Bold(true), l.soft.Foreground(lipgloss.Color("6"))
	}
	l.theme = l.fields()
	return l
}

func (l *theme) fields() *huh.Theme {
	s := huh.FieldStyles{Base: l.plain, Title: l.plain, Description: l.plain, SelectSelector: l.soft.SetString(cursorMark),
		SelectedOption: l.strong, UnselectedOption: l.plain, Option: l.plain}
	s.TextInput = huh.TextInputStyles{Cursor: l.plain, CursorText: l.plain, Placeholder: l.soft, Prompt: l.soft, Text: l.plain}
	return &huh.Theme{Focused: s, Blurred: s}
}
