package figure

import (
	"maps"
	"math"
	"slices"
	"strconv"

	"underfoot/assess/message"
	"underfoot/assess/quantity"
)

// Stricter is the direction in which a figure asks more of a floor.
type Stricter int8

// The directions. Neither: a plain property, which no local pack may change.
const (
	Neither Stricter = iota
	Higher
	Lower
)

// String is the word that figures.toml uses.
func (s Stricter) String() string { return directions[s] }

// A Figure is one sourced number, in the base unit of its dimension.
type Figure struct {
	ID        string // lower snake case; conditions name it figure.ID
	Value     float64
	Dimension quantity.Dimension
	Stricter  Stricter
	Region    string // the region that the value is for, or universal
	Source    Source
	noted     bool // see Note
	disputed  bool // see Differs
}

// What says what the figure is.
func (f Figure) What() message.Message { return message.New("figure/what." + f.ID) }

// Note is what is to be known of the value as shipped, or nothing.
func (f Figure) Note() (m message.Message) {
	if f.noted {
		m = message.New("figure/note." + f.ID + "." + f.Region)
	}
	return m
}

// Differs is the other side of a contradiction between sources, with its
// source; nothing where none is known.
func (f Figure) Differs() (m message.Message) {
	if f.disputed {
		m = message.New("figure/differs." + f.ID + "." + f.Region)
	}
	return m
}

// A Table is the figures of one region, tightened by whatever packs are loaded.
type Table struct {
	Region  string
	figures map[string]Figure
}

// Regions are the countries that a figure may have a value of its own for.
var Regions = []string{"us", "ca", "uk", "ie", "au", "nz", "de", "eu", "other"}

// For is the table of a region. A region that is not said, or none of Regions,
// reads as us where the reader measures in inches and as other where he
// measures in millimetres.
func For(region string, sys quantity.System) *Table {
	if !slices.Contains(Regions, region) {
		region = map[quantity.System]string{quantity.US: "us", quantity.Metric: "other"}[sys]
	}
	return shipped().table(region)
}

// Figure is the figure of an id; ok is false where there is none.
func (t *Table) Figure(id string) (f Figure, ok bool) {
	f, ok = t.figures[id]
	return f, ok
}

// IDs are the ids of every figure, sorted.
func (t *Table) IDs() []string { return slices.Sorted(maps.Keys(t.figures)) }

// Tighten is the table with a stricter value, in the base unit, for one figure;
// t stays as it is. It refuses an id that is not there, a value that relaxes
// the figure or is no number, a figure that is a plain property, and a source
// without title, without edition and section, or with an unknown word for how
// it is known.
func (t *Table) Tighten(id string, value float64, src Source) (*Table, error) {
	f, ok := t.figures[id]
	if ok && f.Looser(value) {
		return nil, message.New("figure/change."+f.Stricter.String(), "figure", id, "value", f.text()).Err()
	}
	return t.with(id, value, src)
}

// Relax is the table with a less strict value for one figure. It refuses what
// Tighten refuses, but for the direction: whether the figure may be relaxed at
// all is for the rules to say.
func (t *Table) Relax(id string, value float64, src Source) (*Table, error) {
	f, ok := t.figures[id]
	if ok && f.Stricter != Neither && !f.Looser(value) {
		return nil, message.New("figure/change.not_relaxed", "figure", id, "value", f.text()).Err()
	}
	return t.with(id, value, src)
}

// with is the table with another value for one figure.
func (t *Table) with(id string, value float64, src Source) (*Table, error) {
	f, ok := t.figures[id]
	switch {
	case !ok:
		return nil, message.New("figure/change.no_figure", "figure", strconv.Quote(id)).Err()
	case math.IsNaN(value) || math.IsInf(value, 0):
		return nil, message.New("figure/change.no_number", "figure", id).Err()
	case f.Stricter == Neither:
		return nil, message.New("figure/change.plain", "figure", id).Err()
	}
	if faults := src.Faults(); len(faults) > 0 {
		return nil, message.New("figure/change.source", "figure", id, "fault", faults[0]).Err()
	}
	f.Value, f.Source = value, src
	changed := &Table{t.Region, maps.Clone(t.figures)}
	changed.figures[id] = f
	return changed, nil
}

// Looser reports whether a value, in the base unit, asks less of a floor than
// the figure does.
func (f Figure) Looser(value float64) bool {
	return f.Stricter == Higher && value < f.Value || f.Stricter == Lower && value > f.Value
}

// Read is a value for the figure as a record writes it, in the base unit. A
// figure is one number: a range is refused.
func (f Figure) Read(text string) (float64, error) {
	r, err := quantity.Read(f.Dimension, text, quantity.US)
	if err == nil && !r.IsPoint() {
		err = message.New("figure/change.range", "text", strconv.Quote(text)).Err()
	}
	return r.Lo, err
}

// text is the value in US units, as an error prints it.
func (f Figure) text() string {
	return quantity.Write(f.Dimension, quantity.Point(f.Value), quantity.US)
}
