package rules

import (
	"slices"
	"strings"
	"testing"

	"underfoot/assess/result"
)

const oldTile = `
format: underfoot.assessment/1
region: us
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
            - {id: l1, layer.kind: ceramic-tile, layer.year: {value: YEAR, basis: document}, layer.tight: no, layer.cracked: yes}
`

// TestCautionStandsAtItsStep: mortar and grout of the years of suspicion are
// broken when old tile is taken up, so the warning stands at that step
// (29 CFR 1926.1101; HZ53 to HZ56).
func TestCautionStandsAtItsStep(t *testing.T) {
	e := openUS(t)
	for year, want := range map[string]bool{"1970": true, "2010": false} {
		job := parseJob(t, e, "tile.yaml", strings.Replace(oldTile, "YEAR", year, 1))
		plan := e.Assess(job, job.Visited).Areas[0].Zones[0].Plan
		i := slices.IndexFunc(plan, func(s result.PlanStep) bool { return s.Path == result.Remove })
		if i < 0 || slices.Contains(plan[i].Cautions, "asbestos-hard-layers") != want {
			t.Errorf("%s: plan %v", year, plan)
		}
	}
}
