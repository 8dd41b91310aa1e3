package reference

import (
	"fmt"
	"strings"

	"underfoot/assess/quantity"
	"underfoot/assess/schema"
)

// numberAtom compares two expressions of one dimension, at least one of which
// names a fact.
func (w *world) numberAtom(depth int, negated bool) expression {
	dims := []quantity.Dimension{quantity.Length, quantity.Number, quantity.Percent, quantity.Year}
	for {
		dim := dims[w.IntN(len(dims))]
		e := expression{strength: bindsRelation, brackets: w.IntN(8) == 0}
		signs := []string{"<", "<=", ">", ">=", "==", "!="}
		if dim == quantity.Length || dim == quantity.Percent {
			signs = signs[:4] // measured numbers are not compared for equality
		}
		e.sign = signs[w.IntN(len(signs))]
		e.kids = []expression{w.number(dim, depth, negated), w.number(dim, depth, negated)}
		// A text is read in the dimension of a fact or figure, so there must be one.
		if text, _ := e.texts(0); strings.Contains(text, "joist.") {
			return e
		}
	}
}

// number draws an expression of the dimension.
func (w *world) number(dim quantity.Dimension, depth int, negated bool) expression {
	e := expression{brackets: w.IntN(8) == 0}
	if depth == 0 || w.IntN(2) == 0 {
		return w.simple(dim, negated)
	}
	switch w.IntN(5) {
	case 0, 1:
		e.sign, e.strength = []string{"+", "-"}[w.IntN(2)], bindsSum
		e.kids = []expression{w.number(dim, depth-1, negated), w.number(dim, depth-1, negated)}
	case 2:
		e.sign, e.strength = "*", bindsProduct
		e.kids = []expression{w.measured(dim, depth-1, negated), w.constant(quantity.Number)}
		if w.IntN(2) == 0 {
			e.kids[0], e.kids[1] = e.kids[1], e.kids[0]
		}
	case 3:
		e.sign, e.strength = "/", bindsProduct
		e.kids = []expression{w.measured(dim, depth-1, negated), w.divisor(negated)}
	default:
		e.sign, e.strength = "-", bindsUnary
		e.kids = []expression{w.number(dim, depth-1, negated)}
	}
	return e
}

// measured is a number that names a fact or a figure, so that it keeps its
// dimension in a product or quotient.
func (w *world) measured(dim quantity.Dimension, depth int, negated bool) expression {
	for {
		e := w.number(dim, depth, negated)
		if text, _ := e.texts(0); strings.Contains(text, "joist.") || strings.Contains(text, "figure.") {
			return e
		}
	}
}

// divisor is a constant, or a fact whose least value is declared above zero.
func (w *world) divisor(negated bool) expression {
	if w.IntN(2) == 0 {
		return w.constant(quantity.Number)
	}
	return w.simple(quantity.Number, negated)
}

// simple is a fact, a figure, or a constant.
func (w *world) simple(dim quantity.Dimension, negated bool) expression {
	switch w.IntN(6) {
	case 0:
		return w.constant(dim)
	case 1:
		for id, f := range w.figures {
			if f.Dimension == dim {
				return leaf("figure."+id, "")
			}
		}
	}
	d, ok := w.fact(func(d *schema.Declaration) bool {
		return d.Kind == schema.KindQuantity && d.Dimension == dim && (d.Always || !negated)
	})
	if !ok {
		return w.constant(dim)
	}
	return leaf(d.ID, "")
}

// constant is a literal: a text with its unit for a length, else a bare number.
func (w *world) constant(dim quantity.Dimension) expression {
	v := w.value()
	if dim != quantity.Length {
		ours := fmt.Sprint(v)
		if w.IntN(4) == 0 {
			ours = fmt.Sprintf("%ge1", v/10)
			v = v / 10 * 10
		}
		return leaf(ours, literal(v))
	}
	switch w.IntN(3) {
	case 0:
		v = float64(1 + w.IntN(3))
		return leaf(fmt.Sprintf(`"%g ft"`, v), literal(v*12))
	case 1:
		// 25.4 mm are an inch by definition (NIST SP 811, appendix B.8).
		mm := 1 + w.IntN(500)
		return leaf(fmt.Sprintf(`"%d mm"`, mm), fmt.Sprintf("(%d.0 / 25.4)", mm))
	}
	return leaf(fmt.Sprintf(`"%g in"`, v), literal(v))
}
