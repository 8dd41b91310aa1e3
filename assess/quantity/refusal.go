package quantity

import (
	"strconv"
	"strings"

	"underfoot/assess/message"
)

// Unclear refuses a text that makes sense in more than one way. Readings are
// texts that Read accepts, the likeliest first, so that a front end can ask
// back with them.
type Unclear struct {
	Text     string
	Readings []string
}

// Message names the readings.
func (u *Unclear) Message() message.Message {
	return message.New("quantity/refusal.unclear", "text", strconv.Quote(u.Text), "readings", alternatives(u.Readings))
}

// Error names the readings in English.
func (u *Unclear) Error() string { return u.Message().String() }

// Malformed refuses a text that is no quantity of the dimension asked for.
// Want says what would be one, Examples show how it may be written.
type Malformed struct {
	Text     string
	Want     message.Message
	Examples []string
}

// Message says what was wanted and how to write it.
func (m *Malformed) Message() message.Message {
	return message.New("quantity/refusal.malformed", "text", strconv.Quote(m.Text), "want", m.Want, "examples", alternatives(m.Examples))
}

// Error says it in English.
func (m *Malformed) Error() string { return m.Message().String() }

// alternatives joins texts as a sentence lists them: a, b or c.
func alternatives(texts []string) any {
	n := len(texts)
	if n < 2 {
		return strings.Join(texts, "")
	}
	return message.New("quantity/refusal.or", "others", strings.Join(texts[:n-1], ", "), "last", texts[n-1])
}

// examples are texts that can be read, for each dimension.
var examples = [...][]string{
	Number:   {"3", "1.5", "2 to 4"},
	Length:   {"9-1/4 in", "12' 6\"", "235 mm"},
	Area:     {"120 sq ft", "11 m2"},
	Load:     {"40 psf", "1.9 kPa"},
	Weight:   {"250 lb", "110 kg"},
	Strength: {"2000 psi", "14 MPa"},
	Ratio:    {"L/360", "L/480 to L/720"},
	Percent:  {"75%", "70 to 75%"},
	Year:     {"1968", "1960s", "before 1978"},
	Days:     {"28 days", "6 weeks"},
	Emission: {"3 lb", "4 to 5 lb"},
	Points:   {"4 points", "2 to 3 points"},
}

// malformed is the refusal of a text for a dimension.
func malformed(d Dimension, text string) error {
	return &Malformed{Text: shown(text), Want: message.New("quantity/want." + d.String()), Examples: examples[d]}
}

// shown is the text as an error may repeat it: cut where it is long.
func shown(text string) string {
	const most = 60
	if runes := []rune(text); len(runes) > most {
		return string(runes[:most]) + "…"
	}
	return text
}
