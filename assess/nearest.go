package assess

import (
	"strings"

	"underfoot/assess/message"
)

// longestMisspelt is the longest word, in bytes, that is compared with others.
const longestMisspelt = 100

// Nearest is the word that differs least from a misspelt one, or empty where
// none is close enough to be meant.
func Nearest(word string, words []string) string {
	if len(word) > longestMisspelt {
		return ""
	}
	best, bestDistance := "", 1+max(1, len(word)/3)
	for _, w := range words {
		if d := distance(word, w); d < bestDistance {
			best, bestDistance = w, d
		}
	}
	return best
}

// DidYouMean is the hint for a misspelt word; it says nothing where none of the
// words is near.
func DidYouMean(word string, words []string) message.Message {
	near := Nearest(word, words)
	if near == "" {
		return message.Message{}
	}
	return message.New("problem/report.near", "word", near)
}

// OneOf is the hint for a word that is none of those that there are.
func OneOf(word string, words []string) message.Message {
	list := strings.Join(words, ", ")
	if near := Nearest(word, words); near != "" {
		return message.New("problem/report.near_one_of", "word", near, "words", list)
	}
	return message.New("problem/report.one_of", "words", list)
}

// distance is the number of letters to insert, delete or change.
func distance(a, b string) int {
	row := make([]int, len(b)+1)
	for j := range row {
		row[j] = j
	}
	for i := 1; i <= len(a); i++ {
		before := row[0]
		row[0] = i
		for j := 1; j <= len(b); j++ {
			change := before
			if a[i-1] != b[j-1] {
				change++
			}
			before, row[j] = row[j], min(row[j]+1, row[j-1]+1, change)
		}
	}
	return row[len(b)]
}
