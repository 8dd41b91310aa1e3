// Package quantity holds what a number of the floor trade measures, the ranges
// such numbers may lie in, and the reading and printing of both the way people
// write them.
package quantity

// A Dimension is what a number measures. Each has one base unit, in which the
// program computes; other units are converted where text is read or printed.
type Dimension uint8

// The dimensions and their base units.
const (
	Number   Dimension = iota // a plain count or factor
	Length                    // inches
	Area                      // square feet
	Load                      // pounds per square foot
	Weight                    // pounds
	Strength                  // pounds per square inch
	Ratio                     // span over deflection, the N of L/N
	Percent                   // percent
	Year                      // calendar year
	Days                      // days
	Emission                  // pounds of vapour per 1000 square feet in 24 hours
	Points                    // percentage points between two moisture readings
)

var dimensionNames = [...]string{"number", "length", "area", "load", "weight", "strength", "ratio", "percent", "year", "days", "emission", "points"}

// String is the name under which records refer to the dimension.
func (d Dimension) String() string { return dimensionNames[d] }

// ParseDimension finds the dimension of a name.
func ParseDimension(name string) (Dimension, bool) {
	for i, n := range dimensionNames {
		if n == name {
			return Dimension(i), true
		}
	}
	return Number, false
}

// A System is the family of units a person reads and writes.
type System uint8

// The two systems: US customary, and metric with millimetres for lengths.
const (
	US System = iota
	Metric
)

// String is the word a record uses for the system.
func (s System) String() string { return [...]string{"us", "mm"}[s] }
