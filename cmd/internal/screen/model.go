package screen

import (
	"context"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"underfoot/assess"
	"underfoot/assess/result"
	"underfoot/rules/interview"
)

// A model is the state of the screen. The panes lie on each other: the
// question at the bottom, above it what is asked about its answer, or help.
type model struct {
	*Interview
	theme         *theme
	prompt        interview.Prompt
	panes         []*pane
	notice        string // what is wrong with the last key or answer
	tally         tally
	settled       bool          // the verdict waited for nothing, and that was said
	detail        assess.Answer // basis, instrument and note for the answer to come
	width, height int
	resting       bool // Enter does nothing yet: what is asked has only just appeared
	rests         int
	done          bool
	err           error
}

// say is a sentence in the language of the person.
func (m *model) say(key string, pairs ...any) string { return m.Language.Text(key, pairs...) }

// example shows what may be written; empty where there is no example.
func (m *model) example(text string) string {
	if text == "" {
		return ""
	}
	return m.say("screen/say.example", "example", text)
}

// A tally is how far the interview has come.
type tally struct {
	answered, waiting, later int
	span                     result.Span
}

func newModel(i *Interview) *model {
	m := &model{Interview: i, theme: newTheme(i.Color)}
	m.next()
	m.resting = false // the first question has been waited for
	return m
}

// Init has nothing to do: the first question stands.
func (m *model) Init() tea.Cmd { return nil }

// rest is how long Enter does nothing after a question has appeared: nobody
// reads faster, and a key pressed twice answers once.
const rest = 250 * time.Millisecond

// rested says that a rest is over, unless another began since.
type rested int

// Update takes a key, a new size of the window, the end of a rest or of the input.
func (m *model) Update(msg tea.Msg) (tea.Model, tea.Cmd) {
	if m.done {
		return m, tea.Quit
	}
	before := m.rests
	switch msg := msg.(type) {
	case tea.WindowSizeMsg:
		m.width, m.height = msg.Width, msg.Height
		m.build()
	case rested:
		m.resting = m.resting && int(msg) != m.rests
	case ended:
		m.quit(ErrStopped)
	case tea.KeyMsg:
		m.key(msg)
	}
	switch serial := m.rests; {
	case m.done:
		return m, tea.Quit
	case serial != before:
		return m, tea.Tick(rest, func(time.Time) tea.Msg { return rested(serial) })
	}
	return m, nil
}

// pause begins a rest.
func (m *model) pause() { m.resting, m.rests = true, m.rests+1 }

func (m *model) top() *pane { return m.panes[len(m.panes)-1] }

// asking reports whether the question itself is on top.
func (m *model) asking() bool { return len(m.panes) == 1 }

// open puts a pane on top.
func (m *model) open(p *pane) {
	m.panes, m.notice = append(m.panes, p), ""
	m.build()
	m.pause()
}

// shut takes the pane on top away.
func (m *model) shut() {
	m.panes = m.panes[:len(m.panes)-1]
	m.build()
}

// home takes away every pane but the question.
func (m *model) home() {
	m.panes, m.notice = m.panes[:1], ""
	m.build()
}

// build makes the field on top anew for the width of the window.
func (m *model) build() {
	if m.width > 0 {
		m.top().field.build(m.theme, m.width)
	}
}

func (m *model) quit(err error) { m.done, m.err = true, err }

// key does what a key says. What leaves works in a window of any size.
func (m *model) key(msg tea.KeyMsg) {
	act := m.action(msg)
	switch {
	case act == interrupt:
		m.quit(context.Canceled)
	case act == leave:
		m.quit(ErrStopped)
	case m.tooSmall():
	case act.takes() && m.resting:
		m.pause()
	default:
		m.resting = false
		if act != help {
			m.notice = ""
		}
		m.do(act, msg)
	}
}
