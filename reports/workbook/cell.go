package workbook

import (
	"regexp"
	"strings"
	"unicode/utf16"

	"github.com/xuri/excelize/v2"
)

// cellLimit is how many UTF-16 units the format allows in a cell.
const cellLimit = excelize.TotalCellChars

// cut marks a text that was too long.
const cut = " [...]"

// coded is what the format reads as a character by its number, such as _x0041_.
var coded = regexp.MustCompile(`^_x[0-9A-Fa-f]{4}_`)

// cellText is a text that a reader shows as it was written: an underscore that
// would start a character's number is itself written as one, and a text that is
// too long ends in a visible mark, where the library would cut it silently.
func cellText(text string) string {
	text = literal(text)
	if units(text) <= cellLimit {
		return text
	}
	room := cellLimit - units(cut)
	for i, r := range text {
		if room -= utf16.RuneLen(r); room < 0 {
			return text[:i] + cut
		}
	}
	return text
}

func literal(text string) string {
	if !strings.Contains(text, "_x") {
		return text
	}
	var b strings.Builder
	for i := range len(text) {
		if text[i] == '_' && coded.MatchString(text[i:]) {
			b.WriteString("_x005F")
		}
		b.WriteByte(text[i])
	}
	return b.String()
}

func units(text string) int {
	n := 0
	for _, r := range text {
		n += utf16.RuneLen(r)
	}
	return n
}

// reference is the name of a sheet as formulas and names write it.
func reference(sheet string) string {
	return "'" + strings.ReplaceAll(sheet, "'", "''") + "'"
}
