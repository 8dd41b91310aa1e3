package figure_test

import (
	"testing"

	"underfoot/assess/figure"
	"underfoot/assess/quantity"
)

// Bare numbers of a record without units are read as its region measures.
func TestSystemOfARegion(t *testing.T) {
	inches := map[string]bool{"": true, "us": true, "ca": true}
	for _, region := range append([]string{"", "mars"}, figure.Regions...) {
		want := quantity.Metric
		if inches[region] {
			want = quantity.US
		}
		if got := figure.System(region); got != want {
			t.Errorf("%q measures in %v, want %v", region, got, want)
		}
	}
}
