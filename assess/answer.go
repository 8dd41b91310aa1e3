package assess

import (
	"fmt"
	"underfoot/assess/schema"
)

// A Reply is the form of an answer.
type Reply uint8

// Given carries a value; the others are answers too, and are not asked again.
const (
	Given Reply = iota
	NotSure
	CouldNotSee
	DoesNotApply
)

var replyWords = [...]string{"", "not sure", "could not see", "does not apply"}

// String is what a record says in place of a value; empty for Given.
func (r Reply) String() string { return replyWords[r] }

// ParseReply finds the reply that a text stands for; Given where it is a value.
func ParseReply(text string) Reply {
	for i, w := range replyWords {
		if i > 0 && w == text {
			return Reply(i)
		}
	}
	return Given
}

// A Basis says how the answer came to be known.
type Basis uint8

// The bases. NoBasis: the record does not say.
const (
	NoBasis Basis = iota
	Measured
	Seen
	Told
	Document
	Assumed
)

var basisWords = [...]string{"", "measured", "seen", "told", "document", "assumed"}

// String is the word a record uses; empty for NoBasis.
func (b Basis) String() string { return basisWords[b] }

// ParseBasis finds the basis of a word.
func ParseBasis(word string) (Basis, bool) {
	for i, w := range basisWords {
		if i > 0 && w == word {
			return Basis(i), true
		}
	}
	return NoBasis, false
}

// BasisWords are the words a record may use.
func BasisWords() []string { return basisWords[1:] }

// A Day is a local calendar day, written 2026-05-04; empty where not known.
type Day string

// Year is the day's year, or 0 for an empty day.
func (d Day) Year() int {
	var y int
	if _, err := fmt.Sscanf(string(d), "%d", &y); err != nil {
		return 0
	}
	return y
}

// An Answer is what a person said or measured.
type Answer struct {
	Reply  Reply
	Set    schema.Set // what is possible, where Reply is Given
	Text   string     // the value as the person wrote it, several joined by ", "
	Basis  Basis
	With   string // instrument
	Note   string
	On     Day
	Photos []string
}

// Answers are the answers of one thing by short name (topic.field).
type Answers map[string]Answer
