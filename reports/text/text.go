// Package text prints a view for a terminal, a pipe or a plain file.
package text

import (
	"bytes"
	"fmt"
	"io"

	"underfoot/reports"
)

// Options say how much is printed and how.
type Options struct {
	Width int  // columns of a line; 0 is 80, and less than 30 counts as 30
	Color bool // weight and inversion beside the words that say the same
	All   bool // also calculations, answers, sources, sign-off and what is in order
}

const (
	usualWidth = 80
	leastWidth = 30
)

// Write prints the view. The error is that of the writer.
func Write(w io.Writer, v *reports.View, o Options) error {
	if o.Width == 0 {
		o.Width = usualWidth
	}
	o.Width = max(o.Width, leastWidth)
	p := printer{width: o.Width, color: o.Color, all: o.All}
	p.view(v)
	if _, err := w.Write(p.out.Bytes()); err != nil {
		return fmt.Errorf("print findings: %w", err)
	}
	return nil
}

// A printer gathers the lines, so that a failing writer fails once.
type printer struct {
	out        bytes.Buffer
	width      int
	color, all bool
}
