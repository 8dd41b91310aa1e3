package screen

import (
	"slices"

	tea "github.com/charmbracelet/bubbletea"

	"underfoot/assess/message"
	"underfoot/assess/plaintext"
	"underfoot/rules/interview"
)

// A page is a text to read, as long as it needs to be.
type page struct {
	parts  []part
	text   []string // as it is broken for the width
	from   int
	height int // of the part that was last seen
}

// A part is one heading of a page with what stands under it.
type part struct {
	head  string
	texts []string
}

// explain opens help: why the question is asked and how it is answered, what
// stands in full, and every key.
func (m *model) explain() {
	q, head := m.prompt.Question.Text, func(name string) string { return m.say("interview/help." + name) }
	p := &page{}
	p.add(m.say("screen/help.said"), m.notice)
	asked := m.panes[0]
	p.add(m.say("screen/help.asked"), slices.Concat([]string{m.prompt.Text()}, asked.said, asked.hints)...)
	p.add(head("why"), m.prompt.Why())
	if m.prompt.Form != interview.Family {
		p.add(head("how"), q.How)
		p.add(head("limits"), q.Limits)
		p.add(head("who"), q.Who)
		p.add(head("example"), q.Example)
	} else {
		for _, member := range m.prompt.Members {
			p.add(member.Text.Label, member.Text.How, member.Text.Limits)
		}
	}
	p.add(head("so_far"), asked.items...)
	if label, stands := m.standing(); stands {
		p.add(head("before"), label)
	}
	p.add(m.say("screen/help.far"), m.progress(), m.soFar())
	p.add(m.say("screen/help.keys"), m.allKeys()...)
	m.open(&pane{field: p})
}

// add leaves out a heading that nothing stands under.
func (p *page) add(head string, texts ...string) {
	var said []string
	for _, t := range texts {
		if t = plaintext.Line(t); t != "" {
			said = append(said, t)
		}
	}
	if len(said) > 0 {
		p.parts = append(p.parts, part{head, said})
	}
}

func (p *page) build(l *theme, width int) {
	p.text = nil
	for i, part := range p.parts {
		if i > 0 {
			p.text = append(p.text, "")
		}
		for _, line := range plaintext.Wrap(part.head, width) {
			p.text = append(p.text, l.strong.Render(line))
		}
		for _, t := range part.texts {
			for _, line := range plaintext.Wrap(t, width-2) {
				p.text = append(p.text, "  "+line)
			}
		}
	}
}

func (p *page) press(msg tea.KeyMsg) {
	switch msg.String() {
	case "up":
		p.from--
	case "down":
		p.from++
	case "pgup":
		p.from -= p.height
	case "pgdown", " ":
		p.from += p.height
	case "home":
		p.from = 0
	case "end":
		p.from = len(p.text)
	}
}

func (p *page) enter(*model) {}

func (p *page) holdsText() bool { return false }

func (p *page) lines(height int) ([]string, message.Message) {
	p.height = height
	p.from = max(0, min(p.from, len(p.text)-height))
	to := min(p.from+height, len(p.text))
	if len(p.text) <= height {
		return p.text, message.Message{}
	}
	return p.text[p.from:to], message.New("screen/row.place", "at", to, "all", len(p.text))
}
