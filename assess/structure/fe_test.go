package structure

import (
	"maps"
	"slices"
	"testing"

	"underfoot/assess/quantity"
)

var (
	// nearBent is how far off the solver's deflection a reckoned one may lie.
	nearBent = quantity.Range{Lo: -0.001, Hi: 0.001}
	// aboveBent is how far off a sum of two greatest deflections may lie: below by
	// no more than the solver's own error, above by what the two places make.
	aboveBent = quantity.Range{Lo: -0.0001, Hi: 0.004}
)

// A kindTally is the floors of one kind, and how far they lie from the solver.
type kindTally struct {
	floors int
	off    quantity.Range
}

func (c kindTally) and(off float64) kindTally {
	if c.floors == 0 {
		c.off = quantity.Point(off)
	}
	return kindTally{c.floors + 1, c.off.Hull(quantity.Point(off))}
}

func (c kindTally) most() float64 { return max(-c.off.Lo, c.off.Hi) }

// TestAgainstFiniteElements holds the deflections to those of an independent
// finite-element solver; testdata/fe says which, and how each floor is modelled.
func TestAgainstFiniteElements(t *testing.T) {
	kinds := map[string]kindTally{}
	for _, row := range tableRows(t, "testdata/fe/cases.csv") {
		b := bent(row)
		got, allowed := b.reckon(t)
		off := got/b.number("deflection_in") - 1
		if !allowed.Contains(off) {
			t.Errorf("%s %s: %v in, by finite elements %v", b["id"], b["kind"], got, b["deflection_in"])
		}
		kinds[b["kind"]] = kinds[b["kind"]].and(off)
	}
	reportKinds(t, kinds)
}

// reckon is the product's deflection, and how far off it may lie.
func (b bent) reckon(t *testing.T) (inches float64, allowed quantity.Range) {
	if spans := summedKinds[b["kind"]]; spans > 0 {
		j := overSpans(spans)(b)
		j.Live, j.Dead = quantity.Point(b.number("load_psf")), quantity.Point(b.number("dead_psf"))
		return value(j.Sheet(TotalLoad), "sag").Lo, aboveBent
	}
	reckon, known := reckonedKinds[b["kind"]]
	if !known {
		t.Fatalf("%s: nothing reckons %q", b["id"], b["kind"])
	}
	return reckon(b), nearBent
}

// reportKinds prints how many floors of each kind there are and how far off they
// lie, and wants some of every kind, and 200 in all that are near.
func reportKinds(t *testing.T, kinds map[string]kindTally) {
	floors, most := 0, 0.0
	for _, kind := range slices.Sorted(maps.Keys(kinds)) {
		k := kinds[kind]
		t.Logf("%-54s %3d floors, off by %+.4f to %+.4f %%", kind, k.floors, 100*k.off.Lo, 100*k.off.Hi)
		if summedKinds[kind] == 0 {
			floors, most = floors+k.floors, max(most, k.most())
		}
	}
	t.Logf("%d floors, largest difference %.4f %%; sums of two greatest deflections not counted", floors, 100*most)
	if want := len(reckonedKinds) + len(summedKinds); floors < 200 || len(kinds) != want {
		t.Errorf("%d floors of %d kinds; at least 200 are wanted, of %d", floors, len(kinds), want)
	}
}
