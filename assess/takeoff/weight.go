package takeoff

import (
	"math"
	"slices"

	"underfoot/assess/figure"
	"underfoot/assess/quantity"
)

// weight is what a layer weighs, in psf, over every kind that it may be: of
// zero or more where a kind's weight or thickness is not known.
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
	w, known := figure.WeightOf(kind)
	from, ok := l.figures(w.Lightest, w.Heaviest)
	if !known || !ok {
		return quantity.AtLeast(0), nil
	}
	psf := quantity.Range{Lo: from[0].Value, Hi: from[1].Value}
	from = merge(nil, from)
	if !w.ByInch {
		return psf, from
	}
	usual, ok := l.figures(w.Thickness)
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
