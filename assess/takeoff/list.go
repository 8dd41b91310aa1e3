package takeoff

import (
	"math"

	"underfoot/assess/figure"
	"underfoot/assess/message"
	"underfoot/assess/quantity"
	"underfoot/assess/result"
)

// sample is the area, in square feet, that amounts are for where the size of
// the room is not known; sampleRun is the length of crack, in feet.
const (
	sample    = 100
	sampleRun = 10
)

// inchesPerFoot turns inches into feet, percent a percentage into a share.
const (
	inchesPerFoot = 12
	percent       = 100
)

// A list is amounts in the making.
type list struct {
	in    Input
	table *figure.Table
	area  quantity.Range // ft2
	known bool           // of the area
	lines []result.Quantity
}

func newList(in Input, t *figure.Table) *list {
	l := &list{in: in, table: t, area: quantity.Point(sample), known: stated(in.Area)}
	if l.known {
		l.area = in.Area.Meet(quantity.AtLeast(0))
	}
	return l
}

// stated reports whether a range has an upper end above zero.
func stated(r quantity.Range) bool { return r.Hi > 0 && !math.IsInf(r.Hi, 0) }

// finish puts the line about the size of the room before amounts that need it.
func (l *list) finish() []result.Quantity {
	if l.known || len(l.lines) == 0 {
		return l.lines
	}
	lines := l.lines
	l.lines = nil
	l.add(amount{id: "size", value: quantity.Everything})
	return append(l.lines, lines...)
}

// An amount is one line before it is printed.
type amount struct {
	id    string
	value quantity.Range
	per   string          // area or run, where the value is not for the whole floor
	from  []figure.Figure // in the order of the note
}

// add appends an amount; whole units are rounded up.
func (l *list) add(a amount) {
	l.lines = append(l.lines, a.line())
}

// line is the amount for a reader.
func (a amount) line() result.Quantity {
	row := lines()[a.id]
	if a.per == "" && row.Whole {
		a.value = quantity.Range{Lo: roundUp(a.value.Lo), Hi: roundUp(a.value.Hi)}
	}
	var first message.Message
	if row.Note {
		first = message.New("takeoff/note." + a.id)
	}
	return result.Quantity{Text: text(a.id), Value: a.value, Unit: row.unit(a.per), Note: note(first, a.from)}
}

// perArea adds an amount that goes with the area of the floor.
func (l *list) perArea(id string, value quantity.Range, from ...figure.Figure) {
	a := amount{id: id, value: value, from: from}
	if !l.known {
		a.per = "area"
	}
	l.add(a)
}

// roundUp is the next whole number; what is whole but for an error of
// arithmetic stays.
func roundUp(v float64) float64 {
	const near = 1e-9
	return math.Ceil(v * (1 - near))
}

// figures looks up ids and leaves out empty ones; ok is false where one is
// missing, and the line that needs it is left out.
func (l *list) figures(ids ...string) (all []figure.Figure, ok bool) {
	for _, id := range ids {
		if id == "" {
			continue
		}
		f, found := l.table.Figure(id)
		if !found {
			return nil, false
		}
		all = append(all, f)
	}
	return all, true
}

// cover adds what covers the area: area x (1 + waste) / area that one covers.
// Without the second the amount is the area itself, waste included.
func (l *list) cover(id, one, waste string) {
	from, ok := l.figures(one, waste)
	if !ok {
		return
	}
	v := l.withWaste(l.area, waste)
	if one != "" {
		v = v.Div(quantity.Point(from[0].Value))
	}
	l.perArea(id, v, from...)
}

// spread adds what stands on every square foot: area x (1 + waste) x count.
func (l *list) spread(id, count, waste string) {
	from, ok := l.figures(count, waste)
	if ok {
		l.perArea(id, l.withWaste(l.area, waste).Mul(quantity.Point(from[0].Value)), from...)
	}
}

// withWaste is an amount and what is cut off and thrown away.
func (l *list) withWaste(r quantity.Range, waste string) quantity.Range {
	f, _ := l.table.Figure(waste)
	return r.Mul(quantity.Point(percent + f.Value)).Div(quantity.Point(percent))
}
