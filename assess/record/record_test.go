package record_test

import (
	"slices"

	"underfoot/assess"
)

func equal(a, b assess.Answer) bool {
	return a.Reply == b.Reply && a.Set == b.Set && a.Text == b.Text && a.Basis == b.Basis &&
		a.With == b.With && a.Note == b.Note && a.On == b.On && slices.Equal(a.Photos, b.Photos)
}
