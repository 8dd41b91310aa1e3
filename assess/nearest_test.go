package assess

import (
	"strings"
	"testing"

	"underfoot/assess/message"
	"underfoot/assess/schema"
)

func TestHintsForAMisspeltWord(t *testing.T) {
	words := []string{"joists", "slab"}
	for _, c := range []struct{ word, didYouMean, oneOf string }{
		{"jists", "problem/report.near", "problem/report.near_one_of"},
		{"granite", "", "problem/report.one_of"},
		{strings.Repeat("s", 101), "", "problem/report.one_of"},
	} {
		if got := DidYouMean(c.word, words).Key; got != c.didYouMean {
			t.Errorf("%s: %q, want %q", c.word, got, c.didYouMean)
		}
		if got := OneOf(c.word, words).Key; got != c.oneOf {
			t.Errorf("%s: %q, want %q", c.word, got, c.oneOf)
		}
	}
}

// An address that cannot be found is refused by a message that a reader of any
// language can be told.
func TestWhyAnAddressIsRefused(t *testing.T) {
	two := (&Job{Areas: []Area{{ID: "kitchen", Zones: []Zone{{ID: "main"}, {ID: "patch"}}}, {ID: "hall"}}}).Normal()
	for text, want := range map[string]string{
		"joist.span":            "problem/address.which_area",
		"attic.main.joist.span": "problem/address.no_area",
		"kitchen.joist.span":    "problem/address.which_zone",
		"kitchen.x.joist.span":  "problem/address.no_zone",
	} {
		at, err := schema.ParseAddress(text)
		if err != nil {
			t.Fatal(err)
		}
		if _, err = two.Locate(at); keyOf(err) != want {
			t.Errorf("%s: %v, want %s", text, err, want)
		}
	}
	for text, want := range map[string]string{
		"span": "problem/address.form", "a..b": "problem/address.dot", "x.y": "problem/address.topic", "a.b.c.d.zone.base": "problem/address.long",
	} {
		if _, err := schema.ParseAddress(text); keyOf(err) != want {
			t.Errorf("%s: %v, want %s", text, err, want)
		}
	}
}

func keyOf(err error) string {
	if err == nil {
		return ""
	}
	return message.Of(err).Key
}
