// Package data writes a result as the document `underfoot.findings/1`: one line
// of JSON for each record assessed, for programs to read.
package data

import (
	"encoding/json"
	"fmt"
	"io"

	"underfoot/assess"
)

// Format names the document and its version.
const Format = "underfoot.findings/1"

// Options say how much is written and how.
type Options struct {
	All    bool // also the findings that hold, do not apply or were not computed
	Indent bool // many indented lines instead of one
}

// Write writes the result as one JSON document and a line feed. Ranges are in
// the base unit of their quantity; an end that is not known is null. Addresses
// leave out the area, and the zone where the area has one.
func Write(w io.Writer, r *assess.Result, o Options) error {
	enc := json.NewEncoder(w)
	enc.SetEscapeHTML(false)
	if o.Indent {
		enc.SetIndent("", "  ")
	}
	if err := enc.Encode(newDocument(r, o.All)); err != nil {
		return fmt.Errorf("write findings as JSON: %w", err)
	}
	return nil
}
