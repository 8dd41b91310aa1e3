package plaintext

import (
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func TestWidth(t *testing.T) {
	for text, want := range map[string]int{"": 0, "漢a": 3, "e\u0301": 1, "\x1b[1mbold\x1b[0m": 4, "½″⟦": 3} {
		if got := Width(text); got != want {
			t.Errorf("%q takes %d columns, want %d (Unicode Standard Annex 11)", text, got, want)
		}
	}
	if got := Shorten("abcdef", 4); got != "abc…" {
		t.Errorf("%q", got)
	}
}

func TestWrap(t *testing.T) {
	for _, c := range []struct {
		text  string
		width int
		want  []string
	}{
		{"", 10, []string{""}},
		{"one two three", 7, []string{"one two", "three"}},
		{"one\n\ntwo", 10, []string{"one", "", "two"}},
		{"abcdefghij kl", 4, []string{"abcd", "efgh", "ij", "kl"}},
		{"13-1/2 in of it", 10, []string{"13-1/2 in", "of it"}}, // a fraction is never broken at its hyphen
		{"exactly ten", 7, []string{"exactly", "ten"}},
		{"床板の下", 4, []string{"床板", "の下"}}, // each takes two columns
		{"\u4e16\u754c\u4e16", 4, []string{"\u4e16\u754c", "\u4e16"}},
	} {
		if got := Wrap(c.text, c.width); strings.Join(got, "|") != strings.Join(c.want, "|") {
			t.Errorf("%q at %d: %q, want %q", c.text, c.width, got, c.want)
		}
	}
}

func TestWrapLosesNoWord(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.StringMatching(`[a-z\x{00e9} \n]{0,200}`).Draw(t, "text")
		width := rapid.IntRange(1, 60).Draw(t, "width")
		squeeze := func(s string) string { return strings.Join(strings.Fields(s), "") }
		if got := strings.Join(Wrap(text, width), "\n"); squeeze(got) != squeeze(text) {
			t.Fatalf("%q becomes %q", text, got)
		}
	})
}
