// Package console is the program's way to the person in front of it: three
// streams, how wide the screen is, whether colour is wanted, and what day it
// is. Results go to Out, everything else to Err.
package console

import (
	"io"
	"os"
	"strconv"

	"golang.org/x/term"
)

// Streams are where input comes from and where output goes.
type Streams struct {
	In  io.Reader
	Out *Checked
	Err io.Writer

	inTerminal, outTerminal, errTerminal bool
	outFd                                int // of a terminal, or -1
	noColor                              bool
	env                                  func(string) string
}

// System is the streams of the process. Colour is off where the flag or the
// environment says so.
func System(noColor bool) *Streams {
	return &Streams{
		In: os.Stdin, Out: &Checked{w: os.Stdout}, Err: os.Stderr,
		inTerminal:  term.IsTerminal(int(os.Stdin.Fd())),
		outTerminal: term.IsTerminal(int(os.Stdout.Fd())),
		errTerminal: term.IsTerminal(int(os.Stderr.Fd())),
		outFd:       int(os.Stdout.Fd()),
		noColor:     noColor,
		env:         os.Getenv,
	}
}

// Over is streams over any reader and writers, none of them a terminal.
func Over(in io.Reader, out, err io.Writer, env func(string) string) *Streams {
	return &Streams{In: in, Out: &Checked{w: out}, Err: err, outFd: -1, env: env}
}

// InTerminal reports whether input is typed by a person.
func (s *Streams) InTerminal() bool { return s.inTerminal }

// OutTerminal reports whether output goes to a screen.
func (s *Streams) OutTerminal() bool { return s.outTerminal }

// ErrTerminal reports whether messages go to a screen.
func (s *Streams) ErrTerminal() bool { return s.errTerminal }

// NoColor turns colour off, as the flag --no-color asks.
func (s *Streams) NoColor() { s.noColor = true }

// Color reports whether colour may be used on Out: it is a terminal that knows
// colour, and nobody turned it off.
func (s *Streams) Color() bool {
	return s.outTerminal && !s.noColor && s.env("NO_COLOR") == "" && s.env("TERM") != "dumb"
}

// PlainMode reports whether questions are asked line by line rather than on a
// screen: somebody asked for it, or there is no screen that can do more.
func (s *Streams) PlainMode() bool {
	accessible := s.env("ACCESSIBLE")
	return !s.inTerminal || !s.outTerminal || s.env("TERM") == "dumb" || accessible != "" && accessible != "0"
}

// The width of output, in columns.
const (
	defaultWidth = 80
	minWidth     = 20
)

// Width is the number of columns of the screen. Where Out is none it is that
// of COLUMNS, or else 80: a file reads the same on every machine.
func (s *Streams) Width() int {
	width, _ := s.Size()
	return width
}

// Size is the number of columns and lines of the screen; no lines where Out is
// no terminal.
func (s *Streams) Size() (width, height int) {
	if s.outTerminal {
		if w, h, err := term.GetSize(s.outFd); err == nil && w > 0 {
			return max(w, minWidth), h
		}
	}
	if w, err := strconv.Atoi(s.env("COLUMNS")); err == nil && w > 0 {
		return max(w, minWidth), 0
	}
	return defaultWidth, 0
}
