package reports

import (
	"path"
	"strings"

	"underfoot/assess"
)

// answers are what was said, with how it is known. Declared values that nobody
// stated and parked answers stand among what was not checked.
func (b *builder) answers() Section {
	s := b.section(AnswersSection)
	s.Detail = true
	t := b.answerTable("answers")
	for i := range b.r.Said {
		if a := &b.r.Said[i]; !a.Default && !a.Parked {
			b.addAnswer(t, a)
		}
	}
	s.addTable("", t)
	if len(t.Rows) > 0 {
		s.Lead = []Para{{Text: b.say("report/answers.lead")}}
	}
	return s
}

func (b *builder) answerTable(id string) *Table {
	return &Table{ID: id, Shape: Grid, Columns: []Column{
		b.column("place", Group, 18), b.column("question", Title, 42), b.column("answer", Detail, 28),
		b.column("known", Detail, 28), b.column("note", Detail, 34), b.column("address", Aside, 26),
	}}
}

func (b *builder) addAnswer(t *Table, s *assess.Said) {
	tone := Plain
	if s.Answer.Reply != assess.Given {
		tone = Waiting
	}
	known := ""
	if s.Answer.Reply == assess.Given && !s.Default {
		known = b.basis(&s.Answer)
	}
	t.add(tone, b.placeOf(s.Address), b.named(s.Address), b.answer(s), known, b.note(&s.Answer), b.address(s.Address))
}

// answer is the value, or the reply that stands in its place.
func (b *builder) answer(s *assess.Said) string {
	switch s.Answer.Reply {
	case assess.NotSure:
		return b.say("report/reply.not_sure")
	case assess.CouldNotSee:
		return b.say("report/reply.could_not_see")
	case assess.DoesNotApply:
		return b.say("report/reply.does_not_apply")
	}
	return s.Value
}

// basis is how an answer is known: measured with what, seen, told, and when.
func (b *builder) basis(a *assess.Answer) string {
	text := b.say("report/basis.none")
	if a.Basis != assess.NoBasis {
		text = b.say("report/basis." + a.Basis.String())
	}
	if a.With != "" {
		text += " " + b.say("report/basis.with", "instrument", a.With)
	}
	if a.On != "" {
		text += ", " + string(a.On)
	}
	return text
}

// note is the note with the names of the photos, without the folders they lie in.
func (b *builder) note(a *assess.Answer) string {
	if len(a.Photos) == 0 {
		return a.Note
	}
	var names []string
	for _, p := range a.Photos {
		names = append(names, path.Base(strings.ReplaceAll(p, `\`, "/")))
	}
	photos := b.say("report/answers.photos", "names", strings.Join(names, ", "))
	return strings.TrimSpace(a.Note + "\n" + photos)
}
