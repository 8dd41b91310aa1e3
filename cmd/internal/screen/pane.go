package screen

import (
	"strings"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/huh"

	"underfoot/assess/message"
	"underfoot/assess/plaintext"
)

// A pane is one thing on the screen: a sentence, what is said below it, and a
// field to answer in.
type pane struct {
	ask   string
	items []string // what stands in a list already
	said  []string
	hints []string // said where there is room for it, and in help
	field field
}

// A field is where a pane is answered.
type field interface {
	build(l *theme, width int)
	press(msg tea.KeyMsg)
	enter(m *model)
	holdsText() bool
	// lines are at most height lines as they are shown, and what to say of
	// those that are left out.
	lines(height int) (shown []string, rest message.Message)
}

// An entry is a line to write in. What was written outlives the building.
type entry struct {
	text    string
	example string // in the line while nothing is written
	took    func(text string)
	input   *huh.Input
}

// longest is how many characters an answer may have; a reading needs far fewer.
const longest = 200

func (e *entry) build(l *theme, width int) {
	e.input = huh.NewInput().Prompt("> ").CharLimit(longest).Value(&e.text)
	if e.example != "" {
		e.input.Placeholder(e.example)
	}
	e.input.WithTheme(l.theme).WithKeyMap(fieldKeys).WithWidth(width)
	// The command would make the cursor blink; a steady one disturbs nobody.
	_ = e.input.Focus()
}

// press gives the key to the field. Its commands (blinking, the next field of a
// form, the clipboard) are not wanted.
func (e *entry) press(msg tea.KeyMsg) {
	if msg.Type == tea.KeyRunes {
		if msg.Runes = []rune(plaintext.Line(string(msg.Runes))); len(msg.Runes) == 0 {
			return
		}
	}
	if e.input != nil {
		_, _ = e.input.Update(msg)
	}
}

func (e *entry) enter(*model) { e.took(strings.TrimSpace(e.text)) }

func (e *entry) holdsText() bool { return e.text != "" }

func (e *entry) lines(int) ([]string, message.Message) {
	return strings.Split(e.input.View(), "\n"), message.Message{}
}
