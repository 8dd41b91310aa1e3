// Package rules is the one way in to the decision logic: open the rules of a
// region, assess a job.
package rules

import (
	"cmp"

	"underfoot/assess"
	"underfoot/assess/check"
	"underfoot/assess/facts"
	"underfoot/assess/figure"
	"underfoot/assess/message"
	"underfoot/assess/quantity"
	"underfoot/assess/question"
	"underfoot/rules/judge"
	"underfoot/rules/pack"
	"underfoot/rules/plan"
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
	teller    *judge.Describer
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
	e.teller = &judge.Describer{Catalogue: e.Catalogue, Figures: e.Figures, System: sys}
	return e, nil
}

// refs name the packs that take part, the program's own first.
func (e *Engine) refs() []assess.PackRef {
	return append([]assess.PackRef{{ID: e.Pack.ID, Edition: e.Pack.Edition}}, e.Pack.Locals...)
}

// Look is the first look at one zone of a job, for those who need the rulings.
func (e *Engine) Look(job *assess.Job, area, zone int, today assess.Day) *judge.Evaluation {
	return e.judge.Zone(e.facts.Fill(job.Normal(), today).Zones[area][zone], false)
}

// Assess is the whole answer to one job.
func (e *Engine) Assess(job *assess.Job, today assess.Day) *assess.Result {
	job = job.Normal()
	floor := e.facts.Fill(job, today)
	r := &assess.Result{Job: job, Region: e.Region, Units: e.System, Language: e.Language, Today: today, Packs: e.refs()}
	p := &plan.Planner{Judge: e.judge, Facts: e.facts, Teller: e.teller, Today: today}
	for i := range job.Areas {
		area := e.area(job, i, floor, p)
		r.Areas = append(r.Areas, area)
		r.Span = r.Span.Wider(area.Span)
	}
	r.Verdict = r.Span.Verdict()
	r.Said, r.Labels = e.said(floor, job), e.labels()
	return r
}

// area gathers what was found for one room.
func (e *Engine) area(job *assess.Job, i int, floor *facts.Floor, p *plan.Planner) assess.AreaResult {
	a := &job.Areas[i]
	out := assess.AreaResult{ID: a.ID, Name: cmp.Or(a.Name, a.ID)}
	var looks []*judge.Evaluation
	for z, frame := range floor.Zones[i] {
		look := e.judge.Zone(frame, false)
		looks = append(looks, look)
		zone := assess.ZoneResult{ID: frame.ID(), Span: look.Span, Verdict: look.Span.Verdict(), Path: look.Lead, Behind: look.Behind,
			Paths: look.Paths}
		course := p.Zone(job, i, z, look)
		zone.Plan, zone.BuildUps = course.Steps, e.buildUps(course)
		out.Checks = append(out.Checks, e.checks(floor.Checks(i), frame, course)...)
		zone.Because = e.because(look)
		out.Zones = append(out.Zones, zone)
		out.Findings = append(out.Findings, e.teller.Findings(look, frame.ID(), len(a.Zones) > 1)...)
		out.Span = out.Span.Wider(look.Span)
		if stricter(out.Zones, z, out.Leading) {
			out.Leading = z
		}
	}
	judge.SortFindings(out.Findings)
	out.Verdict = out.Span.Verdict()
	out.Reason = out.Zones[out.Leading].Because
	if by := looks[out.Leading].By; by != nil && by.Rule.Calls.Asks() == assess.Stop {
		out.Now = by.Rule.Text.Remedy
	}
	out.Cautions = e.cautions(looks, out.Zones)
	out.Questions = e.questions(job, i, looks)
	return out
}

// checks are those of a zone as it is, with advice, and for each base that the
// plan leaves possible those of the floor at its end.
func (e *Engine) checks(now []assess.Check, zone *facts.Frame, course plan.Course) []assess.Check {
	var out []assess.Check
	for _, c := range now {
		if c.Zone == zone.ID() && c.Path == assess.NoPath {
			check.Advise(e.Figures, zone.Thing(), &c)
			out = append(out, c)
		}
	}
	for _, c := range course.Floor.Checks(0) {
		if c.Path != assess.NoPath && course.Look.Possible(c.Path) {
			out = append(out, c)
		}
	}
	return out
}

// buildUps are what each base that the plan leaves possible adds to the floor.
func (e *Engine) buildUps(course plan.Course) []assess.BuildUp {
	var out []assess.BuildUp
	for _, path := range course.Floor.Zones[0][0].Things(assess.ScopePath) {
		if base, _ := assess.ParsePath(path.ID()); course.Look.Possible(base) {
			out = append(out, check.BuildUp(e.Figures, path.Thing()))
		}
	}
	return out
}

// stricter reports whether zone z asks for more than the one that leads so far.
func stricter(zones []assess.ZoneResult, z, leading int) bool {
	a, b := zones[z].Span, zones[leading].Span
	return a.Low > b.Low || a.Low == b.Low && a.High > b.High
}

// cautions are the warnings of the looks and of the plans' steps, each once.
func (e *Engine) cautions(looks []*judge.Evaluation, zones []assess.ZoneResult) []assess.Caution {
	var ids []string
	for _, l := range looks {
		ids = append(ids, l.Cautions()...)
	}
	for _, z := range zones {
		for _, s := range z.Plan {
			ids = append(ids, s.Cautions...)
		}
	}
	seen := map[string]bool{}
	var out []assess.Caution
	for _, id := range ids {
		if c, ok := e.Pack.Cautions[id]; ok && !seen[id] {
			seen[id] = true
			out = append(out, c)
		}
	}
	return out
}
