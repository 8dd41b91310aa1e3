package figure

import (
	"slices"
	"strconv"
	"strings"

	"underfoot/assess/message"
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

// Faults are what the source lacks; none where it is whole.
func (s Source) Faults() (faults []message.Message) {
	if s.Title == "" {
		faults = append(faults, message.New("figure/source.title"))
	}
	if s.Edition == "" {
		faults = append(faults, message.New("figure/source.edition"))
	}
	if !slices.Contains(ways, s.Known) {
		faults = append(faults, message.New("figure/source.known", "ways", strings.Join(ways, ", "), "known", strconv.Quote(s.Known)))
	}
	return faults
}
