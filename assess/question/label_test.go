package question_test

import (
	"regexp"
	"strings"
	"testing"
)

// A label is cut at its bracket where it is shown, so it has one bracket, nothing
// stands behind it, and what is left still tells the choices apart.
func TestLabelsLoseOnlyTheirBrackets(t *testing.T) {
	for i := range us().Questions {
		q := &us().Questions[i]
		shown := map[string]string{}
		for choice, label := range q.Text.Choices {
			word := us().Word(q.ID, choice)
			if lost := strings.TrimPrefix(label, word); lost != "" && (!strings.HasPrefix(lost, " (") || strings.Index(lost, ")") != len(lost)-1) {
				t.Errorf("%s, %s: %q loses %q", q.Decl.ID, choice, label, lost)
			}
			if other := shown[word]; other != "" {
				t.Errorf("%s: %s and %s are both shown as %q", q.Decl.ID, choice, other, word)
			}
			shown[word] = choice
		}
	}
}

// A figure in what a report prints is in both systems or in neither: a reader of
// millimetres does not meet bare inches. The vapor test has only the one unit.
func TestPrintedTextSpeaksBothSystems(t *testing.T) {
	imperial, metric := regexp.MustCompile(`[0-9] (in|ft|sq ft)\b`), regexp.MustCompile(`[0-9] (mm|m|m2)\b`)
	for i := range us().Questions {
		q := &us().Questions[i]
		printed := []string{q.Text.Label, q.Text.Ask}
		for choice := range q.Text.Choices {
			printed = append(printed, us().Word(q.ID, choice))
		}
		for _, text := range printed {
			if imperial.MatchString(text) && !metric.MatchString(text) && q.Decl.ID != "slab.mver" {
				t.Errorf("%s prints %q", q.Decl.ID, text)
			}
		}
	}
}
