package rules

import (
	"strings"
	"testing"

	"underfoot/assess"
	"underfoot/assess/result"
)

// Whatever is said of a floor, a sentence says why its way leads.
func TestEveryWayHasItsReason(t *testing.T) {
	e := openUS(t)
	trials(t, e, 150, func(t *testing.T, g floorplan) {
		job := g.job(10 + g.Intn(90))
		evaluation := e.Judge(job, job.Visited).Evaluation(0, 0)
		text := e.sentence(evaluation)
		if !strings.HasSuffix(text, ".") || strings.Contains(text, "{") || strings.Contains(text, "  ") {
			t.Errorf("%s leads because %q", evaluation.Lead, text)
		}
	})
}

// Where no rule's own sentence is the reason, the sentence is chosen from what
// waits, what is settled and what is ruled out.
func TestBecause(t *testing.T) {
	e := openUS(t)
	empty := &assess.Job{}
	if got := e.Assess(empty, "2026-05-04").Areas[0].Sentence; !strings.HasPrefix(got, "Too little is said of this floor yet") ||
		!strings.Contains(got, "begin with, it has not been said") {
		t.Errorf("the empty record: %q", got)
	}
	// Strip flooring comes out (FL18), but whether a suspect layer lies below is open (HZ01).
	gated, _ := readJob(t, e, "../testdata/cases/P13.yaml")
	delete(gated.Areas[0].Zones[0].Answers, "layer.complete")
	r := e.Assess(gated, gated.Visited).Areas[0]
	if z := r.Zones[0]; z.Path != result.FindOut || z.Blocked != result.Remove && z.Blocked != result.Strengthen {
		t.Fatalf("an open list leads to %s, behind it %s", z.Path, z.Blocked)
	}
	if !strings.Contains(r.Sentence, "Before that is touched, a question has to be answered: ") {
		t.Errorf("behind a gate: %q", r.Sentence)
	}
	// Outdoors without a design every base is barred, and no covering is there to come out (FL61).
	bare, _ := readJob(t, e, "../testdata/cases/P16.yaml")
	put(t, e, bare, "room.outdoors", "yes", assess.Seen)
	put(t, e, bare, "room.outdoor_design", "no", assess.Seen)
	if r := e.Assess(bare, bare.Visited).Areas[0]; r.Zones[0].Path != result.NoPath || !strings.HasPrefix(r.Sentence, "What might be laid here is ruled out") {
		t.Errorf("%s because %q", r.Zones[0].Path, r.Sentence)
	}
	// The same over a tight vinyl floor: the covering comes out first (FL61).
	covered, _ := readJob(t, e, "../testdata/cases/P01.yaml")
	put(t, e, covered, "room.outdoors", "yes", assess.Seen)
	put(t, e, covered, "room.outdoor_design", "no", assess.Seen)
	if r := e.Assess(covered, covered.Visited).Areas[0]; r.Zones[0].Path != result.Remove || !strings.Contains(r.Sentence, "the old floor comes out first") {
		t.Errorf("%s because %q", r.Zones[0].Path, r.Sentence)
	}
}
