package figure

import (
	_ "embed"
	"errors"
	"fmt"
	"regexp"
	"slices"
	"strings"
	"sync"

	"underfoot/assess/datafile"
	"underfoot/assess/quantity"
)

//go:embed figures.toml
var figuresTOML []byte

// shipped is the book built into the program; a fault in it is a programming
// error, which a test finds before a reader does.
var shipped = sync.OnceValue(func() *book {
	b, err := readBook(figuresTOML)
	if err != nil {
		panic("figures.toml: " + err.Error())
	}
	return b
})

// universal is the region of a value that holds where a country has none of
// its own.
const universal = "universal"

// A book is every figure with its values by region.
type book struct {
	figures []record
}

// A record is a figure as figures.toml holds it.
type record struct {
	ID        string  `toml:"id"`
	Dimension string  `toml:"dimension"`
	Stricter  string  `toml:"stricter"`
	Values    []value `toml:"value"`

	byRegion map[string]Figure
}

// A value is one region's value of a figure.
type value struct {
	Region  string `toml:"region"`
	Value   string `toml:"value"`
	Source  string `toml:"source"`
	Edition string `toml:"edition"`
	Section string `toml:"section"`
	Known   string `toml:"known"`
	Note    bool   `toml:"note"`    // there is a sentence on the value
	Differs bool   `toml:"differs"` // there is a sentence on the other side
}

// readBook reads figures and gives every fault at once.
func readBook(data []byte) (*book, error) {
	var file struct {
		Figures []record `toml:"figure"`
	}
	if err := datafile.Decode("figures.toml", data, &file); err != nil {
		return nil, err
	}
	var faults []error
	seen := map[string]bool{}
	for i := range file.Figures {
		r := &file.Figures[i]
		if seen[r.ID] {
			faults = append(faults, fmt.Errorf("figure %s stands twice", r.ID))
		}
		seen[r.ID] = true
		faults = append(faults, r.settle()...)
	}
	return &book{file.Figures}, errors.Join(faults...)
}

// table is the figures of one region.
func (b *book) table(region string) *Table {
	t := &Table{region, make(map[string]Figure, len(b.figures))}
	for _, r := range b.figures {
		f, own := r.byRegion[region]
		if !own {
			f = r.byRegion[universal]
		}
		t.figures[r.ID] = f
	}
	return t
}

// idForm is the form of a figure's id.
var idForm = regexp.MustCompile(`^[a-z][a-z0-9]*(_[a-z0-9]+)*$`)

// directions are the words for Stricter, in its order.
var directions = []string{"neither", "higher", "lower"}

// settle turns the record's values into figures and gives every fault found.
func (r *record) settle() []error {
	blank, faults := r.heading()
	r.byRegion = make(map[string]Figure, len(r.Values))
	for _, v := range r.Values {
		if _, twice := r.byRegion[v.Region]; twice {
			faults = append(faults, fmt.Errorf("two values for region %s", v.Region))
		}
		f, errs := v.settle(blank)
		for _, err := range errs {
			faults = append(faults, fmt.Errorf("region %q: %w", v.Region, err))
		}
		r.byRegion[v.Region] = f
	}
	if missing := r.missing(); len(missing) > 0 {
		faults = append(faults, fmt.Errorf("no value for %s", strings.Join(missing, ", ")))
	}
	for i, err := range faults {
		faults[i] = fmt.Errorf("figure %s: %w", r.ID, err)
	}
	return faults
}

// heading is the figure as far as it is the same in every region.
func (r *record) heading() (f Figure, faults []error) {
	if !idForm.MatchString(r.ID) {
		faults = append(faults, errors.New("an id is lower case words joined by _"))
	}
	dimension, ok := quantity.ParseDimension(r.Dimension)
	if !ok {
		faults = append(faults, fmt.Errorf("%q is no dimension", r.Dimension))
	}
	stricter := slices.Index(directions, r.Stricter)
	if stricter < 0 {
		faults = append(faults, fmt.Errorf("stricter is higher, lower or neither, not %q", r.Stricter))
	}
	return Figure{ID: r.ID, Dimension: dimension, Stricter: Stricter(stricter)}, faults
}

// missing are the regions for which the record has no value.
func (r *record) missing() []string {
	if _, all := r.byRegion[universal]; all {
		return nil
	}
	return slices.DeleteFunc(slices.Clone(Regions), func(region string) bool {
		_, has := r.byRegion[region]
		return has
	})
}

// settle is the figure with what is the region's own, and every fault found.
func (v value) settle(f Figure) (Figure, []error) {
	var faults []error
	if v.Region != universal && !slices.Contains(Regions, v.Region) {
		faults = append(faults, errors.New("no such region"))
	}
	number, err := f.Read(v.Value)
	if err != nil {
		faults = append(faults, err)
	}
	f.Region, f.Value, f.noted, f.disputed = v.Region, number, v.Note, v.Differs
	f.Source = Source{Title: v.Source, Edition: joined(v.Edition, v.Section), Known: v.Known}
	for _, fault := range f.Source.Faults() {
		faults = append(faults, fault.Err())
	}
	return f, faults
}

// joined is edition and section in one, whichever are there.
func joined(edition, section string) string {
	if edition == "" || section == "" {
		return edition + section
	}
	return edition + ", " + section
}
