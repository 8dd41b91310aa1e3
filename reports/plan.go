package reports

import (
	"slices"
	"strconv"
	"strings"

	"underfoot/assess"
)

// plan is what is done, in working order, zone by zone.
func (b *builder) plan() Section {
	s := b.section(PlanSection)
	steps := &Table{ID: "plan", Columns: []Column{
		b.column("place", Group, 12), b.column("step", Mark, 7), b.column("text", Title, 30),
		b.column("reason", Detail, 26), b.column("who", Detail, 11), b.column("if", Detail, 20), b.column("hold", Detail, 24),
		b.column("before", Detail, 26), b.column("cautions", Detail, 9), b.column("verify", Aside, 90),
		b.column("needs", Aside, 90), b.column("otherways", Aside, 40),
	}}
	b.eachStep(func(place, n string, p *assess.PlanStep) {
		steps.add(stepTone(p), place, b.say("report/plan.step", "n", n), b.stepText(p), p.Because, p.Who, p.If, p.Hold,
			b.names(append(slices.Clip(p.Ask), p.Before...)), b.warned(p.Cautions), strings.Join(p.Verify, "\n"),
			strings.Join(p.Needs, "\n"), b.paths(p.Alternatives))
	})
	s.addTable("", steps)
	if len(s.Parts) > 0 {
		s.Lead = []Para{{Text: b.say("report/plan.lead")}}
	}
	return s
}

// eachStep visits the steps of every zone's plan with their place and number.
func (b *builder) eachStep(visit func(place, n string, p *assess.PlanStep)) {
	b.eachZone(func(a *assess.AreaResult, z *assess.ZoneResult) {
		for i := range z.Plan {
			visit(place(a, z.ID), strconv.Itoa(i+1), &z.Plan[i])
		}
	})
}

// stepText is what is done. Where every base is struck out and nothing is left
// to take up, another finish is the answer; a step that comes a second time
// needs a new record.
func (b *builder) stepText(p *assess.PlanStep) string {
	switch {
	case p.Path == assess.NoPath:
		return b.say("report/plan.other_finish")
	case p.Repeats:
		return p.Text + " " + b.say("report/plan.repeats")
	}
	return p.Text
}

func (b *builder) paths(list []assess.PathID) string {
	out := make([]string, len(list))
	for i, p := range list {
		out[i] = b.path(p)
	}
	return b.lines(out)
}

func (b *builder) eachZone(visit func(*assess.AreaResult, *assess.ZoneResult)) {
	for i := range b.r.Areas {
		a := &b.r.Areas[i]
		for j := range a.Zones {
			visit(a, &a.Zones[j])
		}
	}
}

func stepTone(p *assess.PlanStep) Tone {
	switch p.Path.Asks() {
	case assess.Stop:
		return Urgent
	case assess.Repair:
		return Waiting
	}
	return Plain
}
