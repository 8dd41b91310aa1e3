package figure

import (
	_ "embed"
	"sync"

	"underfoot/assess/quantity"
)

// The stiffness of rated panels. Each row says where it was read; plywood was
// remembered.
var (
	//go:embed panel.csv
	panelCSV string

	panelRows = sync.OnceValue(func() []row { return readRows(panelCSV, "kind", "rating", "direction") })
)

// A PanelStiffness is the bending stiffness of one foot of width of a rated
// panel, in lb in^2 per ft.
type PanelStiffness struct {
	EI     quantity.Range
	Source Source // of the low end
}

// Panel is the stiffness of a plywood or osb panel with its strength axis
// across the joists, or along them. An empty rating leaves every rating
// possible that is usual for a thickness in the range, in inches. ok is false
// where no row fits.
func Panel(kind, rating string, across bool, thickness quantity.Range) (p PanelStiffness, ok bool) {
	direction := "along"
	if across {
		direction = "across"
	}
	for _, r := range panelRows() {
		if r.keys[0] != kind || r.keys[2] != direction || rating != "" && r.keys[1] != rating || rating == "" && !r.usual(thickness) {
			continue
		}
		value := quantity.Point(r.number("value"))
		if !ok || value.Lo < p.EI.Lo {
			p.Source = r.source()
		}
		if !ok {
			p.EI = value
		}
		p.EI, ok = p.EI.Hull(value), true
	}
	return p, ok
}

// slack is how far, in inches, a measured panel may lie from the thickness of
// its category: half of the step between the two categories of one rating.
const slack = 1.0 / 64

func (r row) usual(thickness quantity.Range) bool {
	return thickness.Hi >= r.number("least")-slack && thickness.Lo <= r.number("most")+slack
}

// PanelPointDeflection is the greatest deflection, in inches, that the
// performance standard lets a single-floor panel of the rating have under 200
// lb at one place; ok is false where the rating has none.
func PanelPointDeflection(rating string) (f Figure, ok bool) {
	for _, r := range panelRows() {
		if r.keys[2] == "point" && r.keys[1] == rating {
			return r.figure(quantity.Length), true
		}
	}
	return Figure{}, false
}
