package quantity

import (
	"strings"
	"unicode/utf8"

	"underfoot/assess/plaintext"
)

// longest is how many bytes a text may have; nothing a person measures needs more.
const longest = 200

// signs puts the many signs that people, telephones and word processors write
// for the same thing into one form.
var signs = strings.NewReplacer(
	"’", "'", "‘", "'", "′", "'", "´", "'", "ʹ", "'",
	"”", `"`, "“", `"`, "„", `"`, "″", `"`, "ʺ", `"`,
	"–", "-", "—", "-", "‒", "-", "‐", "-", "‑", "-", "−", "-",
	"×", "x", "⁄", "/", "²", "2", "≤", "<=", "≥", ">=", "≈", "~",
	"½", " 1/2", "¼", " 1/4", "¾", " 3/4", "⅛", " 1/8", "⅜", " 3/8", "⅝", " 5/8", "⅞", " 7/8",
	"⅓", " 1/3", "⅔", " 2/3",
	"\u00a0", " ", "\u2009", " ", "\u202f", " ", "\u2007", " ",
)

// clean is the text in lower case with one form of each sign and single
// spaces; ok is false for what no measure can be: too long, not UTF-8, or
// holding control or invisible characters.
func clean(text string) (s string, ok bool) {
	text = strings.TrimSpace(text)
	if text == "" || len(text) > longest || !utf8.ValidString(text) {
		return "", false
	}
	if strings.ContainsFunc(text, plaintext.Hidden) {
		return "", false
	}
	s = text
	if strings.IndexFunc(s, foreign) >= 0 {
		s = signs.Replace(s)
	}
	s = strings.ReplaceAll(strings.ToLower(s), "''", `"`) // two single marks for inches
	if strings.Contains(s, "  ") {
		s = strings.Join(strings.Fields(s), " ")
	}
	return strings.TrimSpace(s), true
}

// foreign reports characters that signs may have to put into another form.
func foreign(r rune) bool { return r >= utf8.RuneSelf }
