package figure

import (
	"errors"
	"fmt"
	"slices"
	"strings"
)

// A Source is where a statement or a figure was read, and how it is known.
type Source struct {
	ID      string // of the citation, such as HZ01; empty for a figure's own source
	Title   string
	Edition string // edition and section
	Known   string // lookup, memory, common-practice or computed
}

// ways are the words for how something is known: read in the source or a named
// transcription; recalled; held by the trade without a published source;
// reckoned from figures that were looked up.
var ways = []string{"lookup", "memory", "common-practice", "computed"}

// Check is an error that names everything the source lacks; nil where it is whole.
func (s Source) Check() error { return errors.Join(s.faults()...) }

// faults is what a figure's source lacks.
func (s Source) faults() (faults []error) {
	if s.Title == "" {
		faults = append(faults, errors.New("source is missing"))
	}
	if s.Edition == "" {
		faults = append(faults, errors.New("edition and section are missing"))
	}
	if !slices.Contains(ways, s.Known) {
		faults = append(faults, fmt.Errorf("known is one of %s, not %q", strings.Join(ways, ", "), s.Known))
	}
	return faults
}
