// Package screen holds an interview on a terminal: one question at a time on
// the whole screen, saved after every answer.
//
// One program runs from the first question to the last and hosts single fields
// of the form library, never its forms: the host takes Enter, Back and the
// function keys before a field sees them, and builds the field anew for every
// question and every size of the window. No line that says something of the
// floor is chosen beforehand, so that Enter alone never answers with a fact.
package screen

import (
	"context"
	"errors"
	"io"

	tea "github.com/charmbracelet/bubbletea"

	"underfoot/assess/message"
	"underfoot/assess/quantity"
	"underfoot/rules/interview"
)

// ErrStopped says that the person left before the end.
var ErrStopped = errors.New("stopped before the end")

// An Interview asks on a terminal.
type Interview struct {
	In       io.Reader // a terminal
	Out      io.Writer // a terminal, or a writer that unwraps to one
	Session  *interview.Session
	Language *message.Language
	System   quantity.System                // in which bare readings are read
	Save     func([]interview.Change) error // called after every answer
	Color    bool                           // words and marks say the same without
}

// Run asks until nothing is left to ask. It returns ErrStopped when the person
// leaves, context.Canceled when they press Ctrl-C, and whatever Save or the
// terminal returns.
func (i *Interview) Run(ctx context.Context) error {
	m := newModel(i)
	if m.done {
		return m.err
	}
	var program *tea.Program
	input := watch(i.In, func() { program.Send(ended{}) })
	program = tea.NewProgram(m, tea.WithContext(ctx), tea.WithInput(input), tea.WithOutput(terminal(i.Out)),
		tea.WithAltScreen(), tea.WithoutSignalHandler())
	_, err := program.Run()
	switch {
	case m.err != nil:
		return m.err
	case ctx.Err() != nil:
		return ctx.Err()
	}
	return err
}

// terminal is the file below a writer: the window's size is asked of it.
func terminal(w io.Writer) io.Writer {
	for {
		below, ok := w.(interface{ Unwrap() io.Writer })
		if !ok {
			return w
		}
		w = below.Unwrap()
	}
}
