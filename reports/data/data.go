// Package data writes results for programs to read, each as one line of JSON: the
// document `underfoot.findings/1` for a record assessed, `underfoot.comparison/1`
// for two visits, and the numbers of one joist.
package data

import (
	"encoding/json"
	"fmt"
	"io"

	"underfoot/assess/result"
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
func Write(w io.Writer, r *result.Result, o Options) error {
	return encode(w, newDocument(r, o.All), o.Indent)
}

// WriteComparison writes two visits as one JSON document and a line feed.
func WriteComparison(w io.Writer, c *result.Comparison, o Options) error {
	return encode(w, newComparison(c), o.Indent)
}

// WriteJoist writes what the sums say of one joist as one JSON document and a
// line feed. Lengths are in inches; an end that is not known is null.
func WriteJoist(w io.Writer, s *result.JoistSheet) error {
	return encode(w, tongue{s.Language}.joist(s), false)
}

// encode writes a document of the contract and a line feed. The error is that of
// the writer.
func encode(w io.Writer, document any, indent bool) error {
	enc := json.NewEncoder(w)
	enc.SetEscapeHTML(false)
	if indent {
		enc.SetIndent("", "  ")
	}
	if err := enc.Encode(document); err != nil {
		return fmt.Errorf("write JSON: %w", err)
	}
	return nil
}
