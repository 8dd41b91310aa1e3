package text

import (
	"strings"

	"underfoot/assess/plaintext"
)

// pad fills a text up with spaces, before it where it is set flush right.
func pad(text string, width int, right bool) string {
	fill := strings.Repeat(" ", max(0, width-plaintext.Width(text)))
	if right {
		return fill + text
	}
	return text + fill
}
