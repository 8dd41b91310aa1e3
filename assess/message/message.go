// Package message is the home of everything that the program says by itself.
// The rooms give the key of a sentence and values for its holes; a language
// turns both into text where somebody reads it. The sentences stand in one
// folder a language and one file a room: en/structure.toml holds those that the
// room structure says, and the key of one is structure/table.name.
package message

import (
	"errors"
	"fmt"
)

// A Message is something to be said in whatever language the reader has: the
// key of a sentence, with values for its holes. The zero value says nothing.
type Message struct {
	Key   string
	Holes []Hole
	words string // of somebody else, said as they are
}

// A Hole is the value of one {name} of a sentence: a string, a Message, or what
// fmt prints.
type Hole struct {
	Name  string
	Value any
}

// New is the sentence of a key, with pairs of a hole's name and its value. A
// name that is no string is a programming error and panics.
func New(key string, pairs ...any) Message {
	m := Message{Key: key}
	if len(pairs) > 0 {
		m.Holes = make([]Hole, 0, len(pairs)/2)
	}
	for i := 0; i+1 < len(pairs); i += 2 {
		m.Holes = append(m.Holes, Hole{Name: pairs[i].(string), Value: pairs[i+1]})
	}
	if len(pairs)%2 != 0 {
		panic("message: " + key + ": a hole has no value")
	}
	return m
}

// Verbatim is what somebody else said, such as an operating system or a person
// in a record: it is the same in every language.
func Verbatim(words string) Message { return Message{words: words} }

// IsZero reports whether there is nothing to say.
func (m Message) IsZero() bool { return m.Key == "" && m.words == "" }

// String is the message in English, for tests and for programmers.
func (m Message) String() string { return English().Say(m) }

// Err is the message as an error, for what a person can cause in a room that
// knows no place for it.
func (m Message) Err() error { return failure{m} }

type failure struct{ what Message }

// Error is the message in English; Of gives the message itself.
func (f failure) Error() string { return f.what.String() }

// Message is what went wrong.
func (f failure) Message() Message { return f.what }

// Of is what an error says: its own message where it has one.
func Of(err error) Message {
	var known interface{ Message() Message }
	if errors.As(err, &known) {
		return known.Message()
	}
	return Verbatim(err.Error())
}

// value is the text of a hole's value.
func (l *Language) value(v any) string {
	switch v := v.(type) {
	case string:
		return v
	case Message:
		return l.Say(v)
	case error:
		return l.Say(Of(v))
	}
	return fmt.Sprint(v)
}
