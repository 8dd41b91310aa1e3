package figure

import "testing"

// Open grain values of the NDS Supplement 2018, Table 4A: an owner cannot tell
// the grain, and close grain is up to a fifth stiffer.
func TestRedwoodIsOpenGrain(t *testing.T) {
	for grade, want := range map[string][2]float64{
		"select-structural": {1100, 1.1e6}, "no1": {775, 1.1e6}, "no2": {725, 1.0e6}, "no3": {425, 0.9e6},
	} {
		for i, property := range []Property{Bending, Stiffness} {
			if f, ok := LumberValue("redwood", grade, "2x10", property); !ok || f.Value != want[i] {
				t.Errorf("%s: %v is %v, want %v", grade, property, f.Value, want[i])
			}
		}
	}
}
