// Package page writes a view as one HTML file that needs nothing else: no
// network, no script, no other file.
package page

import (
	"io"

	"underfoot/reports"
)

// Options say how the page is set.
type Options struct {
	Paper string // letter or a4, for printing; empty is letter
}

// Write writes the page.
func Write(w io.Writer, v *reports.View, o Options) error {
	return nil
}
