package figure

import (
	"testing"

	"underfoot/assess/quantity"
)

// TestWeightsNameFigures: every region has each figure that a row names.
func TestWeightsNameFigures(t *testing.T) {
	for _, region := range Regions {
		table := For(region, quantity.US)
		for kind, w := range weights() {
			for _, id := range []string{w.Lightest, w.Heaviest, w.Thickness} {
				if _, ok := table.Figure(id); !ok && (id != "" || id == w.Lightest) {
					t.Errorf("%s, %s: no figure %q", region, kind, id)
				}
			}
		}
	}
}
