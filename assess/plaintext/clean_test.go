package plaintext

import (
	"strings"
	"testing"
	"unicode/utf8"

	"pgregory.net/rapid"
)

// The sequences are those of ECMA-48, 5th edition, section 5.
func TestClean(t *testing.T) {
	for _, c := range []struct{ name, text, want string }{
		{"plain", "9-1/4 in, größer 世界", "9-1/4 in, größer 世界"},
		{"lines stay", "two\nlines\r\nthree", "two\nlines\nthree"},
		{"tab", "a\tb", "a b"},
		{"bell and return", "a\a\rb", "a b"},
		{"colour", "\x1b[1;31mred\x1b[0m", "red"},
		{"title", "\x1b]0;title\x07text", "text"},
		{"link", "\x1b]8;;https://example.org\x1b\\text\x1b]8;;\x1b\\", "text"},
		{"character set", "\x1b(Btext", "text"},
		{"full reset", "\x1bctext", "text"},
		{"lone escape", "text\x1b", "text"},
		{"direction", "a\u202eb\u2066c\u200fd", "abcd"},
		{"C1", "c1\u009bback\x08 a\u0085b", "c1back ab"},
		{"line of its own", "a\u2028b", "a b"},
		{"not UTF-8", "a\xffb", "a\ufffdb"},
	} {
		if got := Clean(c.text); got != c.want {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
	}
	if got := Line("two\n\tlines"); got != "two lines" {
		t.Errorf("%q", got)
	}
}

// TestCleanIsClean: nothing hidden is left, cleaning twice changes nothing, and
// a text without controls stays whole.
func TestCleanIsClean(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := string(rapid.SliceOf(rapid.SampledFrom([]rune("ab1;m[]()\\ \t\n\r\x1b\x07\u009b\u009c\u0090\u202eäé漢"))).Draw(t, "text"))
		got := Clean(text)
		if HasHidden(got) || Clean(got) != got {
			t.Fatalf("%q became %q", text, got)
		}
		if !HasHidden(text) && !strings.Contains(text, "\t") && got != text {
			t.Fatalf("%q became %q", text, got)
		}
	})
}

func FuzzClean(f *testing.F) {
	f.Add("\x1b[31mred\x1b]0;t\x07")
	f.Add("\u202e\xff")
	f.Fuzz(func(t *testing.T, text string) {
		got := Clean(text)
		if HasHidden(got) || Clean(got) != got || utf8.RuneCountInString(got) > utf8.RuneCountInString(text) {
			t.Errorf("%q became %q", text, got)
		}
		if line := Line(text); HasHidden(line) || strings.ContainsAny(line, "\n\t") {
			t.Errorf("%q became the line %q", text, line)
		}
	})
}
