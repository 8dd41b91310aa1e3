package reports

import "underfoot/assess"

// unchecked is what the report does not know or does not look at, so that
// nobody takes silence for a good answer.
func (b *builder) unchecked() Section {
	s := b.section(UncheckedSection)
	unsure, unsaid, parked := b.answerTable("unsure"), b.answerTable("unsaid"), b.answerTable("parked")
	for i := range b.r.Said {
		switch a := &b.r.Said[i]; {
		case a.Parked:
			b.addAnswer(parked, a)
		case a.Default:
			b.addAnswer(unsaid, a)
		case a.Answer.Reply == assess.NotSure || a.Answer.Reply == assess.CouldNotSee:
			b.addAnswer(unsure, a)
		}
	}
	s.addTable(b.say("report/unchecked.unsure"), unsure)
	s.addTable(b.say("report/unchecked.unsaid"), unsaid, Para{Text: b.say("report/unchecked.unsaid_lead")})
	uncomputed := b.uncomputed()
	s.addTable(b.say("report/unchecked.uncomputed"), uncomputed)
	if len(uncomputed.Rows) > 0 {
		s.Parts[len(s.Parts)-1].Detail = true
	}
	s.addTable(b.say("report/unchecked.parked"), parked)
	s.Parts = append(s.Parts, b.outside())
	return s
}

// uncomputed are the checks without a result on one side of their limit.
func (b *builder) uncomputed() *Table {
	t := &Table{ID: "uncomputed", Columns: []Column{
		b.column("place", Group, 18), b.column("stands", Mark, 18), b.column("what", Title, 40),
		b.column("note", Detail, 44), b.column("missing", Detail, 40),
	}}
	for i := range b.r.Areas {
		a := &b.r.Areas[i]
		for j := range a.Checks {
			c := &a.Checks[j]
			if (c.Outcome == assess.CheckOpen || c.Outcome == assess.CheckRefused) && !ruledOut(a, c.Zone, c.Path) {
				t.add(Waiting, place(a, c.Zone), b.say("report/check."+c.Outcome.String()), b.checkTitle(c), b.tell(c.Note), b.names(c.Missing))
			}
		}
	}
	return t
}

// outside is what this screening never looks at, whatever the answers are.
func (b *builder) outside() Part {
	p := Part{Heading: b.say("report/unchecked.outside")}
	for _, key := range []string{"structure", "lab", "services", "products", "law"} {
		p.Lead = append(p.Lead, Para{Text: b.say("report/unchecked." + "outside_" + key)})
	}
	return p
}
