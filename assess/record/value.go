package record

import (
	"errors"
	"strings"

	"underfoot/assess"
	"underfoot/assess/message"
	"underfoot/assess/quantity"
	"underfoot/assess/schema"
)

// A lateYear refuses a year that has not come.
type lateYear struct{ what message.Message }

// Error says it in English.
func (l *lateYear) Error() string { return l.what.String() }

// Message names the year and the day of the visit.
func (l *lateYear) Message() message.Message { return l.what }

// read reads the text of a value and refuses a year after the visit.
func read(v Values, d *schema.Declaration, text string, sys quantity.System, visited assess.Day) (schema.Set, error) {
	set, err := v.Read(d, text, sys)
	if err == nil && visited != "" && late(d, set, visited) {
		err = &lateYear{message.New("record/late.what", "year", text, "fact", d.ID, "visited", visited)}
	}
	return set, err
}

// late reports whether a set holds nothing but years after a day.
func late(d *schema.Declaration, set schema.Set, day assess.Day) bool {
	return d.Kind == schema.KindQuantity && d.Dimension == quantity.Year && set.Range.Lo > float64(day.Year())
}

// explain is what is wrong with a value and what to write in its place.
func explain(v Values, d *schema.Declaration, text string, sys quantity.System, err error) (what, hint message.Message) {
	what = message.Of(err)
	var after *lateYear
	var unclear *quantity.Unclear
	var malformed *quantity.Malformed
	switch {
	case errors.As(err, &after):
		return what, message.New("record/late.hint")
	case errors.As(err, &unclear), errors.As(err, &malformed):
		return message.New("record/value.fault", "fact", d.ID, "fault", what), noHint
	case len(d.Choices) > 0:
		return what, assess.OneOf(wrongWord(v, d, text, sys), d.Choices)
	case d.Kind == schema.KindQuantity:
		return what, message.New("record/value.bounds", "range", v.Write(d, schema.Set{Range: d.Bounds}, sys))
	}
	return what, noHint
}

// wrongWord is the first of several choices that cannot be read.
func wrongWord(v Values, d *schema.Declaration, text string, sys quantity.System) string {
	for word := range strings.SplitSeq(text, ", ") {
		if _, err := v.Read(d, word, sys); err != nil {
			return word
		}
	}
	return text
}
