// Package rules is the one way in to the decision logic: open the rules of a
// region, assess a job.
package rules

import (
	"underfoot/assess"
	"underfoot/assess/check"
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

// An Engine is the rules of one region, compiled. It never changes and may be
// used by several goroutines at once.
type Engine struct {
	Region    string
	System    quantity.System
	Language  *message.Language
	Figures   *figure.Table
	Catalogue *question.Catalogue
	Pack      *pack.Pack
	facts     *facts.Plan
	judge     *judge.Judge
	describer *judge.Describer
}

// Open compiles the catalogue, the checks and the rules for a region, with the
// units and the language in which a reader is told things, and adds the local packs, whose order
// never matters. Region words are those of a record; empty is a region that
// nobody has said. What is wrong with packs comes back at once as assess.Problems.
func Open(region string, sys quantity.System, l *message.Language, packs ...*pack.Local) (*Engine, error) {
	added := pack.Add(figure.For(region, sys), packs...)
	e := &Engine{Region: region, System: sys, Language: l, Figures: added.Figures}
	derivations := check.All(e.Figures)
	var err error
	if e.Catalogue, err = question.Open(e.Figures, facts.Derived(derivations), l); err != nil {
		return nil, err
	}
	if e.facts, err = facts.NewPlan(e.Catalogue, derivations); err != nil {
		return nil, err
	}
	names := e.Catalogue.Names()
	ours, err := pack.Shipped(names, e.Figures.Region, l)
	if err != nil {
		return nil, err
	}
	if e.Pack, err = added.To(ours, names); err != nil {
		return nil, err
	}
	e.judge = judge.New(e.Pack, e.Catalogue.Schema())
	e.describer = &judge.Describer{Catalogue: e.Catalogue, Figures: e.Figures, System: sys, Language: l}
	return e, nil
}

// refs name the packs that take part, the program's own first.
func (e *Engine) refs() []result.PackRef {
	return append([]result.PackRef{{ID: e.Pack.ID, Edition: e.Pack.Edition}}, e.Pack.Locals...)
}

// Judge judges a job once; everything that is told of it reads the assessment.
// Ages count to the day where the record does not say when it was visited.
func (e *Engine) Judge(job *assess.Job, day assess.Day) *Assessment {
	a := &Assessment{engine: e, job: job.Normal(), day: day}
	a.floor = e.facts.Fill(a.job, day)
	for _, zones := range a.floor.Zones {
		evaluations := make([]*judge.Evaluation, len(zones))
		for z, frame := range zones {
			evaluations[z] = e.judge.Zone(frame, false)
		}
		a.zones = append(a.zones, evaluations)
	}
	return a
}

// Assess is the whole answer to one job.
func (e *Engine) Assess(job *assess.Job, day assess.Day) *result.Result {
	return e.Judge(job, day).Result()
}

// Test runs the cases that stand beside the rules of the engine's region.
func (e *Engine) Test() (failures []pack.Failure, ran int) {
	return e.Pack.Test(e.Catalogue.Schema(), func(d *schema.Declaration, text string) (schema.Set, error) {
		return e.Catalogue.Read(d, text, quantity.US)
	})
}
