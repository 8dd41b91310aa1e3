package figure

import (
	_ "embed"
	"fmt"
	"slices"
	"sync"

	"underfoot/assess/datafile"
	"underfoot/assess/quantity"
)

// A Practice is what a country builds with, where the sums have to know it; see
// practices.toml.
type Practice struct {
	Regions      []string   `toml:"regions"`
	Inches       bool       `toml:"inches"`        // floors are measured in feet and inches
	VisualGrades bool       `toml:"visual_grades"` // lumber is sold by species and visual grade
	NewSpecies   string     `toml:"new_species"`   // of the wood of added pieces; empty for a strength class
	NewGrade     string     `toml:"new_grade"`
	Sheets       []string   `toml:"sheets"`     // words of deck.kind that are structural sheets here, beside the usual ones
	TotalLoad    bool       `toml:"total_load"` // under ceramic tile too the limit is meant for the total load
	Limits       CodeLimits `toml:"limits"`
}

// CodeLimits are what a code says of notches, holes and bearing of sawn joists.
type CodeLimits struct {
	Names   []string `toml:"names"` // of the sentences; none where none were read
	Title   string   `toml:"source"`
	Edition string   `toml:"edition"`
	Known   string   `toml:"known"`
}

// Source is where the limits were read.
func (l CodeLimits) Source() Source {
	return Source{Title: l.Title, Edition: l.Edition, Known: l.Known}
}

//go:embed practices.toml
var practicesTOML []byte

var practices = sync.OnceValue(func() map[string]Practice {
	var file struct {
		Practices []Practice `toml:"practice"`
	}
	datafile.MustDecode("practices.toml", practicesTOML, &file)
	by := map[string]Practice{}
	for _, p := range file.Practices {
		for _, region := range p.Regions {
			if _, twice := by[region]; twice || !slices.Contains(Regions, region) {
				panic(fmt.Sprintf("practices.toml: %q is no region, or stands twice", region))
			}
			by[region] = p
		}
	}
	return by
})

// System is the system of units in which a region measures floors; that of the
// US where no region is said.
func System(region string) quantity.System {
	if region == "" || PracticeOf(region).Inches {
		return quantity.US
	}
	return quantity.Metric
}

// PracticeOf is what a region builds with; one that is not among Regions has
// the practice of other.
func PracticeOf(region string) Practice {
	if p, ok := practices()[region]; ok {
		return p
	}
	return practices()["other"]
}
