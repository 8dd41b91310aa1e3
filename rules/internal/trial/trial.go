// Package trial gives tests rules of their own over the real catalogue: small
// packs in which one thing is to be seen at a time.
package trial

import (
	"strings"
	"testing"

	"underfoot/assess"
	"underfoot/assess/check"
	"underfoot/assess/condition"
	"underfoot/assess/facts"
	"underfoot/assess/figure"
	"underfoot/assess/message"
	"underfoot/assess/quantity"
	"underfoot/assess/question"
	"underfoot/assess/result"
	"underfoot/assess/schema"
	"underfoot/rules/judge"
	"underfoot/rules/pack"
)

// Day is the day of every visit.
const Day = assess.Day("2026-05-04")

// A World is a pack of a test's own with all that judges floors by it.
type World struct {
	testing.TB
	Catalogue *question.Catalogue
	Facts     *facts.Plan
	Judge     *judge.Judge
	Describer *judge.Describer
}

// A Rule is a rule with its conditions as texts. Without an id it is called by
// its place; without a policy it holds; it protects the finish.
type Rule struct {
	When, Applies, TakesUp string
	pack.Rule
}

// New is a world of rules. Steps change nothing but what is given.
func New(t testing.TB, steps map[result.PathID]pack.Step, rules ...Rule) *World {
	t.Helper()
	figures := figure.For("us", quantity.US)
	derivations := check.All(figures)
	w := &World{TB: t}
	var err error
	if w.Catalogue, err = question.Open(figures, facts.Derived(derivations), message.English()); err != nil {
		t.Fatal(err)
	}
	if w.Facts, err = facts.NewPlan(w.Catalogue, derivations); err != nil {
		t.Fatal(err)
	}
	p := &pack.Pack{ID: "trial", Steps: map[result.PathID]*pack.Step{}, Cautions: map[string]result.Caution{}}
	for _, path := range result.Paths() {
		step := steps[path]
		step.Path = path
		p.Steps[path] = &step
	}
	names := condition.Names{Schema: w.Catalogue.Schema(), Figures: figures}
	for i := range rules {
		p.Rules = append(p.Rules, rules[i].compile(t, names, i))
	}
	w.Judge = judge.New(p, w.Catalogue.Schema())
	w.Describer = &judge.Describer{Catalogue: w.Catalogue, Figures: figures, System: quantity.US, Language: message.English()}
	return w
}

func (r *Rule) compile(t testing.TB, names condition.Names, place int) *pack.Rule {
	t.Helper()
	out := r.Rule
	if out.ID == "" {
		out.ID = string(rune('a' + place))
	}
	if out.Unknown == "" {
		out.Unknown = result.PolicyHold
	}
	if out.Protects == "" {
		out.Protects = result.ProtectsFinish
	}
	if out.Scope == schema.ScopeJob {
		out.Scope = schema.ScopeZone
	}
	out.When, out.Applies, out.TakesUp = Compile(t, names, r.When), Compile(t, names, r.Applies), Compile(t, names, r.TakesUp)
	return &out
}

// Compile is a condition of a text; nil for an empty one.
func Compile(t testing.TB, names condition.Names, text string) *condition.Condition {
	t.Helper()
	if text == "" {
		return nil
	}
	c, problems := condition.Compile(text, condition.Place{}, names)
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	return c
}

// Job is a record of one zone from lines such as `layer.l1.wet = yes`; the value
// may be a reply.
func (w *World) Job(lines ...string) *assess.Job {
	w.Helper()
	j := (&assess.Job{Region: "us", Units: "us", Visited: Day}).Normal()
	for _, line := range lines {
		address, text, _ := strings.Cut(line, " = ")
		a, err := schema.ParseAddress(address)
		if err == nil {
			a, err = j.Locate(a)
		}
		if err != nil {
			w.Fatal(err)
		}
		answer := assess.Answer{Reply: assess.ParseReply(text), Text: text, Basis: assess.Document}
		if answer.Reply == assess.Given {
			if answer.Set, err = w.Catalogue.Read(w.Catalogue.Find(a.Short()).Decl, text, quantity.US); err != nil {
				w.Fatalf("%s: %v", line, err)
			}
		}
		j.Put(a, answer)
	}
	return j
}

// Zone is the one zone of a job, filled in.
func (w *World) Zone(j *assess.Job) *facts.Frame { return w.Facts.Fill(j, Day).Zones[0][0] }

// Evaluate judges the one zone of a record.
func (w *World) Evaluate(lines ...string) *judge.Evaluation {
	w.Helper()
	return w.Judge.Zone(w.Zone(w.Job(lines...)), false)
}
