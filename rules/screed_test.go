package rules

import (
	"strings"
	"testing"

	"underfoot/assess/message"
	"underfoot/assess/quantity"
	"underfoot/assess/result"
)

const floatingScreed = `
format: underfoot.assessment/1
region: de
units: mm
visited: 2026-05-04
areas:
  - id: the-room
    answers: {tile.kind: ceramic}
    zones:
      - id: main
        answers: {danger: none, water: none, zone.base: slab-on-ground}
        layer:
          complete: yes
          items:
            - {id: l1, layer.kind: TOP, layer.year: {value: 2012, basis: document}, layer.tight: yes, layer.crumbling: no, layer.age_days: 4000}
            - {id: l2, layer.kind: foam-board}
        crack: {complete: yes}
`

// TestScreedOnInsulationIsABase: the foam below a screed is its insulation; the
// same foam below a leveler carries nothing and comes out (FL48).
func TestScreedOnInsulationIsABase(t *testing.T) {
	e, err := Open("de", quantity.Metric, message.English())
	if err != nil {
		t.Fatal(err)
	}
	for top, want := range map[string]result.PathID{"cement-screed": result.DirectBond, "leveler": result.Remove} {
		job := parseJob(t, e, "screed.yaml", strings.Replace(floatingScreed, "TOP", top, 1))
		if z := e.Assess(job, job.Visited).Areas[0].Zones[0]; z.Path != want {
			t.Errorf("%s: %v leads, want %v", top, z.Path, want)
		}
	}
}
