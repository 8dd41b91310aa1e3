package screen

import (
	"slices"

	"underfoot/assess"
	"underfoot/assess/plaintext"
	"underfoot/assess/quantity"
	"underfoot/assess/schema"
	"underfoot/rules/interview"
)

// askReading lets the person say which reading of a value is meant. Enter alone
// picks none of them.
func (m *model) askReading(unclear *quantity.Unclear) {
	p := &picker{}
	p.add(m.say("screen/row.again"), m.home)
	for _, reading := range unclear.Readings {
		p.add(reading, func() { m.takeValue(reading) })
	}
	m.open(&pane{ask: m.say("interview/help.unclear"), said: []string{m.panes[0].ask, m.say("screen/say.wrote", "text", plaintext.Line(unclear.Text))}, field: p})
}

// askBasis asks how an answer is known, and then goes on.
func (m *model) askBasis(then func()) {
	p := &picker{}
	known := func(b assess.Basis) func() {
		return func() {
			m.detail.Basis = b
			then()
		}
	}
	p.add(m.say("screen/row.no_basis"), known(assess.NoBasis))
	for _, b := range interview.BasisChoices() {
		p.add(m.say("interview/basis."+b.String()), known(b))
	}
	m.open(&pane{ask: m.say("interview/basis.ask"), said: []string{m.panes[0].ask}, field: p})
}

// askDetail asks for what may stand beside an answer, in three steps, and
// returns to the question. Leaving it half way keeps what was said.
func (m *model) askDetail() {
	if !m.asking() {
		return
	}
	m.askBasis(func() {
		m.askBeside("instrument", m.detail.With, func(text string) {
			m.detail.With = text
			m.askBeside("note", m.detail.Note, func(text string) {
				m.detail.Note = text
				m.home()
			})
		})
	})
}

// askBeside asks for a text that may be empty.
func (m *model) askBeside(what, standing string, took func(string)) {
	m.open(&pane{ask: m.say("screen/say." + what), field: &entry{text: standing, example: m.example(m.say("screen/say." + what + "_e")), took: took}})
}

// knowing is what has been said of how the answer to come is known.
func (m *model) knowing() string {
	text := ""
	if basis := m.detail.Basis; basis != assess.NoBasis {
		text = m.say("interview/basis." + basis.String())
	}
	for _, part := range []string{m.detail.With, m.detail.Note} {
		switch {
		case part == "":
		case text == "":
			text = part
		default:
			text += "; " + part
		}
	}
	return text
}

// askWords takes a choice in the person's own words. What fits is marked in the
// list, to be looked at and taken there.
func (m *model) askWords() {
	if !m.asking() || !m.severalWords() {
		return
	}
	m.open(&pane{ask: m.say("screen/say.words"), said: []string{m.panes[0].ask}, field: &entry{took: m.markWords}})
}

func (m *model) markWords(text string) {
	d := m.prompt.Question.Decl
	set, err := m.Session.Catalogue.Read(d, text, m.System)
	if err != nil {
		m.notice = m.problem(err)
		return
	}
	m.home()
	list := m.top().field.(*picker)
	first := slices.IndexFunc(list.rows, func(r row) bool { return r.mark })
	list.marked = nil
	for i := range d.Choices {
		if set.Mask&(1<<i) != 0 {
			list.marked = append(list.marked, first+i)
		}
	}
	list.at = list.marked[0]
	m.build()
	m.notice = m.say("screen/say.found")
}

// standing is the answer that stands, in the words of the list; ok is false
// where there is none, or a list has only been added to.
func (m *model) standing() (label string, ok bool) {
	p := m.prompt
	switch {
	case !p.Answered || p.Form == interview.List && p.Before.Set == schema.SetNo && p.Before.Reply == assess.Given:
		return "", false
	case p.Form == interview.Family:
		return m.standingFamily(), true
	case p.Before.Reply != assess.Given:
		return m.replyLabel(p.Before.Reply), true
	case p.Form == interview.List:
		return m.say("interview/replies.complete"), true
	case p.Question.Decl.Kind == schema.KindYesNo && p.Before.Set != p.Question.Decl.Full():
		return m.choiceLabel(p.Question, p.Before.Set.Words(p.Question.Decl)[0]), true
	}
	return plaintext.Line(m.Session.Catalogue.Show(p.Question.ID, p.Before.Set, m.System)), true
}

// standingFamily names what was said to be so.
func (m *model) standingFamily() string {
	text := ""
	for _, q := range m.prompt.Members {
		a, _ := m.Session.Job.Answer(m.prompt.Address.Sibling(q.Decl.ID))
		switch {
		case a.Reply != assess.Given:
			return m.replyLabel(a.Reply)
		case a.Set.Mask == 1:
		case text == "":
			text = q.Text.Label
		default:
			text += "; " + q.Text.Label
		}
	}
	if text == "" {
		return m.say("interview/replies.none")
	}
	return text
}
