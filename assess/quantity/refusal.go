package quantity

import (
	"fmt"
	"strings"
)

// Unclear refuses a text that makes sense in more than one way. Readings are
// texts that Read accepts, the likeliest first, so that a front end can ask
// back with them.
type Unclear struct {
	Text     string
	Readings []string
}

// Error names the readings.
func (u *Unclear) Error() string {
	return fmt.Sprintf("%q may mean %s: write the one that is meant", u.Text, alternatives(u.Readings))
}

// Malformed refuses a text that is no quantity of the dimension asked for.
// Want says what would be one, Examples show how it may be written.
type Malformed struct {
	Text     string
	Want     string
	Examples []string
}

// Error says what was wanted and how to write it.
func (m *Malformed) Error() string {
	return fmt.Sprintf("%q is not %s: write it like %s", m.Text, m.Want, alternatives(m.Examples))
}

// alternatives joins texts as a sentence lists them: a, b or c.
func alternatives(texts []string) string {
	n := len(texts)
	if n < 2 {
		return strings.Join(texts, "")
	}
	return strings.Join(texts[:n-1], ", ") + " or " + texts[n-1]
}

// wants says for each dimension what a text should have been, and examples.
var wants = [...]struct {
	what     string
	examples []string
}{
	Number:   {"a number", []string{"3", "1.5", "2 to 4"}},
	Length:   {"a length", []string{"9-1/4 in", "12' 6\"", "235 mm"}},
	Area:     {"an area", []string{"120 sq ft", "11 m2"}},
	Load:     {"a load", []string{"40 psf", "1.9 kPa"}},
	Weight:   {"a weight", []string{"250 lb", "110 kg"}},
	Strength: {"a strength", []string{"2000 psi", "14 MPa"}},
	Ratio:    {"a stiffness ratio", []string{"L/360", "L/480 to L/720"}},
	Percent:  {"a percentage from 0 to 100", []string{"75%", "70 to 75%"}},
	Year:     {"a year", []string{"1968", "1960s", "before 1978"}},
	Days:     {"a number of days", []string{"28 days", "6 weeks"}},
	Emission: {"a vapour emission", []string{"3 lb", "4 to 5 lb"}},
	Points:   {"a difference in percentage points", []string{"4 points", "2 to 3 points"}},
}

// malformed is the refusal of a text for a dimension.
func malformed(d Dimension, text string) error {
	return &Malformed{Text: shown(text), Want: wants[d].what, Examples: wants[d].examples}
}

// shown is the text as an error may repeat it: cut where it is long.
func shown(text string) string {
	const most = 60
	if runes := []rune(text); len(runes) > most {
		return string(runes[:most]) + "…"
	}
	return text
}
