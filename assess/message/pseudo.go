package message

import "strings"

// Unbracketed is what of a printed text stands in no brackets of the
// pseudo-language, and so has not come through here. A bar stands for each
// bracket. It is for the tests of those who print.
func Unbracketed(text string) string {
	var b strings.Builder
	depth := 0
	for _, r := range text {
		switch {
		case r == '⟦':
			depth++
			b.WriteByte('|')
		case r == '⟧':
			depth--
			b.WriteByte('|')
		case depth == 0:
			b.WriteRune(r)
		}
	}
	return b.String()
}
