package figure

import "underfoot/assess/quantity"

// Stricter is the direction in which a figure asks more of a floor.
type Stricter int8

// The directions. Neither: a plain property, which no local pack may change.
const (
	Neither Stricter = iota
	Higher
	Lower
)

// A Figure is one sourced number, in the base unit of its dimension.
type Figure struct {
	ID        string // lower snake case; conditions name it figure.ID
	What      string
	Value     float64
	Dimension quantity.Dimension
	Stricter  Stricter
	Region    string // the region that the value is for, or universal
	Source    Source
	Note      string
	Differs   string // the other side of a contradiction, with its source; empty where none is known
}

// A Table is the figures of one region, tightened by whatever packs are loaded.
type Table struct {
	Region  string
	figures map[string]Figure
}
