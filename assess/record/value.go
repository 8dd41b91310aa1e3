package record

import (
	"errors"
	"fmt"
	"strings"

	"underfoot/assess"
	"underfoot/assess/quantity"
)

// errLate refuses a year that has not come.
var errLate = errors.New("lies after the day of the visit")

// read reads the text of a value and refuses a year after the visit.
func read(v Values, d *assess.Declaration, text string, sys quantity.System, visited assess.Day) (assess.Set, error) {
	set, err := v.Read(d, text, sys)
	if err == nil && visited != "" && late(d, set, visited) {
		err = fmt.Errorf("%s of %s %w, %s", text, d.ID, errLate, visited)
	}
	return set, err
}

// late reports whether a set holds nothing but years after a day.
func late(d *assess.Declaration, set assess.Set, day assess.Day) bool {
	return d.Kind == assess.KindQuantity && d.Dimension == quantity.Year && set.Range.Lo > float64(day.Year())
}

// explain is what is wrong with a value and what to write in its place.
func explain(v Values, d *assess.Declaration, text string, sys quantity.System, err error) (what, hint string) {
	var unclear *quantity.Unclear
	var malformed *quantity.Malformed
	switch {
	case errors.Is(err, errLate):
		return err.Error(), "write the year as it was, or put the day right"
	case errors.As(err, &unclear), errors.As(err, &malformed):
		return d.ID + ": " + err.Error(), ""
	case len(d.Choices) > 0:
		return err.Error(), choiceHint(wrongWord(v, d, text, sys), d.Choices)
	case d.Kind == assess.KindQuantity:
		return err.Error(), "it lies in " + v.Write(d, assess.Set{Range: d.Bounds}, sys)
	}
	return err.Error(), ""
}

// wrongWord is the first of several choices that cannot be read.
func wrongWord(v Values, d *assess.Declaration, text string, sys quantity.System) string {
	for word := range strings.SplitSeq(text, ", ") {
		if _, err := v.Read(d, word, sys); err != nil {
			return word
		}
	}
	return text
}
