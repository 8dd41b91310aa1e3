package figure

import (
	_ "embed"
	"encoding/csv"
	"fmt"
	"slices"
	"strconv"
	"strings"
	"sync"

	"underfoot/assess/quantity"
)

// The lumber tables: design values by species and grade, dressed sizes and the
// factors on bending strength. Each row says where it was read.
var (
	//go:embed lumber.csv
	lumberCSV string
	//go:embed lumber_sizes.csv
	sizesCSV string
	//go:embed lumber_factors.csv
	factorsCSV string

	lumberRows = sync.OnceValue(func() []row { return readRows(lumberCSV, "species", "grade", "depth", "property") })
	sizeRows   = sync.OnceValue(func() []row { return readRows(sizesCSV, "nominal") })
	factorRows = sync.OnceValue(func() []row { return readRows(factorsCSV, "factor", "species", "thickness", "depth") })
)

// A Property names one design value of lumber.
type Property string

// Stiffness is the modulus of elasticity E, Bending the bending strength Fb,
// Shear the shear strength Fv; all in pounds per square inch, before any factor.
const (
	Stiffness Property = "E"
	Bending   Property = "Fb"
	Shear     Property = "Fv"
)

// LumberValue is a design value of a species and grade. The size is a nominal
// one such as 2x10, or empty: it matters only to the bending strength of
// southern pine, whose table has the size built in. A strength class such as
// c24 has no species, and stiffness only. The value is in psi; ok is false for
// a combination that no table has.
func LumberValue(species, grade, size string, p Property) (f Figure, ok bool) {
	_, depth, _ := strings.Cut(size, "x")
	for _, r := range lumberRows() {
		if r.keys[0] != species || r.keys[1] != grade || r.keys[3] != string(p) {
			continue
		}
		if r.keys[2] == "" || r.keys[2] == depth || p == Stiffness {
			return r.figure(quantity.Strength), true
		}
	}
	return Figure{}, false
}

// older marks the design values of earlier editions. Old span tables can be
// checked with them; no floor is judged by them.
const older = "-before-"

// Species are the species groups in the order of the table. A strength class
// has none.
func Species() []string {
	var names []string
	for _, r := range lumberRows() {
		if s := r.keys[0]; s != "" && !strings.Contains(s, older) && !slices.Contains(names, s) {
			names = append(names, s)
		}
	}
	return names
}

// Grades are the grades of a species group, best first; for no species the
// strength classes.
func Grades(species string) []string {
	var names []string
	for _, r := range lumberRows() {
		if g := r.keys[1]; r.keys[0] == species && !slices.Contains(names, g) {
			names = append(names, g)
		}
	}
	slices.SortStableFunc(names, func(a, b string) int { return strings.Compare(best(a), best(b)) })
	return names
}

// best sorts select-structural before the numbered grades.
func best(grade string) string { return strings.Replace(grade, "select-structural", "n", 1) }

// Dressed is the true width and depth of a nominal size such as 2x10, surfaced
// dry, in inches. Old joists were often sawn full size: a measured one has precedence.
func Dressed(nominal string) (width, depth float64, ok bool) {
	for _, r := range sizeRows() {
		if r.keys[0] == nominal {
			return r.number("width"), r.number("depth"), true
		}
	}
	return 0, 0, false
}

// Sizes are the nominal sizes of the table.
func Sizes() []string {
	var names []string
	for _, r := range sizeRows() {
		names = append(names, r.keys[0])
	}
	return names
}

// DressedSource is where the size of a nominal piece was read.
func DressedSource() Source { return sizeRows()[0].source() }

// SizeFactor is the factor on bending strength for a nominal size: the row of
// its thickness for that depth, or for the deepest one where it is deeper than
// all. Southern pine has rows of its own, since its table has the size built in.
func SizeFactor(species, nominal string) (f Figure, ok bool) {
	thickness, deep, _ := strings.Cut(nominal, "x")
	depth, err := strconv.Atoi(deep)
	if err != nil {
		return Figure{}, false
	}
	own := ""
	if strings.HasPrefix(species, "southern-pine") {
		own = "southern-pine"
	}
	for _, r := range factorRows() {
		if r.keys[0] != "size" || r.keys[1] != own || !slices.Contains(strings.Fields(r.keys[2]), thickness) {
			continue
		}
		f, ok = r.figure(quantity.Number), true
		if d, _ := strconv.Atoi(r.keys[3]); depth <= d {
			break
		}
	}
	return f, ok
}

// RepetitiveFactor is the factor on bending strength of three or more joists
// at most 24 inches apart under one deck.
func RepetitiveFactor() Figure { return LumberFactor("repetitive") }

// LumberFactor is a factor that no species or size changes, by its word in the
// table: wet-stiffness, creep-dry, spread and so on. A word that the table does
// not have is a programming error and panics.
func LumberFactor(name string) Figure {
	for _, r := range factorRows() {
		if r.keys[0] == name {
			return r.figure(quantity.Number)
		}
	}
	panic("figure: no factor " + name)
}

// A row is one line of an embedded table, with the columns that find it first.
type row struct {
	keys    []string
	columns map[string]string
}

// readRows reads an embedded table; one that cannot be read is a programming
// error and panics.
func readRows(text string, keys ...string) []row {
	records, err := csv.NewReader(strings.NewReader(text)).ReadAll()
	if err != nil {
		panic("figure: " + err.Error())
	}
	var rows []row
	for _, record := range records[1:] {
		r := row{columns: make(map[string]string, len(record))}
		for i, cell := range record {
			r.columns[records[0][i]] = cell
		}
		for _, k := range keys {
			r.keys = append(r.keys, r.columns[k])
		}
		rows = append(rows, r)
	}
	return rows
}

// psiPerKiloNewton is one kN/mm2 in pounds per square inch: 1000 N over
// 0.45359237 kg x 9.80665 m/s2, times the square millimetres of a square inch.
const psiPerKiloNewton = 1000 / (0.45359237 * 9.80665) * 25.4 * 25.4

func (r row) number(column string) float64 {
	v, err := strconv.ParseFloat(r.columns[column], 64)
	if err != nil {
		panic(fmt.Sprintf("figure: %v: %v", r.keys, err))
	}
	return v
}

func (r row) figure(dim quantity.Dimension) Figure {
	v := r.number("value")
	if r.columns["unit"] == "kN/mm2" {
		v *= psiPerKiloNewton
	}
	return Figure{ID: strings.Join(slices.DeleteFunc(slices.Clone(r.keys), func(k string) bool { return k == "" }), " "),
		Value: v, Dimension: dim, Region: "universal", Source: r.source()}
}

func (r row) source() Source {
	return Source{Title: r.columns["source"], Edition: strings.Trim(r.columns["edition"]+", "+r.columns["section"], ", "), Known: r.columns["known"]}
}
