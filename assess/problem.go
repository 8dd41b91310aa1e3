package assess

import (
	"fmt"
	"strings"
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
	Place string // file:line:column, an address, or empty
	What  string // lower case, no full stop
	Hint  string // the next step, or empty
	Lines string // the offending line with a caret below it, or empty
	Cause error
}

// Error is place and what; the hint and the lines are printed by Report.
func (p *Problem) Error() string {
	if p.Place == "" {
		return p.What
	}
	return p.Place + ": " + p.What
}

// Unwrap is the cause.
func (p *Problem) Unwrap() error { return p.Cause }

// Report is the whole problem for a reader, on as many lines as it needs.
func (p *Problem) Report() string {
	var b strings.Builder
	b.WriteString(p.Error())
	if p.Lines != "" {
		b.WriteString("\n" + p.Lines)
	}
	if p.Hint != "" {
		fmt.Fprintf(&b, "\n  hint: %s", p.Hint)
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
