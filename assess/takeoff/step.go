package takeoff

import (
	"underfoot/assess/figure"
	"underfoot/assess/quantity"
)

// remove adds the floor that comes up and what it weighs, so that it can be
// carried and put somewhere.
func (l *list) remove() {
	if l.known {
		l.perArea("removal", l.area)
	}
	all := quantity.Point(0)
	var from []figure.Figure
	for _, layer := range l.in.Removed {
		psf, used := l.weight(layer)
		all = all.Add(psf)
		from = merge(from, used)
	}
	if len(l.in.Removed) > 0 {
		l.perArea("removal_weight", l.area.Mul(all), from...)
	}
}

// strengthen adds a layer of plywood where the step lays one.
func (l *list) strengthen() {
	if !l.in.AddsPanel {
		return
	}
	l.cover("panel", "sheet_panel", "waste_sheets")
	l.spread("panel_fasteners", "panel_fasteners", "waste_sheets")
}

// level adds primer and leveler: area x depth / 12 / yield of a bag. Where the
// depth is not known the bags are those of each inch of it.
func (l *list) level() {
	l.cover("primer", "gallon_primer", "")
	from, ok := l.figures("bag_leveler", "leveler_grid")
	if !ok {
		return
	}
	perInch := l.area.Div(quantity.Point(inchesPerFoot * from[0].Value))
	if stated(l.in.Depth) {
		l.perArea("leveler", perInch.Mul(l.in.Depth.Meet(quantity.AtLeast(0))), from[0])
		return
	}
	l.perArea("leveler_inch", perInch, from...)
}
