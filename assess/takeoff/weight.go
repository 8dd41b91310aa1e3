package takeoff

import (
	"math"
	"slices"

	"underfoot/assess/figure"
	"underfoot/assess/quantity"
)

// A heft names the figures for the weight of one kind of tile or layer: by the
// square foot, or by the inch of thickness with the usual thickness where none
// is stated.
type heft struct {
	lightest, heaviest string
	byInch             bool
	usual              string
}

func tile(lightest, heaviest, usual string) heft { return heft{lightest, heaviest, true, usual} }

func inch(id string) heft { return heft{id, id, true, ""} }

func flat(lightest, heaviest string) heft { return heft{lightest, heaviest, false, ""} }

// hefts are the kinds of tile.kind and layer.kind whose weight is known. Of a
// mosaic the material is open, and stone may be slate.
var hefts = map[string]heft{
	"ceramic":         tile("weight_ceramic_inch", "weight_ceramic_inch", "thickness_ceramic"),
	"porcelain":       tile("weight_porcelain_inch", "weight_porcelain_inch", "thickness_porcelain"),
	"mosaic":          tile("weight_ceramic_inch", "weight_slate_inch", "thickness_mosaic"),
	"quarry-tile":     tile("weight_ceramic_inch", "weight_ceramic_inch", "thickness_quarry"),
	"terracotta":      tile("weight_ceramic_inch", "weight_ceramic_inch", "thickness_terracotta"),
	"glass-tile":      tile("weight_ceramic_inch", "weight_ceramic_inch", "thickness_glass"),
	"natural-stone":   tile("weight_stone_inch", "weight_slate_inch", "thickness_stone"),
	"porcelain-panel": tile("weight_porcelain_inch", "weight_porcelain_inch", "thickness_panel"),

	"ceramic-tile":           tile("weight_ceramic_inch", "weight_porcelain_inch", "thickness_ceramic"),
	"stone-tile":             tile("weight_stone_inch", "weight_slate_inch", "thickness_stone"),
	"sheet-vinyl":            flat("weight_sheet_vinyl", "weight_sheet_vinyl"),
	"vinyl-tile":             flat("weight_sheet_vinyl", "weight_resilient"),
	"vinyl-composition-tile": flat("weight_sheet_vinyl", "weight_resilient"),
	"asphalt-tile":           flat("weight_resilient", "weight_resilient"),
	"linoleum":               flat("weight_resilient", "weight_resilient"),
	"hardwood-strip":         flat("weight_hardwood", "weight_hardwood"),
	"cement-board":           flat("weight_board_quarter", "weight_board_half"),
	"plywood-underlayment":   inch("weight_plywood_inch"),
	"gypsum-poured":          inch("weight_gypsum_inch"),
	"leveler":                inch("weight_leveler_inch"),
	"mortar-bed":             inch("weight_mortar_bed_inch"),
	"cement-screed":          inch("weight_mortar_bed_inch"),
}

// weight is what a layer weighs, in psf, over every kind that it may be: of
// nought or more where a kind's weight or thickness is not known.
func (l *list) weight(layer Layer) (psf quantity.Range, from []figure.Figure) {
	psf = quantity.Range{Lo: math.Inf(1), Hi: math.Inf(-1)}
	for _, kind := range layer.Kinds {
		r, used := l.ofKind(kind, layer.Thickness)
		psf, from = psf.Hull(r), merge(from, used)
	}
	if psf.IsEmpty() {
		return quantity.AtLeast(0), nil
	}
	return psf, from
}

func (l *list) ofKind(kind string, thick quantity.Range) (quantity.Range, []figure.Figure) {
	h, known := hefts[kind]
	from, ok := l.figures(h.lightest, h.heaviest)
	if !known || !ok {
		return quantity.AtLeast(0), nil
	}
	psf := quantity.Range{Lo: from[0].Value, Hi: from[1].Value}
	from = merge(nil, from)
	if !h.byInch {
		return psf, from
	}
	usual, ok := l.figures(h.usual)
	switch {
	case stated(thick):
		return psf.Mul(thick.Meet(quantity.AtLeast(0))), from
	case !ok || len(usual) == 0:
		return quantity.AtLeast(0), nil
	}
	return psf.Mul(quantity.Point(usual[0].Value)), append(from, usual...)
}

// merge adds figures that are not in the list yet.
func merge(all, more []figure.Figure) []figure.Figure {
	for _, f := range more {
		if !slices.ContainsFunc(all, func(g figure.Figure) bool { return g.ID == f.ID }) {
			all = append(all, f)
		}
	}
	return all
}
