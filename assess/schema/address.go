package schema

import (
	"strconv"
	"strings"

	"underfoot/assess/message"
)

// An Address says where an answer stands: `site.year_built`,
// `kitchen.room.use`, `kitchen.main.joist.span`, `kitchen.main.layer.l2.kind`.
// Area, Zone and Item are empty where the topic's scope has none.
type Address struct {
	Area, Zone, Topic, Item, Field string
}

// ParseAddress reads an address from the right: the last word is the field,
// before it stands a topic, or an item with its topic before it. What is left
// is area and zone. A single word before a zone's topic is taken as the area;
// where it names a zone, Job.Locate puts that right.
func ParseAddress(text string) (Address, error) {
	words := strings.Split(text, ".")
	n := len(words)
	if n < 2 {
		return Address{}, message.New("problem/address.form", "text", strconv.Quote(text)).Err()
	}
	for _, w := range words {
		if w == "" {
			return Address{}, message.New("problem/address.dot", "text", strconv.Quote(text)).Err()
		}
	}
	a := Address{Field: words[n-1]}
	rest := words[:n-1]
	last := rest[len(rest)-1]
	if _, ok := TopicScope(last); ok {
		a.Topic, rest = last, rest[:len(rest)-1]
	} else if len(rest) >= 2 {
		scope, ok := TopicScope(rest[len(rest)-2])
		if !ok || !scope.Listed() {
			return Address{}, message.New("problem/address.topic", "text", strconv.Quote(text), "word", strconv.Quote(rest[len(rest)-2])).Err()
		}
		a.Topic, a.Item, rest = rest[len(rest)-2], last, rest[:len(rest)-2]
	} else {
		return Address{}, message.New("problem/address.topic", "text", strconv.Quote(text), "word", strconv.Quote(last)).Err()
	}
	switch scope, _ := TopicScope(a.Topic); {
	case len(rest) == 0:
	case scope == ScopeJob || len(rest) > 2 || scope == ScopeArea && len(rest) > 1:
		return Address{}, message.New("problem/address.long", "text", strconv.Quote(text), "name", a.Topic+"."+a.Field).Err()
	default:
		a.Area = rest[0]
		if len(rest) == 2 {
			a.Zone = rest[1]
		}
	}
	return a, nil
}

// Sibling is the address of another question of the same thing, by its short name.
func (a Address) Sibling(short string) Address {
	a.Topic, a.Field, _ = strings.Cut(short, ".")
	return a
}

// Short is the name that rules and the catalogue use: topic and field alone.
func (a Address) Short() string { return a.Topic + "." + a.Field }

// Local leaves out area and zone: the form that results print.
func (a Address) Local() string {
	if a.Item != "" {
		return a.Topic + "." + a.Item + "." + a.Field
	}
	return a.Topic + "." + a.Field
}

// String is the whole address.
func (a Address) String() string {
	s := a.Local()
	if a.Zone != "" {
		s = a.Zone + "." + s
	}
	if a.Area != "" {
		s = a.Area + "." + s
	}
	return s
}
