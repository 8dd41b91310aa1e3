package screen

import (
	"cmp"

	"underfoot/assess/plaintext"
	"underfoot/assess/result"
)

// head says which room and stage this is, how far the interview has come, and
// what the answers point to so far.
func (m *model) head() []string {
	title := plaintext.Line(m.place())
	if title != "" {
		title += ": "
	}
	lines := plaintext.Wrap(title+m.Session.StageTitle(m.prompt.Stage), m.width)
	for i := range lines {
		lines[i] = m.theme.strong.Render(lines[i])
	}
	progress := m.progress()
	if !m.tight() {
		progress += " " + m.soFar()
	}
	return append(lines, plaintext.Wrap(progress, m.width)...)
}

// place is the room, and the part of it where it has several.
func (m *model) place() string {
	area := m.Session.Job.Area(m.prompt.Address.Area)
	if area == nil {
		return ""
	}
	name := cmp.Or(area.Name, area.ID)
	if len(area.Zones) > 1 {
		name += ", " + m.prompt.Address.Zone
	}
	return name
}

func (m *model) progress() string {
	t := m.tally
	if m.roomy() {
		return m.say("screen/head.tally", "answered", t.answered, "waiting", t.waiting, "later", t.later)
	}
	return m.say("screen/head.tally_few", "answered", t.answered, "waiting", t.waiting, "later", t.later)
}

func (m *model) soFar() string {
	span := m.tally.span
	if v := span.Verdict(); v != result.Hold {
		return m.say("screen/head.so_far", "verdict", v)
	}
	return m.say("screen/head.so_far_two", "verdict", result.Hold, "low", span.Low, "high", span.High)
}
