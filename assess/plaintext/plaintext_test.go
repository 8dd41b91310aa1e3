package plaintext

import "testing"

func TestHidden(t *testing.T) {
	for _, r := range "\x00\x07\x1b\r\x7f\u0085\u009b\u061c\u200e\u200f\u2028\u2029\u202a\u202e\u2066\u2069\ufeff\ufffe\uffff" {
		if !Hidden(r) {
			t.Errorf("%U counts as seen", r)
		}
	}
	for _, r := range "\t\n aZ~é地½′\u00a0\u0301\u200d🙂" {
		if Hidden(r) {
			t.Errorf("%U counts as hidden", r)
		}
	}
}

func TestHasHidden(t *testing.T) {
	for text, want := range map[string]bool{"": false, "plain, 12′\n": false, "a\x1b[31mb": true, "\u202eab": true, "\xff": true} {
		if HasHidden(text) != want {
			t.Errorf("%q: %v", text, !want)
		}
	}
}

func TestMarked(t *testing.T) {
	for text, want := range map[string]string{"a\tb": "a\tb", "\x1b[31m": "?[31m", "a\u202eb": "a?b", "\xffé": "?é"} {
		if got := Marked(text); got != want {
			t.Errorf("%q shows as %q, want %q", text, got, want)
		}
	}
}
