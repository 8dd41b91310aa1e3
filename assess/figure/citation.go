package figure

import (
	_ "embed"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"maps"
	"slices"
	"strings"
	"sync"

	"underfoot/assess/message"
)

//go:embed citations.csv
var citationsCSV string

// A Citation is a statement of the trade, the law or a safety agency that a
// rule or a caution leans on.
type Citation struct {
	Source
	States message.Message // what the source says, in one or two sentences
}

// citations is read when the first one is asked for: most runs print few.
var citations = sync.OnceValue(func() map[string]Citation {
	all, err := readCitations(strings.NewReader(citationsCSV))
	if err != nil {
		panic("citations.csv: " + err.Error())
	}
	return all
})

// Cite finds the citation of an id such as HZ01; ok is false where there is none.
func Cite(id string) (c Citation, ok bool) {
	c, ok = citations()[id]
	return c, ok
}

// CitationIDs are the ids of all citations, sorted.
func CitationIDs() []string { return slices.Sorted(maps.Keys(citations())) }

// columns are the columns of citations.csv.
var columns = []string{"id", "title", "edition", "known"}

// readCitations reads citations and gives every fault at once.
func readCitations(r io.Reader) (map[string]Citation, error) {
	rows, err := csv.NewReader(r).ReadAll()
	if err != nil {
		return nil, err
	}
	if len(rows) == 0 || !slices.Equal(rows[0], columns) {
		return nil, fmt.Errorf("the columns are %s", strings.Join(columns, ", "))
	}
	all := make(map[string]Citation, len(rows))
	var faults []error
	for i, row := range rows[1:] {
		c := Citation{Source{row[0], row[1], row[2], row[3]}, message.New("citation/states." + row[0])}
		if _, twice := all[c.ID]; twice {
			faults = append(faults, fmt.Errorf("line %d: %s stands twice", i+2, c.ID))
		}
		if c.ID == "" || c.Title == "" {
			faults = append(faults, fmt.Errorf("line %d: id and title must be there", i+2))
		}
		if !slices.Contains(ways, c.Known) {
			faults = append(faults, fmt.Errorf("line %d: known is one of %s, not %q", i+2, strings.Join(ways, ", "), c.Known))
		}
		all[c.ID] = c
	}
	return all, errors.Join(faults...)
}
