package takeoff

import (
	"underfoot/assess/figure"
	"underfoot/assess/message"
	"underfoot/assess/quantity"
)

// note is where the figures of an amount come from, after what is to be known
// of the amount itself.
func note(first message.Message, from []figure.Figure) message.Message {
	for _, f := range from {
		if first.IsZero() {
			first = cite(f)
			continue
		}
		first = message.New("takeoff/note.and", "first", first, "more", cite(f))
	}
	return first
}

// cite is a figure in words: what it is, its value, how it is known and what
// speaks against it.
func cite(f figure.Figure) message.Message {
	key, holes := "plain", []any{"what", f.What(), "value", quantity.Write(f.Dimension, quantity.Point(f.Value), quantity.US), "known", known(f.Source)}
	if note := f.Note(); !note.IsZero() {
		key, holes = "noted", append(holes, "note", note)
	}
	if differs := f.Differs(); !differs.IsZero() {
		key, holes = map[string]string{"plain": "disputed", "noted": "noted_disputed"}[key], append(holes, "differs", differs)
	}
	return message.New("takeoff/cite."+key, holes...)
}

// known is how a source knows its figure.
func known(s figure.Source) message.Message {
	switch s.Known {
	case "memory":
		return message.New("takeoff/known.memory")
	case "common-practice":
		return message.New("takeoff/known.practice")
	}
	return message.Verbatim(s.Title + ", " + s.Edition)
}
