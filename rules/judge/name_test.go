package judge_test

import (
	"strings"
	"testing"

	"underfoot/assess/message"
	"underfoot/assess/quantity"
	"underfoot/assess/schema"
	"underfoot/rules"
	"underfoot/rules/judge"
)

// Every fact has a name that a reader understands: no dot, no underscore.
func TestEveryFactHasAName(t *testing.T) {
	e, err := rules.Open("us", quantity.US, message.English())
	if err != nil {
		t.Fatal(err)
	}
	for i, d := range e.Catalogue.Schema().All() {
		if name := judge.Name(e.Catalogue, e.Language, schema.FactID(i)); strings.ContainsAny(name, "._") {
			t.Errorf("%s is called %q", d.ID, name)
		}
	}
}
