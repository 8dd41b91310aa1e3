package reports

import (
	"strings"

	"underfoot/assess/result"
)

// summary is the outcome of the job, the sentence that explains it and the one
// thing to find out first.
func (b *builder) summary() Section {
	s := b.section(SummarySection)
	s.Lead = []Para{{
		Label: b.say("report/summary.outcome"),
		Text: b.say("report/summary.sentence",
			"verdict", b.verdict(b.r.Verdict), "means", b.say("report/verdict."+b.r.Verdict.String()+"_means")),
		Tone: verdictTone(b.r.Verdict),
	}}
	if a := b.decisive(); a != nil {
		s.Lead = append(s.Lead, b.reasons(a)...)
	}
	if len(b.r.Areas) > 1 {
		s.addTable("", b.outcomes())
	}
	return s
}

// decisive is the area that the job's verdict comes from: the one that may ask
// most of the reader, the first among equals.
func (b *builder) decisive() *result.AreaResult {
	var worst *result.AreaResult
	for i := range b.r.Areas {
		a := &b.r.Areas[i]
		if worst == nil || a.Span.High > worst.Span.High ||
			a.Span.High == worst.Span.High && a.Span.Low > worst.Span.Low {
			worst = a
		}
	}
	return worst
}

func (b *builder) reasons(a *result.AreaResult) []Para {
	var out []Para
	if a.Sentence != "" {
		out = append(out, Para{
			Label: b.say("report/summary.reason"),
			Text:  b.located("reason_text", areaName(a), a.Sentence),
		})
	}
	if a.Now != "" {
		out = append(out, Para{Label: b.say("report/summary.now"), Text: a.Now, Tone: Urgent})
	} else if first := firstStep(&a.Zones[a.Leading]); first != "" {
		out = append(out, Para{Label: b.say("report/summary.first"), Text: first})
	}
	if a.Zones[a.Leading].Path == result.CallService {
		return out // nothing else matters until this is dealt with
	}
	for _, key := range []string{"settled", "later"} {
		if steps := b.stepsOf(a, key == "later"); steps != "" {
			out = append(out, Para{Label: b.say("report/summary." + key), Text: steps})
		}
	}
	if len(a.Questions) > 0 && !a.Questions[0].Before {
		q := a.Questions[0]
		out = append(out, Para{
			Label: b.say("report/summary.deciding"),
			Text:  b.located("deciding_text", place(a, q.Address.Zone), b.asked(&q)),
			Tone:  Waiting,
		})
		if q.How != "" {
			out = append(out, Para{Label: b.say("report/summary.how"), Text: q.How})
		}
	}
	return out
}

// firstStep is what the plan begins with, where that is work and no question.
func firstStep(z *result.ZoneResult) string {
	if len(z.Plan) == 0 || z.Plan[0].Path == result.FindOut || z.Path.MinVerdict() != result.Repair {
		return ""
	}
	return z.Plan[0].Text
}

// located is a sentence with its place, which says nothing where there is only one.
func (b *builder) located(key, place, text string) string {
	if len(b.r.Areas) == 1 && len(b.r.Areas[0].Zones) == 1 {
		return text
	}
	return b.say("report/summary."+key, "place", place, "text", text)
}

// stepsOf are those that are called for in any zone whatever the missing answers
// say: at once, or later than the stop that leads there.
func (b *builder) stepsOf(a *result.AreaResult, later bool) string {
	var out []string
	for i := range a.Zones {
		z := &a.Zones[i]
		if z.Path.MinVerdict() == result.Stop != later {
			continue
		}
		for _, step := range b.settled(z) {
			if len(a.Zones) > 1 {
				step = b.zoneName(a, z) + ": " + step
			}
			out = append(out, step)
		}
	}
	return strings.Join(distinct(out), "; ")
}

// outcomes is one row for each area.
func (b *builder) outcomes() *Table {
	return TableOf[*result.AreaResult]{
		ID: "outcomes", Tone: func(a *result.AreaResult) Tone { return verdictTone(a.Verdict) },
		Columns: []ColumnOf[*result.AreaResult]{
			TextColumn("report/column.place", Title, 20, areaName),
			TextColumn("report/column.outcome", Mark, 14, func(a *result.AreaResult) string { return b.verdict(a.Verdict) }),
			TextColumn("report/column.leads", Detail, 28, b.leading),
			TextColumn("report/column.reason", Detail, 44, func(a *result.AreaResult) string { return a.Sentence }),
			TextColumn("report/column.deciding", Detail, 34, deciding),
		},
	}.Of(b.language, pointers(b.r.Areas))
}

func (b *builder) leading(a *result.AreaResult) string {
	if a.Leading < 0 || a.Leading >= len(a.Zones) {
		return b.path(result.NoPath)
	}
	return b.path(a.Zones[a.Leading].Path)
}

func deciding(a *result.AreaResult) string {
	if len(a.Questions) == 0 || a.Questions[0].Before {
		return ""
	}
	return a.Questions[0].Text
}
