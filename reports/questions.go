package reports

import (
	"strconv"

	"underfoot/assess/result"
)

// firstQuestions is how many questions of a room stand in a short print.
const firstQuestions = 6

// questions are what is worth finding out, the deciding one of each room first.
func (b *builder) questions() Section {
	s := b.section(QuestionsSection)
	var list []question
	for i := range b.r.Areas {
		a := &b.r.Areas[i]
		for j := range a.Questions {
			list = append(list, question{&a.Questions[j], a, j})
		}
	}
	s.addTable("", b.questionTable().Of(b.language, list))
	if len(list) > 0 {
		s.Lead = []Para{{Text: b.say("report/questions.lead")}}
	}
	return s
}

// A question is one of a room's, counted from 0.
type question struct {
	*result.Question
	area *result.AreaResult
	n    int
}

// deciding reports whether the room hangs on this question.
func (q question) deciding() bool { return q.n == 0 && !q.Before }

func (b *builder) questionTable() TableOf[question] {
	return TableOf[question]{
		ID:     "questions",
		Tone:   func(q question) Tone { return map[bool]Tone{true: Waiting, false: Plain}[q.deciding()] },
		Detail: func(q question) bool { return q.n >= firstQuestions },
		Columns: []ColumnOf[question]{
			TextColumn("report/column.place", Group, 18, func(q question) string { return place(q.area, q.Address.Zone) }),
			TextColumn("report/column.order", Mark, 10, b.order),
			TextColumn("report/column.question", Title, 40, func(q question) string { return b.asked(q.Question) }),
			TextColumn("report/column.how", Detail, 50, func(q question) string { return q.How }),
			TextColumn("report/column.who", Detail, 16, func(q question) string { return q.Who }),
			TextColumn("report/column.decides", Aside, 36, func(q question) string { return b.decides(q.Question) }),
			TextColumn("report/column.address", Aside, 28, func(q question) string { return b.address(q.Address) }),
		},
	}
}

// order says when a question is asked.
func (b *builder) order(q question) string {
	switch {
	case q.Before:
		return b.say("report/questions.before")
	case q.deciding():
		return b.say("report/questions.first")
	}
	return b.say("report/questions.then")
}

// asked is the question with the item it is about.
func (b *builder) asked(q *result.Question) string {
	if q.Address.Item != "" {
		return q.Text + " (" + q.Address.Item + ")"
	}
	return q.Text
}

// decides are the paths that an answer may settle, and how many findings.
func (b *builder) decides(q *result.Question) string {
	var out []string
	findings := 0
	for _, word := range q.Decides {
		if p, ok := result.ParsePath(word); ok {
			out = append(out, b.path(p))
		} else {
			findings++
		}
	}
	text := b.lines(out)
	if findings > 0 {
		n := b.say("report/questions.findings", "n", strconv.Itoa(findings))
		if text != "" {
			n = "\n" + n
		}
		text += n
	}
	return text
}
