package screen

import (
	"underfoot/assess"
	"underfoot/cmd/internal/console"
	"underfoot/rules/interview"
)

// head says which room and stage this is, how far the interview has come, and
// what the answers point to so far.
func (m *model) head() []string {
	title := console.CleanLine(m.place())
	if title != "" {
		title += ": "
	}
	lines := wrap(title+interview.StageTitle(m.prompt.Stage), m.width)
	for i := range lines {
		lines[i] = m.look.strong.Render(lines[i])
	}
	progress := m.progress()
	if !m.tight() {
		progress += " " + m.soFar()
	}
	return append(lines, wrap(progress, m.width)...)
}

// place is the room, and the part of it where it has several.
func (m *model) place() string {
	for _, a := range m.Session.Job.Areas {
		if a.ID != m.prompt.Address.Area {
			continue
		}
		name := a.ID
		if a.Name != "" {
			name = a.Name
		}
		if len(a.Zones) > 1 {
			name += ", " + m.prompt.Address.Zone
		}
		return name
	}
	return ""
}

func (m *model) progress() string {
	key := "tally_few"
	if m.roomy() {
		key = "tally"
	}
	return say("head", key, m.tally.answered, m.tally.waiting, m.tally.later)
}

func (m *model) soFar() string {
	span := m.tally.span
	if v := span.Verdict(); v != assess.Hold {
		return say("head", "so_far", v)
	}
	return say("head", "so_far_two", assess.Hold, span.Low, span.High)
}
