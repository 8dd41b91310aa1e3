package assess

import (
	"strings"

	"underfoot/assess/message"
)

// A ProblemKind groups problems by what the reader can do about them; the
// command line turns it into an exit code.
type ProblemKind uint8

// The kinds of problem.
const (
	Internal ProblemKind = iota
	Usage                // a wrong flag, an unknown address, a refused value
	Stopped              // stopped before the end, answers saved
	Invalid              // a file, pack or line that cannot be read, or is newer
	Conflict             // changed or locked by another process
	IO                   // input or output failed, or a file is not there
	Interrupted
)

// A Problem is one thing that is wrong: where, what, and what to do next.
type Problem struct {
	Kind  ProblemKind
	Place string          // file:line:column, an address, or empty
	What  message.Message // lower case, no full stop
	Hint  message.Message // the next step, or nothing
	Lines string          // the offending line with a caret below it, or empty
	Cause error
}

// Error is place and what in English; Report says everything.
func (p *Problem) Error() string { return p.headline(message.English()) }

func (p *Problem) headline(l *message.Language) string {
	if p.Place == "" {
		return l.Say(p.What)
	}
	return p.Place + ": " + l.Say(p.What)
}

// Message is what is wrong, without its place.
func (p *Problem) Message() message.Message { return p.What }

// Unwrap is the cause.
func (p *Problem) Unwrap() error { return p.Cause }

// Report is the whole problem for a reader, on as many lines as it needs.
func (p *Problem) Report(l *message.Language) string {
	var b strings.Builder
	b.WriteString(p.headline(l))
	if p.Lines != "" {
		b.WriteString("\n" + p.Lines)
	}
	if !p.Hint.IsZero() {
		b.WriteString("\n  " + l.Text("problem/report.hint", "hint", p.Hint))
	}
	return b.String()
}

// Problems are all that is wrong with one input.
type Problems []*Problem

// Error is every problem on a line of its own.
func (ps Problems) Error() string {
	lines := make([]string, len(ps))
	for i, p := range ps {
		lines[i] = p.Error()
	}
	return strings.Join(lines, "\n")
}

// Err is nil for an empty list, so that it can be returned as an error.
func (ps Problems) Err() error {
	if len(ps) == 0 {
		return nil
	}
	return ps
}
