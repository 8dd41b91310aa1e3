package workbook

import (
	"strings"
	"unicode/utf16"

	"github.com/xuri/excelize/v2"
)

// cellLimit is how many UTF-16 units the format allows in a cell.
const cellLimit = excelize.TotalCellChars

// cut marks a text that was too long.
const cut = " [...]"

// cellText is a text that fits a cell: one that is too long ends in a visible
// mark, where the library would cut it silently.
func cellText(text string) string {
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
