package reports

import (
	"testing"
	"unicode"
	"unicode/utf8"
)

func TestClean(t *testing.T) {
	for text, want := range map[string]string{
		"plain":                           "plain",
		"two\nlines\r\nthree":             "two\nlines\nthree",
		"a\tb":                            "a b",
		"\x1b[1;31mred\x1b[0m":            "red",
		"\x1b]0;title\x07after":           "after",
		"bell\x07 c1\u009bback\x08":       "bell c1back",
		"turn\u202eed\u2066":              "turned",
		"bad \xff byte":                   "bad \uFFFD byte",
		"accents \u00e9 and \u4e16\u754c": "accents \u00e9 and \u4e16\u754c",
	} {
		if got := Clean(text); got != want {
			t.Errorf("%q becomes %q, want %q", text, got, want)
		}
	}
}

func FuzzClean(f *testing.F) {
	f.Add("a\x1b[31mb")
	f.Add("\u202e\xff")
	f.Fuzz(func(t *testing.T, text string) {
		got := Clean(text)
		if !utf8.ValidString(got) || Clean(got) != got {
			t.Errorf("%q becomes %q, which is no text or not clean yet", text, got)
		}
		for _, r := range got {
			if r != '\n' && unicode.IsControl(r) {
				t.Errorf("%q keeps %U", text, r)
			}
		}
	})
}
