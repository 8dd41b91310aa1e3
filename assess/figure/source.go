// Package figure holds the sourced numbers and tables that the program reckons
// with: one home for each number, with its unit, where it was read and how it
// is known.
package figure

// A Source is where a statement or a figure was read, and how it is known.
type Source struct {
	ID      string // of the citation, such as HZ01; empty for a figure's own source
	Title   string
	Edition string // edition and section
	Known   string // lookup, memory, common-practice or computed
}
