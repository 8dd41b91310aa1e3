package figure

import (
	_ "embed"
	"encoding/csv"
	"strings"
	"sync"
)

// Where the formulas and the ends of the sums were read.
//
//go:embed methods.csv
var methodsCSV string

var methods = sync.OnceValue(func() map[string]Source {
	rows, err := csv.NewReader(strings.NewReader(methodsCSV)).ReadAll()
	if err != nil {
		panic("methods.csv: " + err.Error())
	}
	all := make(map[string]Source, len(rows))
	for _, r := range rows[1:] {
		s := Source{Title: r[1], Edition: r[2], Known: r[3]}
		if faults := s.Faults(); len(faults) > 0 {
			panic("methods.csv: " + r[0] + ": " + faults[0].String())
		}
		all[r[0]] = s
	}
	return all
})

// Method is where a formula, or the end up to which it holds, was read. An id
// that is not there is a programming error and panics.
func Method(id string) Source {
	s, ok := methods()[id]
	if !ok {
		panic("figure: there is no method " + id)
	}
	return s
}
