package reports

import (
	"slices"
	"strings"

	"underfoot/assess/result"
)

// plan is what is done, in working order, zone by zone.
func (b *builder) plan() Section {
	s := b.section(PlanSection)
	s.addTable("", b.planTable().Of(b.language, b.steps()))
	if len(s.Parts) > 0 {
		s.Lead = []Para{{Text: b.say("report/plan.lead")}}
	}
	return s
}

func (b *builder) planTable() TableOf[step] {
	return TableOf[step]{ID: "plan", Tone: stepTone, Columns: []ColumnOf[step]{
		TextColumn("report/column.place", Group, 12, func(s step) string { return s.place }),
		TextColumn("report/column.step", Mark, 7, func(s step) string { return b.say("report/plan.step", "n", s.n) }),
		TextColumn("report/column.text", Title, 30, b.stepText),
		TextColumn("report/column.reason", Detail, 26, func(s step) string { return s.Sentence }),
		TextColumn("report/column.who", Detail, 11, func(s step) string { return s.Who }),
		TextColumn("report/column.if", Detail, 20, func(s step) string { return s.If }),
		TextColumn("report/column.hold", Detail, 24, func(s step) string { return s.Hold }),
		TextColumn("report/column.before", Detail, 26, func(s step) string { return b.names(append(slices.Clip(s.Pending), s.Before...)) }),
		TextColumn("report/column.cautions", Detail, 9, func(s step) string { return b.warned(s.Cautions) }),
		TextColumn("report/column.verify", Aside, 90, func(s step) string { return strings.Join(s.Verify, "\n") }),
		TextColumn("report/column.needs", Aside, 90, func(s step) string { return strings.Join(s.Needs, "\n") }),
		TextColumn("report/column.otherways", Aside, 40, func(s step) string { return b.paths(s.Alternatives) }),
	}}
}

// A step is one of a zone's plan, numbered from 1.
type step struct {
	place string
	n     int
	*result.PlanStep
}

// steps are those of every zone's plan.
func (b *builder) steps() []step {
	var list []step
	b.eachZone(func(a *result.AreaResult, z *result.ZoneResult) {
		for i := range z.Plan {
			list = append(list, step{place(a, z.ID), i + 1, &z.Plan[i]})
		}
	})
	return list
}

// stepText is what is done. Where every base is struck out and nothing is left
// to take up, another finish is the answer; a step that comes a second time
// needs a new record.
func (b *builder) stepText(p step) string {
	switch {
	case p.Path == result.NoPath:
		return b.say("report/plan.other_finish")
	case p.Repeats:
		return p.Text + " " + b.say("report/plan.repeats")
	}
	return p.Text
}

func (b *builder) paths(list []result.PathID) string {
	out := make([]string, len(list))
	for i, p := range list {
		out[i] = b.path(p)
	}
	return b.lines(out)
}

func (b *builder) eachZone(visit func(*result.AreaResult, *result.ZoneResult)) {
	for i := range b.r.Areas {
		a := &b.r.Areas[i]
		for j := range a.Zones {
			visit(a, &a.Zones[j])
		}
	}
}

func stepTone(p step) Tone {
	switch p.Path.MinVerdict() {
	case result.Stop:
		return Urgent
	case result.Repair:
		return Waiting
	}
	return Plain
}
