package rules

import (
	"slices"
	"testing"

	"underfoot/assess"
	"underfoot/assess/logic"
	"underfoot/assess/record"
	"underfoot/assess/result"
	"underfoot/assess/schema"
)

// floorHead is an invented floor: joists known to be stiff, one sheet of
// plywood, and then the layers, the lowest last.
const floorHead = `
format: underfoot.assessment/1
region: us
units: us
visited: 2026-05-04
areas:
  - id: the-room
    answers: {room.use: kitchen, tile.kind: ceramic, tile.long_edge: 12 in, tile.thickness: 3/8 in}
    zones:
      - id: main
        answers: {danger: none, water: none, zone.grade: above-ground, zone.base: joists, joist.figure_from: document, joist.known_ratio: 800, joist.spacing: 16 in}
        edge: {complete: yes, items: [{id: e1, edge.rise_allowed: 3 in}]}
        deck: {complete: yes, items: [{id: d1, deck.kind: plywood, deck.thickness: 23/32 in}]}
        crack: {complete: yes}
        layer:
          complete: yes
          items:
`

const (
	dated    = "layer.year: {value: 2005, basis: document}"
	laminate = "            - {id: l1, layer.kind: laminate, layer.held: floating, " + dated + "}\n"
	vinyl    = "            - {id: l1, layer.kind: sheet-vinyl, layer.held: full-glue, layer.tight: yes, layer.cushioned: no, layer.thickness: 1/8 in, " + dated + "}\n"
	gypsum   = "            - {id: l2, layer.kind: gypsum-poured, layer.thickness: 1 in, layer.strength: 2500 psi, layer.crumbling: no, layer.tight: yes, layer.dry_shown: yes, " + dated + "}\n"
	screed   = "            - {id: l2, layer.kind: cement-screed, layer.thickness: 2 in, layer.crumbling: no, layer.tight: yes, " + dated + "}\n"
	mat      = "            - {id: l2, layer.kind: sound-mat, " + dated + "}\n"
	chips    = "            - {id: l3, layer.kind: particleboard, " + dated + "}\n"
)

// What lies between two dwellings may be part of what keeps fire apart and
// sound: the engineer or the official comes before it is taken up (FL59), and
// while nobody has said whether people live below, nothing is.
func TestNothingComesUpBetweenDwellingsUnasked(t *testing.T) {
	const remove, engineer, findOut = result.Remove, result.Engineer, result.FindOut
	e := openUS(t)
	for name, c := range map[string]struct {
		layers string
		more   map[string]string
		flat   []result.PathID // the first steps where people live below
		unsaid []result.PathID // and where nobody has said so
	}{
		"gypsum in a shower":         {gypsum, map[string]string{"room.use": "shower", "room.wet": "wet-room"}, []result.PathID{engineer}, []result.PathID{findOut}},
		"weak gypsum below laminate": {laminate + gypsum, map[string]string{"layer.l2.strength": "900 psi"}, []result.PathID{engineer}, []result.PathID{findOut}},
		"loose screed":               {screed, map[string]string{"layer.l2.tight": "no"}, []result.PathID{engineer}, []result.PathID{findOut}},
		"gypsum over particleboard":  {gypsum + chips, nil, []result.PathID{engineer}, []result.PathID{findOut}},
		"owner's wish":               {gypsum, map[string]string{"layer.l2.coming_out": "yes"}, []result.PathID{engineer}, []result.PathID{findOut}},
		"screed without the height":  {screed, map[string]string{"edge.e1.rise_allowed": "0 in"}, []result.PathID{engineer}, []result.PathID{findOut}},
		"vinyl and then the gypsum":  {vinyl + gypsum, map[string]string{"edge.e1.rise_allowed": "0 in"}, []result.PathID{remove, engineer}, []result.PathID{remove, findOut}},
		"mat below laminate":         {laminate + mat, nil, []result.PathID{remove, engineer}, []result.PathID{remove, findOut}},
		"sound gypsum that may stay": {laminate + gypsum, nil, []result.PathID{remove, result.IsolateFull}, []result.PathID{remove, result.IsolateFull}},
	} {
		for building, want := range map[string][]result.PathID{"flat-above-another": c.flat, "": c.unsaid, "detached-house": {remove}} {
			d, err := record.Read([]byte(floorHead+c.layers), name, e.Catalogue)
			if err != nil {
				t.Fatal(err)
			}
			job := d.Job()
			for at, text := range c.more {
				put(t, e, job, at, text, assess.Document)
			}
			if building != "" {
				put(t, e, job, "site.building", building, assess.Document)
			}
			checkSteps(t, name+" "+building, see(e, job), want)
		}
	}
}

// checkSteps compares the first steps of a plan; a house's removal may come
// behind a finding-out.
func checkSteps(t *testing.T, name string, s seen, want []result.PathID) {
	t.Helper()
	var got []result.PathID
	for _, step := range s.planned.Steps {
		got = append(got, step.Path)
	}
	switch last := want[len(want)-1]; {
	case len(want) == 1 && last == result.Remove:
		if !slices.Contains(got, result.Remove) {
			t.Errorf("%s: %v, and the layer stays", name, got)
		}
	case len(got) < len(want) || !slices.Equal(got[:len(want)], want):
		t.Errorf("%s: %v, want %v first", name, got, want)
	case last == result.Engineer && len(got) > len(want):
		t.Errorf("%s: %v goes on behind the engineer", name, got)
	case want[0] == result.Engineer && (s.evaluation.Lead != result.Engineer || s.evaluation.Span.Verdict() != result.Stop):
		t.Errorf("%s: the engineer comes first, and %s leads, %v", name, s.evaluation.Lead, s.evaluation.Span)
	}
}

// toppings are the kinds of layer that may be part of a fire and sound rating.
// They are spelt here, not taken from the rules.
var toppings = []string{"gypsum-poured", "gypsum-patch", "calcium-sulfate-screed", "cement-screed", "lightweight-fill", "sound-mat", "leveler"}

// toppingIsLeftAlone: where people may live below, no plan takes up what may be
// such a topping. Nobody lives below a slab on the ground.
func toppingIsLeftAlone(_ *Engine, s seen) string {
	removes := slices.ContainsFunc(s.planned.Steps, func(step result.PlanStep) bool { return step.Path == result.Remove })
	ground := slices.Equal(s.zone.Words("zone.base"), []string{"slab-on-ground"})
	if !removes || ground || !slices.Contains(s.zone.Words("site.building"), "flat-above-another") {
		return ""
	}
	for _, l := range s.planned.Floor.Zones[0][0].Things(schema.ScopeLayer) {
		topping := slices.ContainsFunc(l.Words("layer.kind"), func(w string) bool { return slices.Contains(toppings, w) })
		if topping && !l.IsRest() && l.Stays().Truth == logic.No {
			return l.ID() + " comes up and may be a topping between dwellings"
		}
	}
	return ""
}
