package screen

import (
	"slices"
	"strings"

	"underfoot/assess"
	"underfoot/assess/logic"
	"underfoot/assess/plaintext"
	"underfoot/assess/question"
	"underfoot/assess/schema"
	"underfoot/rules/interview"
)

// ask puts the prompt on the screen, alone.
func (m *model) ask(p interview.Prompt) {
	m.prompt, m.detail, m.notice = p, assess.Answer{}, ""
	q := &pane{ask: plaintext.Line(p.Text())}
	for _, item := range p.Items {
		q.items = append(q.items, plaintext.Line(item))
	}
	if kind := m.kind(); kind != "" {
		q.hints = append(q.hints, m.say("screen/say.kind", "kind", kind))
	}
	switch {
	case p.Form != interview.One, len(p.Question.Decl.Choices) > 0:
		q.field = m.picker()
	default:
		q.field = &entry{example: m.example(p.Question.Text.Example), took: m.takeText, text: m.written()}
	}
	switch {
	case p.Form == interview.Family:
		q.said = append(q.said, m.say("screen/say.family"))
	case m.severalWords():
		q.hints = append(q.hints, m.say("screen/say.many"))
	}
	m.panes = []*pane{q}
	m.build()
	m.pause()
}

// kind is what the listed thing that is asked about was said to be; empty where
// that is not said, or asked now.
func (m *model) kind() string {
	a := m.prompt.Address
	if a.Item == "" || a.Field == "kind" {
		return ""
	}
	a.Field = "kind"
	said, ok := m.Session.Job.Answer(a)
	q := m.Session.Catalogue.Find(a.Short())
	if !ok || said.Reply != assess.Given || q == nil {
		return ""
	}
	return plaintext.Line(m.Session.Catalogue.Show(q.ID, said.Set, m.System))
}

// severalWords reports whether an answer may be one of several choices.
func (m *model) severalWords() bool {
	d := m.prompt.Question.Decl
	return m.prompt.Form == interview.One && d.Kind == schema.KindChoice && len(d.Choices) > 2
}

// written is the value that stands, as it was written, to be written anew.
func (m *model) written() string {
	if !m.prompt.Answered || m.prompt.Before.Reply != assess.Given {
		return ""
	}
	return plaintext.Line(m.prompt.Before.Text)
}

// picker is the list of a prompt. It begins with what says nothing new: the
// answer that stands, and not being sure.
func (m *model) picker() *picker {
	p := &picker{}
	label, stands := m.standing()
	unsure := m.replyLabel(assess.NotSure)
	switch {
	case stands && label == unsure:
		p.add(unsure, m.keep)
	case stands:
		p.add(m.say("screen/row.keep", "answer", label), m.keep)
		fallthrough
	default:
		p.add(unsure, func() { m.reply(assess.NotSure) })
	}
	switch m.prompt.Form {
	case interview.Family:
		m.memberRows(p)
	case interview.List:
		m.listRows(p)
	default:
		m.choiceRows(p)
	}
	p.add(m.replyLabel(assess.CouldNotSee), func() { m.reply(assess.CouldNotSee) })
	if !m.prompt.Question.Decl.Always {
		p.add(m.replyLabel(assess.DoesNotApply), func() { m.reply(assess.DoesNotApply) })
	}
	return p
}

func (p *picker) add(label string, take func()) {
	p.rows = append(p.rows, row{label: label, take: take})
}

func (m *model) choiceRows(p *picker) {
	first := len(p.rows)
	choices := m.prompt.Question.Decl.Choices
	for i, c := range choices {
		p.rows = append(p.rows, row{label: m.choiceLabel(m.prompt.Question, c), mark: m.severalWords(), take: func() { m.takeWords(choices[i : i+1]) }})
	}
	if m.severalWords() {
		p.several = func(marked []int) {
			var said []string
			for _, i := range marked {
				said = append(said, choices[i-first])
			}
			m.takeWords(said)
		}
	}
}

// memberRows are the troubles of a family. None is a row of its own: nothing
// marked does not mean none.
func (m *model) memberRows(p *picker) {
	first := len(p.rows)
	p.several = func(marked []int) {
		so := map[int]logic.Truth{}
		for _, i := range marked {
			so[i-first] = logic.Yes
			if slices.Contains(p.unsure, i) {
				so[i-first] = logic.Open
			}
		}
		m.takeMembers(so)
	}
	for i, q := range m.prompt.Members {
		p.rows = append(p.rows, row{label: q.Text.Ask, short: q.Text.Label, mark: true, doubt: true,
			take: func() { m.takeMembers(map[int]logic.Truth{i: logic.Yes}) }})
	}
	m.markStanding(p, first)
	p.add(m.say("interview/replies.none"), func() { m.takeMembers(nil) })
}

// markStanding marks what was said before of each member, so that going back
// changes nothing that is not touched.
func (m *model) markStanding(p *picker, first int) {
	if same(m.prompt.Stood) {
		return
	}
	for i, a := range m.prompt.Stood {
		switch {
		case a.Reply != assess.Given:
			p.flip(first + i)
			p.flip(first + i)
		case a.Set == schema.SetYes:
			p.flip(first + i)
		}
	}
	p.stood = len(p.marked)
}

// same reports whether every member was answered alike: the first row says it.
func same(answers []assess.Answer) bool {
	for _, a := range answers {
		if a.Reply != answers[0].Reply || a.Set != answers[0].Set {
			return false
		}
	}
	return true
}

func (m *model) listRows(p *picker) {
	add, all := "add", "complete"
	if len(m.prompt.Items) == 0 {
		add, all = "add_first", "empty"
	}
	p.add(m.say("interview/replies."+add), func() { m.commit(m.Session.Add(m.prompt)) })
	p.add(m.say("interview/replies."+all), func() { m.takeAnswer(assess.Answer{Set: schema.SetYes, Text: "yes"}) })
	for i, name := range m.prompt.Items {
		p.add(m.say("interview/replies.drop")+" "+name, func() { m.commit(m.Session.Drop(m.prompt, i)) })
	}
}

func (m *model) replyLabel(r assess.Reply) string {
	return m.say("interview/replies." + strings.ReplaceAll(r.String(), " ", "_"))
}

// choiceLabel is what a choice is called; yes and no call themselves so.
func (m *model) choiceLabel(q *question.Question, choice string) string {
	if label := q.Text.Choices[choice]; label != "" {
		return label
	}
	if q.Decl.Kind == schema.KindYesNo {
		return m.say("screen/row." + choice)
	}
	return choice
}
