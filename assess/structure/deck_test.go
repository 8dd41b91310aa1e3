package structure

import (
	"math"
	"testing"

	"underfoot/assess/quantity"
	"underfoot/assess/result"
)

func osb24(spacing float64) Deck {
	return Deck{Layers: []Layer{{Kind: "osb", Rating: "24oc"}}, Spacing: quantity.Point(spacing), Bays: 3}
}

// TestDeckUnderUniformLoad: osb 24oc has E I 300,000 lb in2/ft across the
// joists and 80,500 along them (panel design specification D510C 2012, Table
// 4A); w L^4 / (1743 E I) over three bays, L clear span + 1/4 in.
func TestDeckUnderUniformLoad(t *testing.T) {
	for along, ei := range map[bool]float64{false: 300000, true: 80500} {
		d := osb24(24)
		d.Layers[0].Along = along
		a := AnalyzeDeck(d, 360, us)
		bay := 24 - 1.5 + 0.25
		if want := 40 * math.Pow(bay, 4) / (1743 * ei); !close9(a.Deflection.Lo, want) || !close9(a.Live.Lo, bay/want) {
			t.Errorf("along %v: %+v", along, a)
		}
	}
}

// TestLayersAddUp: two screwed layers have the sum of their stiffness, boards
// E t^3 a foot (E 1.1 million psi, IRC 2018 Table R503.1); what was remembered is marked.
func TestLayersAddUp(t *testing.T) {
	d := osb24(16)
	d.Layers = append(d.Layers, Layer{Kind: "boards", Thickness: quantity.Point(0.75)}, Layer{Kind: "particleboard", Thickness: quantity.Point(0.5)})
	if got, want := AnalyzeDeck(d, 360, us).Stiffness.Lo, 300000+1.1e6*0.75*0.75*0.75; !close9(got, want) {
		t.Errorf("%v, want %v", got, want)
	}
	d.Layers[1].Diagonal = true
	if got, want := AnalyzeDeck(d, 360, us).Stiffness.Lo, 300000+1.1e6*0.75*0.75*0.75/4; !close9(got, want) {
		t.Errorf("diagonal: %v, want %v", got, want)
	}
	d.Layers = append(d.Layers, Layer{Kind: "plywood", Rating: "32/16"})
	if a := AnalyzeDeck(d, 360, us); !a.Memory || !close9(a.Stiffness.Lo, 300000+1.1e6*0.75*0.75*0.75/4+125000) {
		t.Errorf("plywood is from memory: %+v", a)
	}
}

// TestThicknessStandsForItsRatings: 23/32 in osb may be stamped 24oc or 48/24
// (thickness table of an inspection agency, 2008): E I 300,000 to 400,000.
func TestThicknessStandsForItsRatings(t *testing.T) {
	d := Deck{Layers: []Layer{{Kind: "osb", Thickness: quantity.Point(23. / 32)}}, Spacing: quantity.Point(16)}
	a := AnalyzeDeck(d, 360, us)
	if a.Stiffness != (quantity.Range{Lo: 300000, Hi: 400000}) {
		t.Errorf("%v", a.Stiffness)
	}
	for _, rating := range []string{"24/0", "24/16", "32/16", "40/20", "48/24", "16oc", "20oc", "24oc", "32oc", "48oc"} {
		d.Layers[0].Rating = rating
		if a := AnalyzeDeck(d, 360, us); !a.Stiffness.IsPoint() {
			t.Errorf("%s: %v", rating, a.Stiffness)
		}
	}
}

// TestPointLoadOfARating: a single-floor panel of 24 in may bend 0.108 in under
// 200 lb (PS 2-10, from memory): L/222, shown and marked.
func TestPointLoadOfARating(t *testing.T) {
	a := AnalyzeDeck(osb24(24), 360, us)
	if math.Abs(a.Point.Lo-222.2) > 0.1 || !a.Memory {
		t.Errorf("%+v", a)
	}
	if a := AnalyzeDeck(Deck{Layers: []Layer{{Kind: "osb", Rating: "32/16"}}, Spacing: quantity.Point(16)}, 360, us); a.Point != quantity.Everything {
		t.Errorf("a sheathing rating has no such figure: %v", a.Point)
	}
}

// TestDeckOptionsAreBetter: closer support and a second layer never make it softer.
func TestDeckOptionsAreBetter(t *testing.T) {
	d := Deck{Layers: []Layer{{Kind: "osb", Rating: "24/16"}}, Spacing: quantity.Point(24)}
	before := AnalyzeDeck(d, 360, us)
	if before.Outcome != result.CheckFails {
		t.Errorf("24/16 on 24 in: %+v", before)
	}
	for _, o := range DeckOptions(d, 360, us) {
		if o.Live.Lo <= before.Live.Hi || o.Text.IsZero() || len(o.Needs) == 0 || o.Work == nil {
			t.Errorf("%+v", o)
		}
	}
}
