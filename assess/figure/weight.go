package figure

import (
	_ "embed"
	"sync"

	"underfoot/assess/datafile"
)

// A Weight names the figures for the weight of one kind of tile or layer: in
// psf, or in psf for each inch of thickness.
type Weight struct {
	Lightest  string `toml:"lightest"`
	Heaviest  string `toml:"heaviest"`
	ByInch    bool   `toml:"by_inch"`
	Thickness string `toml:"thickness"` // the usual one, in inches; empty: none is usual
}

//go:embed weights.toml
var weightsTOML []byte

var weights = sync.OnceValue(func() map[string]Weight {
	all := map[string]Weight{}
	datafile.MustDecode("weights.toml", weightsTOML, &all)
	return all
})

// WeightOf names the figures of a word of tile.kind or layer.kind; ok is false
// for a kind whose weight is not known.
func WeightOf(kind string) (w Weight, ok bool) {
	w, ok = weights()[kind]
	return w, ok
}
