package pack

import (
	"math"
	"regexp"
	"strconv"

	"underfoot/assess/condition"
	"underfoot/assess/figure"
	"underfoot/assess/quantity"
)

// A shifted figure is one with another value.
type shifted struct {
	condition.Figures
	id    string
	value float64
}

func (s shifted) Figure(id string) (figure.Figure, bool) {
	f, ok := s.Figures.Figure(id)
	if id == s.id {
		f.Value = s.value
	}
	return f, ok
}

// number is the first number of a quantity as it is printed.
var number = regexp.MustCompile(`^[0-9]+(?:\.([0-9]+))?`)

// smallest is the smallest step of a figure, in its base unit: 1/64 in of a
// length, else one of the last digit that is printed.
func smallest(f figure.Figure) (float64, error) {
	text := quantity.Write(f.Dimension, quantity.Point(f.Value), quantity.US)
	unit := number.ReplaceAllStringFunc(text, func(n string) string {
		return strconv.FormatFloat(math.Pow10(-len(number.FindStringSubmatch(n)[1])), 'f', -1, 64)
	})
	switch f.Dimension {
	case quantity.Length:
		unit = "1/64 in"
	case quantity.Year:
		return 1, nil
	}
	r, err := quantity.Read(f.Dimension, unit, quantity.US)
	return r.Lo, err
}
