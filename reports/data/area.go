package data

import (
	"math"
	"strings"

	"underfoot/assess/quantity"
	"underfoot/assess/result"
	"underfoot/assess/schema"
)

func newArea(r *result.AreaResult, t tongue, all bool) area {
	w := writer{tongue: t, zoned: len(r.Zones) > 1}
	a := area{
		ID:        r.ID,
		Name:      r.Name,
		Verdict:   r.Verdict.String(),
		Path:      result.NoPath.String(),
		Zones:     each(r.Zones, w.zone),
		Plan:      []step{},
		Paths:     []path{},
		Findings:  each(wanted(r.Findings, all), w.finding),
		Checks:    each(r.Checks, w.check),
		Questions: each(r.Questions, w.question),
		Cautions: each(r.Cautions, func(c *result.Caution) caution {
			return caution{c.ID, c.Text, sources(c.Sources)}
		}),
	}
	if r.Leading >= 0 && r.Leading < len(a.Zones) {
		z := a.Zones[r.Leading]
		a.Path, a.Plan, a.Paths = z.Path, z.Plan, z.Paths
	}
	return a
}

// wanted keeps what fails and what is not settled, or everything.
func wanted(findings []result.Finding, all bool) []result.Finding {
	if all {
		return findings
	}
	var kept []result.Finding
	for _, f := range findings {
		if f.Outcome == result.Fails || f.Outcome == result.NotSettled {
			kept = append(kept, f)
		}
	}
	return kept
}

// writer turns the things of one area into the contract's; zoned says that
// addresses must name their zone, since the area has several.
type writer struct {
	tongue
	zoned bool
}

func (w writer) address(a *schema.Address) string {
	if w.zoned && a.Zone != "" {
		return a.Zone + "." + a.Local()
	}
	return a.Local()
}

func (w writer) addresses(list []schema.Address) []string { return each(list, w.address) }

func (w writer) zone(z *result.ZoneResult) zone {
	return zone{
		ID:      z.ID,
		Verdict: z.Verdict.String(),
		Path:    z.Path.String(),
		Plan:    each(z.Plan, w.step),
		Paths: each(z.Paths, func(p *result.PathStanding) path {
			return path{p.Path.String(), p.State.String(), listed(p.FindingIDs), w.addresses(p.Questions)}
		}),
	}
}

func (t tongue) step(s *result.PlanStep) step {
	return step{
		Path:       s.Path.String(),
		Text:       s.Text,
		Who:        s.Who,
		Quantities: each(s.Quantities, t.material),
	}
}

func (w writer) finding(f *result.Finding) finding {
	return finding{
		ID: f.ID, Rule: f.Rule, Subject: f.Subject,
		Outcome: f.Outcome.String(), Presumed: f.Presumed, Protects: string(f.Protects),
		Text: f.Text, Why: f.Why, Remedy: f.Remedy,
		Value: f.Value, Limit: f.Limit, Unit: f.Unit,
		Missing: w.addresses(f.Missing), Sources: sources(f.Sources),
	}
}

func (w writer) check(c *result.Check) check {
	k := check{
		ID:      c.ID,
		Outcome: c.Outcome.String(),
		Value:   newSpan(c.Value),
		Limit:   bound(strictest(c)),
		Unit:    baseUnits[c.Dimension],
		Margin:  bound(c.Margin.Lo),
		Formula: formula(c),
		Missing: w.addresses(c.Missing),
		Sources: sources(c.Sources),
		Notes:   w.tellAll(c.Notes),
		Options: each(c.Options, w.option),
	}
	if c.Outcome == result.CheckRefused {
		k.Value, k.Limit, k.Margin = span{}, nil, nil
	}
	return k
}

// strictest is the end of the limit that asks more of the floor; the margin
// that is written is the worst one, so the two belong together.
func strictest(c *result.Check) float64 {
	if c.AtLeast {
		return c.Limit.Hi
	}
	return c.Limit.Lo
}

// baseUnits are the units in which values of each dimension are written.
var baseUnits = map[quantity.Dimension]string{
	quantity.Number: "", quantity.Length: "in", quantity.Area: "ft2", quantity.Load: "psf", quantity.Weight: "lb",
	quantity.Strength: "psi", quantity.Ratio: "L/x", quantity.Percent: "%", quantity.Year: "year", quantity.Days: "days",
	quantity.Emission: "lb per 1000 ft2 in 24 h", quantity.Points: "percentage points",
}

// formula is every computed line of the check's arithmetic, in order.
func formula(c *result.Check) string {
	if c.Work == nil {
		return ""
	}
	var lines []string
	for _, l := range c.Work.Lines {
		if l.Expr != "" {
			lines = append(lines, l.Name+" = "+l.Expr)
		}
	}
	return strings.Join(lines, "; ")
}

func (w writer) question(q *result.Question) question {
	return question{w.address(&q.Address), q.Text, q.How, listed(q.Decides)}
}

func sources(list []result.Source) []source {
	return each(list, func(s *result.Source) source { return source{s.ID, s.Title, s.Edition, s.Known} })
}

func newSpan(r quantity.Range) span { return span{bound(r.Lo), bound(r.Hi)} }

// bound is nil for an end that nothing is known about.
func bound(v float64) *float64 {
	if math.IsInf(v, 0) || math.IsNaN(v) {
		return nil
	}
	return &v
}

func listed(list []string) []string {
	if list == nil {
		return []string{}
	}
	return list
}

// each turns every element of a list; the result is empty, never nil.
func each[A, B any](list []A, turn func(*A) B) []B {
	out := make([]B, len(list))
	for i := range list {
		out[i] = turn(&list[i])
	}
	return out
}
