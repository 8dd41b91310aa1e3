package reports

import (
	"strconv"

	"underfoot/assess"
)

// firstQuestions is how many questions of a room stand in a short print.
const firstQuestions = 6

// questions are what is worth finding out, the deciding one of each room first.
func (b *builder) questions() Section {
	s := b.section(QuestionsSection)
	t := &Table{ID: "questions", Columns: []Column{
		b.column("place", Group, 18), b.column("order", Mark, 10), b.column("question", Title, 40),
		b.column("how", Detail, 50), b.column("who", Detail, 16), b.column("decides", Aside, 36), b.column("address", Aside, 28),
	}}
	for i := range b.r.Areas {
		a := &b.r.Areas[i]
		for j := range a.Questions {
			q := &a.Questions[j]
			order := b.say("report/questions.then")
			tone := Plain
			switch {
			case q.Before:
				order = b.say("report/questions.before")
			case j == 0:
				order, tone = b.say("report/questions.first"), Waiting
			}
			t.Rows = append(t.Rows, Row{Tone: tone, Detail: j >= firstQuestions, Cells: cells(place(a, q.Address.Zone), order, b.asked(q), q.How, q.Who, b.decides(q), b.address(q.Address))})
		}
	}
	s.addTable("", t)
	if len(t.Rows) > 0 {
		s.Lead = []Para{{Text: b.say("report/questions.lead")}}
	}
	return s
}

// asked is the question with the item it is about.
func (b *builder) asked(q *assess.Ask) string {
	if q.Address.Item != "" {
		return q.Text + " (" + q.Address.Item + ")"
	}
	return q.Text
}

// decides are the paths that an answer may settle, and how many findings.
func (b *builder) decides(q *assess.Ask) string {
	var out []string
	findings := 0
	for _, word := range q.Decides {
		if p, ok := assess.ParsePath(word); ok {
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
