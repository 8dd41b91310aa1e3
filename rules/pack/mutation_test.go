package pack

import (
	"fmt"
	"maps"
	"slices"
	"testing"

	"underfoot/assess/condition"
	"underfoot/assess/figure"
)

// A sample is a case read once.
type sample struct {
	scene  *scene
	expect string
}

// A variant is a rule as one region has it, with the cases of that region.
type variant struct {
	country *country
	rule    *Rule
	samples []sample
}

// variants are the rules by id, each in every region that has it.
func variants(t *testing.T) map[string][]variant {
	all := map[string][]variant{}
	for _, region := range figure.Regions {
		c := countries()[region]
		for _, r := range c.pack.Rules {
			v := variant{country: c, rule: r}
			for i := range r.Cases {
				if r.Cases[i].region() != region {
					continue
				}
				s, err := c.stage().scene(&r.Cases[i])
				if err != nil {
					t.Fatal(err)
				}
				v.samples = append(v.samples, sample{s, r.Cases[i].Expect})
			}
			all[r.ID] = append(all[r.ID], v)
		}
	}
	return all
}

// caught reports whether some case of the variant tells the mutant from the rule.
func (v variant) caught(mutant *Rule) bool {
	return slices.ContainsFunc(v.samples, func(e sample) bool {
		o, _ := mutant.Eval(e.scene)
		return o.Truth.String() != e.expect
	})
}

// compile is the condition of a text, nil where it is none.
func (v variant) compile(text string, figures condition.Figures) *condition.Condition {
	c, problems := condition.Compile(text, condition.Place{}, condition.Names{Schema: v.country.names.Schema, Figures: figures})
	if len(problems) > 0 {
		return nil
	}
	return c
}

// A field is one of the conditions of a rule that decide its outcome.
type field struct {
	name string
	of   func(*Rule) **condition.Condition
}

var fields = []field{
	{"applies", func(r *Rule) **condition.Condition { return &r.Applies }},
	{"when", func(r *Rule) **condition.Condition { return &r.When }},
}

// A census counts mutants and keeps the names of those that no case catches.
type census struct {
	mutants   int
	survivors []string
	sparse    int // look at one rule of so many
}

func (n *census) count(rule, field, what string, caught bool) {
	n.mutants++
	if !caught {
		n.survivors = append(n.survivors, fmt.Sprintf("%s, %s: %s", rule, field, what))
	}
}

// words changes the text of a condition, in all regions at once: it is caught
// where a case of any region tells.
func (n *census) words(f field, vs []variant) {
	rule := vs[0].rule
	source := *f.of(rule)
	if source == nil {
		return
	}
	for e := range newPhrase(source.String(), vs[0].country.names.Schema).edits() {
		compiles, caught := false, false
		for _, v := range vs {
			mutant := *v.rule
			if c := v.compile(e.text, v.country.names.Figures); c != nil {
				*f.of(&mutant), compiles = c, true
				caught = caught || v.caught(&mutant)
			}
		}
		if compiles {
			n.count(rule.ID, f.name, e.what, caught)
		}
	}
	if f.name == "applies" {
		n.count(rule.ID, f.name, "without it", slices.ContainsFunc(vs, func(v variant) bool {
			mutant := *v.rule
			mutant.Applies = nil
			return v.caught(&mutant)
		}))
	}
}

// figures moves each figure of a condition by its smallest step, once for every
// value that some regions share.
func (n *census) figures(t *testing.T, f field, vs []variant) {
	source := *f.of(vs[0].rule)
	if source == nil {
		return
	}
	for _, id := range source.Figures() {
		shared := map[float64][]variant{}
		for _, v := range vs {
			if fig, ok := v.country.names.Figures.Figure(id); ok {
				shared[fig.Value] = append(shared[fig.Value], v)
			}
		}
		for _, value := range slices.Sorted(maps.Keys(shared)) {
			n.figure(t, f, id, shared[value])
		}
	}
}

func (n *census) figure(t *testing.T, f field, id string, vs []variant) {
	was, _ := vs[0].country.names.Figures.Figure(id)
	step, err := smallest(was)
	if err != nil || step <= 0 {
		t.Fatalf("figure %s has no smallest step: %v", id, err)
	}
	for _, way := range []float64{-1, 1} {
		caught := slices.ContainsFunc(vs, func(v variant) bool {
			mutant := *v.rule
			*f.of(&mutant) = v.compile((*f.of(v.rule)).String(), shifted{v.country.names.Figures, id, was.Value + way*step})
			return v.caught(&mutant)
		})
		n.count(vs[0].rule.ID, f.name, fmt.Sprintf("%s of %s moved by %+g", id, vs[0].country.pack.Region, way*step), caught)
	}
}

// TestCasesCatchMutants changes every condition of every rule by one small
// thing after another and asks whether some case beside the rule tells. At
// least 95 of 100 must be caught; the others are listed.
func TestCasesCatchMutants(t *testing.T) {
	n := census{sparse: 1}
	if testing.Short() {
		n.sparse = 5
	}
	all := variants(t)
	for i, id := range slices.Sorted(maps.Keys(all)) {
		if i%n.sparse != 0 {
			continue
		}
		for _, f := range fields {
			n.words(f, all[id])
			n.figures(t, f, all[id])
		}
	}
	caught := n.mutants - len(n.survivors)
	t.Logf("caught %d of %d mutants", caught, n.mutants)
	if caught*100 < n.mutants*95 {
		t.Errorf("caught %d of %d mutants, fewer than 95 of 100", caught, n.mutants)
	}
	n.compare(t)
}
