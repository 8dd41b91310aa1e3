package reports

import (
	"underfoot/assess"
	"underfoot/assess/result"
)

// unchecked is what the report does not know or does not look at, so that
// nobody takes silence for a good answer.
func (b *builder) unchecked() Section {
	s := b.section(UncheckedSection)
	var unsure, unsaid, parked []*result.AnswerRow
	for i := range b.r.Answers {
		switch a := &b.r.Answers[i]; {
		case a.Parked:
			parked = append(parked, a)
		case a.Default:
			unsaid = append(unsaid, a)
		case a.Answer.Reply == assess.NotSure || a.Answer.Reply == assess.CouldNotSee:
			unsure = append(unsure, a)
		}
	}
	s.addTable(b.say("report/unchecked.unsure"), b.answerTable("unsure").Of(b.language, unsure))
	s.addTable(b.say("report/unchecked.unsaid"), b.answerTable("unsaid").Of(b.language, unsaid), Para{Text: b.say("report/unchecked.unsaid_lead")})
	uncomputed := b.uncomputed()
	s.addTable(b.say("report/unchecked.uncomputed"), uncomputed)
	if len(uncomputed.Rows) > 0 {
		s.Parts[len(s.Parts)-1].Detail = true
	}
	s.addTable(b.say("report/unchecked.parked"), b.answerTable("parked").Of(b.language, parked))
	s.Parts = append(s.Parts, b.outside())
	return s
}

// uncomputed are the checks without a result on one side of their limit.
func (b *builder) uncomputed() *Table {
	var list []checkOf
	for i := range b.r.Areas {
		a := &b.r.Areas[i]
		for j := range a.Checks {
			c := &a.Checks[j]
			if (c.Outcome == result.CheckOpen || c.Outcome == result.CheckRefused) && !ruledOut(a, c.Zone, c.Path) {
				list = append(list, checkOf{c, a})
			}
		}
	}
	return b.checkTable().Of(b.language, list)
}

// A checkOf is a check with its room.
type checkOf struct {
	*result.Check
	area *result.AreaResult
}

func (b *builder) checkTable() TableOf[checkOf] {
	return TableOf[checkOf]{ID: "uncomputed", Tone: func(checkOf) Tone { return Waiting }, Columns: []ColumnOf[checkOf]{
		TextColumn("report/column.place", Group, 18, func(c checkOf) string { return place(c.area, c.Zone) }),
		TextColumn("report/column.stands", Mark, 18, func(c checkOf) string { return b.say("report/check." + c.Outcome.String()) }),
		TextColumn("report/column.what", Title, 40, func(c checkOf) string { return b.checkTitle(c.Check) }),
		TextColumn("report/column.note", Detail, 44, func(c checkOf) string { return b.text(c.Note) }),
		TextColumn("report/column.missing", Detail, 40, func(c checkOf) string { return b.names(c.Missing) }),
	}}
}

// outside is what this screening never looks at, whatever the answers are.
func (b *builder) outside() Part {
	p := Part{Heading: b.say("report/unchecked.outside")}
	for _, key := range []string{"structure", "lab", "services", "products", "law"} {
		p.Lead = append(p.Lead, Para{Text: b.say("report/unchecked." + "outside_" + key)})
	}
	return p
}
