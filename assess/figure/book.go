package figure

import (
	_ "embed"
	"errors"
	"fmt"
	"regexp"
	"slices"
	"strings"
	"sync"

	"github.com/pelletier/go-toml/v2"

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
	What      string  `toml:"what"`
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
	Note    string `toml:"note"`
	Differs string `toml:"differs"`
}

// readBook reads figures and gives every fault at once.
func readBook(data []byte) (*book, error) {
	var file struct {
		Figures []record `toml:"figure"`
	}
	d := toml.NewDecoder(strings.NewReader(string(data))).DisallowUnknownFields()
	if err := d.Decode(&file); err != nil {
		var strict *toml.StrictMissingError
		if errors.As(err, &strict) {
			return nil, errors.New(strict.String())
		}
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

// id is the form of a figure's id.
var id = regexp.MustCompile(`^[a-z][a-z0-9]*(_[a-z0-9]+)*$`)

// settle turns the record's values into figures and gives every fault found.
func (r *record) settle() (faults []error) {
	fault := func(format string, a ...any) {
		faults = append(faults, fmt.Errorf("figure %s: "+format, append([]any{r.ID}, a...)...))
	}
	if !id.MatchString(r.ID) {
		fault("an id is lower case words joined by _")
	}
	if r.What == "" {
		fault("what is missing: say what the figure is")
	}
	dimension, ok := quantity.ParseDimension(r.Dimension)
	if !ok {
		fault("%q is no dimension", r.Dimension)
	}
	stricter := slices.Index([]string{"neither", "higher", "lower"}, r.Stricter)
	if stricter < 0 {
		fault("stricter is higher, lower or neither, not %q", r.Stricter)
	}
	r.byRegion = make(map[string]Figure, len(r.Values))
	for _, v := range r.Values {
		if _, twice := r.byRegion[v.Region]; twice {
			fault("two values for region %s", v.Region)
		}
		f := Figure{ID: r.ID, What: r.What, Dimension: dimension, Stricter: Stricter(stricter), Region: v.Region}
		for _, err := range v.settle(&f) {
			fault("region %q: %w", v.Region, err)
		}
		r.byRegion[v.Region] = f
	}
	if missing := r.missing(); len(missing) > 0 {
		fault("no value for %s", strings.Join(missing, ", "))
	}
	return faults
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

// settle fills in what is the region's own of a figure and gives every fault found.
func (v value) settle(f *Figure) (faults []error) {
	fault := func(format string, a ...any) { faults = append(faults, fmt.Errorf(format, a...)) }
	if v.Region != universal && !slices.Contains(Regions, v.Region) {
		fault("no such region")
	}
	r, err := quantity.Read(f.Dimension, v.Value, quantity.US)
	switch {
	case err != nil:
		fault("%w", err)
	case !r.IsPoint():
		fault("%q is a range: a figure is one number", v.Value)
	}
	if v.Source == "" {
		fault("source is missing")
	}
	if v.Edition == "" && v.Section == "" {
		fault("edition and section are missing")
	}
	if !slices.Contains(ways, v.Known) {
		fault("known is one of %s, not %q", strings.Join(ways, ", "), v.Known)
	}
	f.Value, f.Note, f.Differs = r.Lo, v.Note, v.Differs
	f.Source = Source{Title: v.Source, Edition: joined(v.Edition, v.Section), Known: v.Known}
	return faults
}

// joined is edition and section in one, whichever are there.
func joined(edition, section string) string {
	if edition == "" || section == "" {
		return edition + section
	}
	return edition + ", " + section
}
