package screen

import (
	"errors"
	"slices"
	"strings"

	"underfoot/assess"
	"underfoot/assess/logic"
	"underfoot/assess/message"
	"underfoot/assess/quantity"
	"underfoot/assess/question"
	"underfoot/rules/interview"
)

// takeText takes what was written. A value that stands and was not touched is
// left as it is, with all that is noted beside it.
func (m *model) takeText(text string) {
	switch {
	case text == "":
		m.notice = m.say("screen/say.empty")
	case text == m.written():
		m.keep()
	case assess.ParseReply(strings.ToLower(text)) != assess.Given:
		m.reply(assess.ParseReply(strings.ToLower(text)))
	default:
		m.takeValue(text)
	}
}

// takeWords takes one choice, or one of several.
func (m *model) takeWords(choices []string) { m.takeValue(strings.Join(choices, ", ")) }

func (m *model) takeValue(text string) {
	set, err := m.Session.Catalogue.Read(m.prompt.Question.Decl, text, m.System)
	var unclear *quantity.Unclear
	switch {
	case errors.As(err, &unclear):
		m.askReading(unclear)
	case err != nil:
		m.home()
		m.notice = m.problem(err)
	case m.prompt.WantsBasis() && m.detail.Basis == assess.NoBasis:
		m.askBasis(func() { m.takeAnswer(assess.Answer{Set: set, Text: text}) })
	default:
		m.takeAnswer(assess.Answer{Set: set, Text: text})
	}
}

func (m *model) problem(err error) string {
	var refused *question.Refused
	if errors.As(err, &refused) {
		return refused.What.String() + ": " + refused.Hint.String()
	}
	return m.Language.Say(message.Of(err))
}

// takeMembers takes a whole family: those that are so or not sure, and of all
// others that they are not.
func (m *model) takeMembers(so map[int]logic.Truth) {
	answers := m.prompt.MemberAnswers(func(i int) logic.Truth {
		if t, said := so[i]; said {
			return t
		}
		return logic.No
	})
	for i := range answers {
		answers[i] = m.known(answers[i])
	}
	m.commit(m.Session.AnswerFamily(m.prompt, answers))
}

// reply takes an answer without a value; of a family for every member.
func (m *model) reply(r assess.Reply) {
	if m.prompt.Form != interview.Family {
		m.takeAnswer(assess.Answer{Reply: r})
		return
	}
	same := m.known(assess.Answer{Reply: r})
	m.commit(m.Session.AnswerFamily(m.prompt, slices.Repeat([]assess.Answer{same}, len(m.prompt.Members))))
}

// keep takes what stands once more, and goes on.
func (m *model) keep() {
	if m.prompt.Form != interview.Family {
		m.takeAnswer(m.prompt.Before)
		return
	}
	answers := make([]assess.Answer, len(m.prompt.Members))
	for i, q := range m.prompt.Members {
		standing, _ := m.Session.Job.Answer(m.prompt.Address.Sibling(q.Decl.ID))
		answers[i] = m.known(standing)
	}
	m.commit(m.Session.AnswerFamily(m.prompt, answers))
}

func (m *model) takeAnswer(a assess.Answer) { m.commit(m.Session.Answer(m.prompt, m.known(a))) }

// known is the answer with how it is known, where that was said.
func (m *model) known(a assess.Answer) assess.Answer {
	if d := m.detail; d.Basis != assess.NoBasis || d.With != "" || d.Note != "" {
		a.Basis, a.With, a.Note = d.Basis, d.With, d.Note
	}
	return a
}

// commit saves at once what the session has taken, and asks the next question.
func (m *model) commit(changes []interview.Change) {
	if err := m.Save(changes); err != nil {
		m.quit(err)
		return
	}
	if alarm := m.Session.Alarm(changes); alarm != nil {
		m.quit(alarm)
		return
	}
	m.next()
}

// next asks the next question. The first time that the verdict waits for
// nothing the person is told, and may stop.
func (m *model) next() {
	p, more := m.Session.Next()
	if !more {
		m.quit(nil)
		return
	}
	m.count()
	m.ask(p)
	if m.tally.waiting == 0 && !m.settled {
		m.settled = true
		m.sayHowFar()
	}
}

func (m *model) count() {
	t := &m.tally
	t.answered, t.waiting, t.later = m.Session.Progress()
	t.span = m.Session.Span()
}

// sayHowFar tells that the verdict no longer waits.
func (m *model) sayHowFar() {
	p := &picker{}
	p.add(m.say("screen/row.go_on"), m.home)
	p.add(m.say("screen/row.stop_here"), func() { m.quit(ErrStopped) })
	m.open(&pane{ask: m.say("interview/progress.settled"), field: p})
}

// back leaves what is asked about an answer, or asks the question before.
func (m *model) back() {
	if !m.asking() {
		m.home()
		return
	}
	p, ok := m.Session.Back()
	if !ok {
		m.notice = m.say("screen/say.first")
		return
	}
	m.count()
	m.ask(p)
}
