package screen

import (
	"slices"
	"strings"

	"underfoot/assess/plaintext"
)

// The smallest window in which a question can be read and answered, and the
// size from which there is room for whole sentences around it. Below
// tightHeight lines and blanks between the parts are left out.
const (
	leastWidth, leastHeight = 36, 14
	roomyWidth, roomyHeight = 60, 22
	tightHeight             = 18
)

func (m *model) tooSmall() bool { return m.width < leastWidth || m.height < leastHeight }

func (m *model) roomy() bool { return m.width >= roomyWidth && m.height >= roomyHeight }

func (m *model) tight() bool { return m.height < tightHeight }

// View is the whole window: where the person is, the question, the keys.
func (m *model) View() string {
	switch {
	case m.width == 0 || m.done:
		return ""
	case m.tooSmall():
		return strings.Join(cut(plaintext.Wrap(m.say("screen/say.small", "width", leastWidth, "height", leastHeight), m.width), m.height), "\n")
	}
	head, foot := m.head(), m.foot()
	if !m.tight() {
		rule := m.theme.soft.Render(strings.Repeat("─", m.width))
		head, foot = append(head, rule), append([]string{rule}, foot...)
	}
	body := m.body(m.height - len(head) - len(foot))
	return strings.Join(append(append(head, body...), foot...), "\n")
}

// body is the pane on top in exactly so many lines. The question always stands
// whole. A long list of what stands already gives way to the field, and so does
// what is said below it: help has both in full.
func (m *model) body(height int) []string {
	top := m.top()
	said := m.answered()
	lines := m.sentence(len(top.items))
	for shown := len(top.items); shown > 0 && height-len(lines)-len(said) < leastField; {
		shown--
		lines = m.sentence(shown)
	}
	if most := max(leastSaid, height-len(lines)-leastField); len(said) > most {
		said = append(said[:most-1], m.say("screen/say.more"))
	}
	field, place := top.field.lines(max(1, height-len(lines)-len(said)-1))
	if !place.IsZero() || len(lines) > 0 && !m.tight() {
		lines = append(lines, m.theme.soft.Render(plaintext.Shorten(m.Language.Say(place), m.width)))
	}
	lines = append(append(lines, field...), said...)
	for len(lines) < height {
		lines = append(lines, "")
	}
	return cut(lines, height)
}

// leastField is how many lines a field and the line over it get before what is
// around them gives way, and leastSaid how many stay below it.
const (
	leastField = 5
	leastSaid  = 3
)

// sentence is what is asked, with so many of the things that stand already.
func (m *model) sentence(items int) []string {
	top := m.top()
	var lines []string
	for _, line := range plaintext.Wrap(m.about()+top.ask, m.width) {
		lines = append(lines, m.theme.strong.Render(line))
	}
	if top.ask == "" {
		return nil
	}
	if left := len(top.items) - items; left > 0 {
		lines = append(lines, plaintext.Wrap(m.say("screen/head.item_more", "n", left), m.width)...)
	}
	for _, item := range top.items[len(top.items)-items:] {
		lines = append(lines, indent(item, m.width)...)
	}
	said := top.said
	if m.roomy() {
		said = slices.Concat(said, top.hints)
	}
	for _, text := range said {
		lines = append(lines, plaintext.Wrap(text, m.width)...)
	}
	return lines
}

// about names the thing that a question is about: layer l2.
func (m *model) about() string {
	a := m.prompt.Address
	if a.Item == "" || !m.asking() {
		return ""
	}
	return plaintext.Line(a.Topic+" "+a.Item) + ": "
}

// answered is what stands below the field: what was wrong with the last answer, and
// how the one to come is known.
func (m *model) answered() []string {
	var lines []string
	if m.notice != "" {
		lines = plaintext.Wrap(m.notice, m.width)
	}
	if known := m.knowing(); known != "" {
		lines = append(lines, plaintext.Wrap(m.say("screen/say.known", "basis", known), m.width)...)
	}
	if len(lines) > 0 && !m.tight() {
		lines = append([]string{""}, lines...)
	}
	return lines
}

// indent sets a text in, and what follows its first line further.
func indent(text string, width int) []string {
	const first, rest = "  ", "     "
	lines := plaintext.Wrap(text, width-len(rest))
	for i := range lines {
		lines[i] = rest + lines[i]
	}
	lines[0] = first + strings.TrimPrefix(lines[0], rest)
	return lines
}

func cut(lines []string, height int) []string { return lines[:min(len(lines), height)] }
