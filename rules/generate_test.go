package rules

import (
	"fmt"
	"math"
	"math/rand"
	"os"
	"strconv"
	"testing"

	"underfoot/assess"
	"underfoot/assess/quantity"
	"underfoot/assess/question"
	"underfoot/assess/schema"
)

// A floorplan draws random jobs from the catalogue. It is seeded rather than
// shrunk: a job has hundreds of draws, and the failing job is what tells.
type floorplan struct {
	*rand.Rand
	c *question.Catalogue
}

// trials runs a property on many random floors, each of its own seed. With
// UNDERFOOT_FLOORS it runs that many, from the seed UNDERFOOT_SEED on.
func trials(t *testing.T, e *Engine, n int, property func(t *testing.T, g floorplan)) {
	t.Helper()
	if testing.Short() {
		n /= 10
	}
	first := 0
	if many, err := strconv.Atoi(os.Getenv("UNDERFOOT_FLOORS")); err == nil {
		n = many
		first, _ = strconv.Atoi(os.Getenv("UNDERFOOT_SEED"))
	}
	for seed := first; seed < first+n; seed++ {
		property(t, floorplan{rand.New(rand.NewSource(int64(seed))), e.Catalogue})
		if t.Failed() {
			t.Fatalf("seed %d", seed)
		}
	}
}

// one picks one of several.
func one[T any](g floorplan, of ...T) T { return of[g.Intn(len(of))] }

// job is a job of one zone in which each question has an answer with the given
// chance in a hundred.
func (g floorplan) job(chance int) *assess.Job {
	j := &assess.Job{Region: "us", Units: "us", Visited: "2026-05-04", Answers: g.answers(schema.ScopeJob, chance)}
	z := assess.Zone{ID: "main", Answers: g.answers(schema.ScopeZone, chance)}
	for _, list := range schema.ListScopes {
		for i := range g.Intn(4) {
			z.Lists[list] = append(z.Lists[list], assess.Item{ID: fmt.Sprintf("%c%d", list.String()[0], i+1), Answers: g.answers(list, chance)})
		}
	}
	j.Areas = []assess.Area{{ID: "the-room", Answers: g.answers(schema.ScopeArea, chance), Zones: []assess.Zone{z}}}
	return j
}

func (g floorplan) answers(scope schema.Scope, chance int) assess.Answers {
	a := assess.Answers{}
	for i := range g.c.Questions {
		q := &g.c.Questions[i]
		if q.Decl.Scope == scope && g.Intn(100) < chance {
			a[q.Decl.ID] = g.answer(q.Decl)
		}
	}
	return a
}

// answer is a random reply: mostly one value, sometimes several or a range,
// sometimes not sure.
func (g floorplan) answer(d *schema.Declaration) assess.Answer {
	switch g.Intn(10) {
	case 0:
		return assess.Answer{Reply: assess.NotSure}
	case 1:
		return assess.Answer{Set: g.value(d).Hull(g.value(d), d.Kind), Basis: assess.Document}
	}
	return assess.Answer{Set: g.value(d), Basis: assess.Document}
}

// value is one settled value within the declared bounds.
func (g floorplan) value(d *schema.Declaration) schema.Set {
	switch d.Kind {
	case schema.KindText:
		return schema.Set{Text: one(g, "2x6", "2x8", "2x10", "2x12")}
	case schema.KindQuantity:
		lo, hi := d.Bounds.Lo, d.Bounds.Hi
		if d.Dimension == quantity.Year {
			hi = 2026
		}
		// Small values matter most: draw on a curve, in steps that are exact.
		u := g.Intn(65)
		return schema.Set{Range: quantity.Point(lo + (hi-lo)*math.Pow(float64(u)/64, 3))}
	}
	return schema.Set{Mask: 1 << g.Intn(len(d.Choices))}
}

// within is a settled value of a set.
func (g floorplan) within(d *schema.Declaration, s schema.Set) schema.Set {
	switch d.Kind {
	case schema.KindText:
		if s.Text != "" {
			return s
		}
		return g.value(d)
	case schema.KindQuantity:
		v := g.value(d).Range.Lo
		r := s.Range
		return schema.Set{Range: quantity.Point(math.Min(math.Max(v, r.Lo), r.Hi))}
	}
	words := s.Words(d)
	bit, _ := d.ChoiceBit(one(g, words...))
	return schema.Set{Mask: bit}
}
