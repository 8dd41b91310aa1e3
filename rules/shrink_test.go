package rules

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"underfoot/assess"
	"underfoot/assess/quantity"
	"underfoot/assess/schema"
)

// shrink takes answers and items away as long as the job still fails.
func shrink(j *assess.Job, fails func(*assess.Job) bool) *assess.Job {
	for again := true; again; {
		again = false
		for _, smaller := range fewer(j) {
			if fails(smaller) {
				j, again = smaller, true
				break
			}
		}
	}
	return j
}

// fewer are the jobs with one item or one answer less.
func fewer(j *assess.Job) []*assess.Job {
	var out []*assess.Job
	for _, list := range schema.ListScopes {
		for i := range j.Areas[0].Zones[0].Lists[list] {
			c := j.Clone()
			items := &c.Areas[0].Zones[0].Lists[list]
			*items = slices.Delete(*items, i, i+1)
			out = append(out, c)
		}
	}
	for i, answers := range answerLists(j) {
		for _, id := range slices.Sorted(maps.Keys(answers)) {
			c := j.Clone()
			delete(answerLists(c)[i], id)
			out = append(out, c)
		}
	}
	return out
}

// answerLists are the answers of a job of one zone, from the job to the items.
func answerLists(j *assess.Job) []assess.Answers {
	a := &j.Areas[0]
	z := &a.Zones[0]
	all := []assess.Answers{j.Answers, a.Answers, z.Answers}
	for _, list := range schema.ListScopes {
		for i := range z.Lists[list] {
			all = append(all, z.Lists[list][i].Answers)
		}
	}
	return all
}

func outline(s seen) string {
	out := fmt.Sprintf("%s, %v:", s.evaluation.Lead, s.evaluation.Span)
	for _, step := range s.planned.Steps {
		out += " " + step.Path.String()
	}
	return out
}

// describe prints the answers of a job.
func describe(e *Engine, j *assess.Job) string {
	var b strings.Builder
	for i, answers := range answerLists(j) {
		for _, id := range slices.Sorted(maps.Keys(answers)) {
			d, a := e.Catalogue.Schema().Find(id), answers[id]
			fmt.Fprintf(&b, "\n%d %s: ", i, id)
			switch {
			case a.Reply != assess.Given:
				fmt.Fprint(&b, a.Reply)
			case d.Kind == schema.KindQuantity:
				b.WriteString(quantity.Write(d.Dimension, a.Set.Range, quantity.US))
			default:
				fmt.Fprint(&b, a.Set.Words(d), a.Set.Text)
			}
		}
	}
	return b.String()
}
