package condition

import (
	"math"

	"underfoot/assess/logic"
	"underfoot/assess/quantity"
	"underfoot/assess/schema"
)

// maxCells bounds the possibilities that one evaluation tries.
const maxCells = 64

// A split is a fact that several comparisons name, with the cells of its
// values: within one cell each of these comparisons gives the same answer.
type split struct {
	fact  schema.FactID
	kind  schema.Kind
	cells []schema.Set
}

// planSplits finds the facts to split. Which ones is settled at load, by the
// order of the schema and the greatest number of cells, so that neither the
// order of operands nor a narrower answer changes it.
func planSplits(root *term, declared *schema.Schema) []split {
	atoms := map[schema.FactID][]*term{}
	root.atoms(func(t *term) {
		for _, f := range t.facts {
			atoms[f] = append(atoms[f], t)
		}
	})
	var plan []split
	total := 1
	for f := range schema.FactID(declared.Len()) {
		if len(atoms[f]) < 2 {
			continue
		}
		d := declared.Decl(f)
		s := split{fact: f, kind: d.Kind, cells: cells(d, f, atoms[f])}
		n := len(s.cells)
		if !d.Always {
			n++ // it may be absent
		}
		if n > 1 && total*n <= maxCells {
			total *= n
			plan = append(plan, s)
		}
	}
	return plan
}

func cells(d *schema.Declaration, f schema.FactID, atoms []*term) []schema.Set {
	if d.Kind == schema.KindQuantity {
		return lineCells(constants(f, atoms))
	}
	out := []schema.Set{d.Full()}
	for _, a := range atoms {
		var finer []schema.Set
		for _, s := range out {
			for _, m := range [...]uint64{s.Mask & a.mask, s.Mask &^ a.mask} {
				if m != 0 {
					finer = append(finer, schema.Set{Mask: m})
				}
			}
		}
		out = finer
	}
	return out
}

// lineCells cuts the line at each constant: the constant itself, and the
// numbers between it and the next.
func lineCells(cuts []float64) []schema.Set {
	from := math.Inf(-1)
	var out []schema.Set
	add := func(lo, hi float64) {
		if lo <= hi {
			out = append(out, schema.Set{Range: quantity.Range{Lo: lo, Hi: hi}})
		}
	}
	for _, c := range cuts {
		add(from, math.Nextafter(c, math.Inf(-1)))
		add(c, c)
		from = math.Nextafter(c, math.Inf(1))
	}
	add(from, math.Inf(1))
	return out
}

// agreed tries every combination of cells that the facts leave possible.
func (c *Condition) agreed(r schema.Reader) logic.Truth {
	var room [6]held // 2^6 cells are maxCells
	f := frame{reader: r, held: room[:0], blind: true}
	return c.try(&f, 0)
}

// try holds the i-th split fact at each of its possibilities in turn. It is
// open as soon as two of them differ.
func (c *Condition) try(f *frame, i int) logic.Truth {
	if i == len(c.splits) {
		return c.root.eval(f).Truth
	}
	s := &c.splits[i]
	fact := f.fact(s.fact)
	a := agreement{}
	hold := func(possible schema.Fact) bool {
		f.held = append(f.held[:i], held{s.fact, possible})
		return a.add(c.try(f, i+1))
	}
	if fact.Presence.Truth != logic.Yes && !hold(schema.Absent) {
		return logic.Open
	}
	if fact.Presence.Truth != logic.No {
		for _, cell := range s.cells {
			if part, possible := meet(cell, fact.Set, s.kind); possible && !hold(schema.Fact{Presence: logic.Proven, Set: part}) {
				return logic.Open
			}
		}
	}
	f.held = f.held[:i]
	return a.truth
}

// An agreement is the one truth of several, or open.
type agreement struct {
	truth logic.Truth
	some  bool
}

// add takes up one more truth and reports whether all still agree.
func (a *agreement) add(t logic.Truth) bool {
	if t == logic.Open || a.some && t != a.truth {
		a.truth = logic.Open
		return false
	}
	a.truth, a.some = t, true
	return true
}

// meet is the part of a set that lies in a cell.
func meet(cell, s schema.Set, k schema.Kind) (schema.Set, bool) {
	if k == schema.KindQuantity {
		r := cell.Range.Meet(s.Range)
		return schema.Set{Range: r}, !r.IsEmpty()
	}
	m := cell.Mask & s.Mask
	return schema.Set{Mask: m}, m != 0
}
