package structure

import (
	"math"

	"underfoot/assess/figure"
	"underfoot/assess/logic"
	"underfoot/assess/quantity"
	"underfoot/assess/schema"
)

// A build is the least panel for joists up to a spacing: one sheet, or two
// that are together as stiff, in cubes of the thickness.
type build struct {
	upTo   float64 // joist spacing, in
	single float64 // in^3, by any number of sheets
	pair   float64 // in^3, by two sheets or more; +Inf where one sheet is the method
}

// least is the smaller of the two, as the thickness of one sheet.
func (b build) least() float64 { return math.Cbrt(math.Min(b.single, b.pair)) }

// short is whether a deck stays under the build.
func (b build) short(d deck) logic.Truth {
	switch {
	case d.cubes.Lo >= b.single, d.sheets.Lo >= 2 && d.cubes.Lo >= b.pair:
		return logic.No
	case d.cubes.Hi < b.single && (d.sheets.Hi < 2 || d.cubes.Hi < b.pair):
		return logic.Yes
	}
	return logic.Open
}

// builds are the least panels by joist spacing, closest first. Beyond the last
// no method is known.
type builds struct {
	list    []build
	sources []figure.Source
}

// panelBuilds reads the builds from the figures; the first is that of board or
// of mat, the others are methods listed for either. ok is false where a figure
// is missing.
func panelBuilds(t *figure.Table, first string) (b builds, ok bool) {
	ok = true
	value := func(id string) float64 {
		f, has := t.Figure(id)
		ok = ok && has
		b.sources = append(b.sources, f.Source)
		return f.Value
	}
	b.list = []build{
		{value("panel_spacing_board"), cube(value(first)), math.Inf(1)},
		{value("panel_spacing_single"), cube(value("panel_single_19")), math.Inf(1)},
		{value("panel_spacing_double"), cube(value("panel_stiff_24_single")),
			cube(value("panel_double_24_first")) + cube(value("panel_double_24_second"))},
	}
	return b, ok
}

// within are the builds that some spacing of the range asks for; beyond is
// whether a spacing of the range has none.
func (b builds) within(spacing quantity.Range) (list []build, beyond bool) {
	from := math.Inf(-1)
	for _, x := range b.list {
		if spacing.Lo <= x.upTo && spacing.Hi > from {
			list = append(list, x)
		}
		from = x.upTo
	}
	return list, spacing.Hi > from
}

// short is whether a deck is under the build that its spacing asks for, with
// the answers that would settle it.
func (b builds) short(d deck, spacing schema.Fact) logic.Outcome {
	list, beyond := b.within(spacing.Set.Range)
	yes, no, deckOpen := true, !beyond, false
	for _, x := range list {
		s := x.short(d)
		yes, no = yes && s == logic.Yes, no && s == logic.No
		deckOpen = deckOpen || s == logic.Open
	}
	switch {
	case yes:
		return logic.Proven
	case no:
		return logic.Refuted
	case deckOpen:
		return logic.OpenOn(spacing.Deps.Union(d.deps))
	}
	return logic.OpenOn(spacing.Deps)
}

// limit is the least thickness over the spacings that are possible, as one sheet.
func (b builds) limit(spacing quantity.Range) quantity.Range {
	list, beyond := b.within(spacing)
	if beyond || len(list) == 0 {
		return quantity.Everything
	}
	r := quantity.Point(list[0].least())
	for _, x := range list[1:] {
		r = r.Hull(quantity.Point(x.least()))
	}
	return r
}
