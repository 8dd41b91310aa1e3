package rules

import (
	"cmp"

	"underfoot/assess/check"
	"underfoot/assess/facts"
	"underfoot/assess/result"
	"underfoot/assess/schema"
	"underfoot/rules/judge"
	"underfoot/rules/plan"
)

// Result is the whole answer to the job.
func (a *Assessment) Result() *result.Result {
	e := a.engine
	r := &result.Result{Job: a.job, Region: e.Region, Units: e.System, Language: e.Language, Today: a.day, Packs: e.refs(), Span: a.Span()}
	p := &plan.Planner{Judge: e.judge, Facts: e.facts, Describer: e.describer, Today: a.day}
	for i := range a.job.Areas {
		r.Areas = append(r.Areas, a.area(i, p))
	}
	r.Verdict = r.Span.Verdict()
	r.Answers, r.Labels = e.answers(a.floor, a.job), e.labels()
	return r
}

// area gathers what was found for one room.
func (a *Assessment) area(i int, p *plan.Planner) result.AreaResult {
	area, e := &a.job.Areas[i], a.engine
	out := result.AreaResult{ID: area.ID, Name: cmp.Or(area.Name, area.ID)}
	for z, frame := range a.floor.Zones[i] {
		evaluation := a.zones[i][z]
		zone := result.ZoneResult{ID: frame.ID(), Span: evaluation.Span, Verdict: evaluation.Span.Verdict(), Path: evaluation.Lead, Blocked: evaluation.Blocked,
			Paths: evaluation.Paths}
		planned := p.Zone(a.job, i, z, evaluation)
		zone.Plan, zone.BuildUps = planned.Steps, e.buildUps(planned)
		out.Checks = append(out.Checks, e.checks(a.floor.Checks(i), frame, planned)...)
		zone.Sentence = e.sentence(evaluation)
		out.Zones = append(out.Zones, zone)
		out.Findings = append(out.Findings, e.describer.Findings(evaluation, frame.ID(), a.several(i))...)
		out.Span = out.Span.Wider(evaluation.Span)
		if stricter(out.Zones, z, out.Leading) {
			out.Leading = z
		}
	}
	judge.SortFindings(out.Findings)
	out.Verdict = out.Span.Verdict()
	out.Sentence = out.Zones[out.Leading].Sentence
	if by := a.zones[i][out.Leading].LeadRuling; by != nil && by.Rule.Calls.MinVerdict() == result.Stop {
		out.Now = by.Rule.Text.Remedy
	}
	out.Cautions = e.cautions(a.zones[i], out.Zones)
	out.Questions = a.questions(i)
	return out
}

// checks are those of a zone as it is, with advice, and for each base that the
// plan leaves possible those of the floor at its end.
func (e *Engine) checks(now []result.Check, zone *facts.Frame, planned plan.Plan) []result.Check {
	var out []result.Check
	for _, c := range now {
		if c.Zone == zone.ID() && c.Path == result.NoPath {
			check.Advise(e.Figures, zone.Thing(), &c)
			out = append(out, c)
		}
	}
	for _, c := range planned.Floor.Checks(0) {
		if c.Path != result.NoPath && planned.Evaluation.Possible(c.Path) {
			out = append(out, c)
		}
	}
	return out
}

// buildUps are what each base that the plan leaves possible adds to the floor.
func (e *Engine) buildUps(planned plan.Plan) []result.BuildUp {
	var out []result.BuildUp
	for _, path := range planned.Floor.Zones[0][0].Things(schema.ScopePath) {
		if base, _ := result.ParsePath(path.ID()); planned.Evaluation.Possible(base) {
			out = append(out, check.BuildUp(e.Figures, path.Thing()))
		}
	}
	return out
}

// stricter reports whether zone z asks for more than the one that leads so far.
func stricter(zones []result.ZoneResult, z, leading int) bool {
	a, b := zones[z].Span, zones[leading].Span
	return a.Low > b.Low || a.Low == b.Low && a.High > b.High
}

// cautions are the warnings of the evaluations and of the plans' steps, each once.
func (e *Engine) cautions(evaluations []*judge.Evaluation, zones []result.ZoneResult) []result.Caution {
	var ids []string
	for _, l := range evaluations {
		ids = append(ids, l.Cautions()...)
	}
	for _, z := range zones {
		for _, s := range z.Plan {
			ids = append(ids, s.Cautions...)
		}
	}
	seen := map[string]bool{}
	var out []result.Caution
	for _, id := range ids {
		if c, ok := e.Pack.Cautions[id]; ok && !seen[id] {
			seen[id] = true
			out = append(out, c)
		}
	}
	return out
}
