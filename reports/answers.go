package reports

import (
	"path"
	"strings"

	"underfoot/assess"
	"underfoot/assess/result"
)

// answers are what was said, with how it is known. Declared values that nobody
// stated and parked answers stand among what was not checked.
func (b *builder) answers() Section {
	s := b.section(AnswersSection)
	s.Detail = true
	var list []*result.AnswerRow
	for i := range b.r.Answers {
		if a := &b.r.Answers[i]; !a.Default && !a.Parked {
			list = append(list, a)
		}
	}
	s.addTable("", b.answerTable("answers").Of(b.language, list))
	if len(list) > 0 {
		s.Lead = []Para{{Text: b.say("report/answers.lead")}}
	}
	return s
}

func (b *builder) answerTable(id string) TableOf[*result.AnswerRow] {
	return TableOf[*result.AnswerRow]{ID: id, Shape: Grid, Tone: answerTone, Columns: []ColumnOf[*result.AnswerRow]{
		TextColumn("report/column.place", Group, 18, func(s *result.AnswerRow) string { return b.placeOf(s.Address) }),
		TextColumn("report/column.question", Title, 42, func(s *result.AnswerRow) string { return b.named(s.Address) }),
		TextColumn("report/column.answer", Detail, 28, b.answer),
		TextColumn("report/column.known", Detail, 28, b.known),
		TextColumn("report/column.note", Detail, 34, func(s *result.AnswerRow) string { return b.note(&s.Answer) }),
		TextColumn("report/column.address", Aside, 26, func(s *result.AnswerRow) string { return b.address(s.Address) }),
	}}
}

func answerTone(s *result.AnswerRow) Tone {
	if s.Answer.Reply != assess.Given {
		return Waiting
	}
	return Plain
}

// known is how a value is known; a declared one, and a reply in the place of a
// value, are known in no way.
func (b *builder) known(s *result.AnswerRow) string {
	if s.Answer.Reply != assess.Given || s.Default {
		return ""
	}
	return b.basis(&s.Answer)
}

// answer is the value, or the reply that stands in its place.
func (b *builder) answer(s *result.AnswerRow) string {
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
