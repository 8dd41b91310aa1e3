package screen

import (
	"strings"

	"underfoot/assess/plaintext"
)

// gap stands between the keys of the last lines.
const gap = "   "

// foot is the keys that do something here, in words.
func (m *model) foot() []string {
	var keys []string
	if _, reading := m.top().field.(*page); reading {
		keys = append(keys, m.say("screen/key.scroll"))
	}
	for _, b := range bindings {
		if m.useful(b.act) {
			keys = append(keys, m.keyLine(b, m.roomy()))
		}
	}
	return flow(keys, m.width)
}

// useful reports whether a key is worth a place in the last lines. Lists have
// lines for the replies that a line to write in needs keys for.
func (m *model) useful(act action) bool {
	top := m.top()
	_, writing := top.field.(*entry)
	list, picking := top.field.(*picker)
	switch act {
	case take:
		return writing || picking
	case help:
		return writing || picking
	case back, leave:
		return true
	case mark:
		return picking && list.several != nil
	case ownWords:
		return picking && m.asking() && m.severalWords()
	case detail:
		return m.asking() && m.roomy()
	case notSure, couldNotSee, doesNotApply:
		return writing && m.asking()
	}
	return false
}

// keyLine is a key with what it does, the second key where there is room.
func (m *model) keyLine(b binding, whole bool) string {
	name, word := b.first, m.say("screen/key."+b.word)
	if whole && b.later != "" {
		name += "/" + b.later
	}
	if whole && b.act == help {
		word = m.say("screen/key.help_all")
	}
	return name + " " + word
}

// allKeys is every key, for help.
func (m *model) allKeys() []string {
	keys := make([]string, 0, len(bindings))
	for _, b := range bindings {
		keys = append(keys, m.keyLine(b, true))
	}
	return keys
}

// flow puts texts beside each other on lines; none is broken.
func flow(texts []string, width int) []string {
	var lines []string
	for _, t := range texts {
		last := len(lines) - 1
		if last >= 0 && plaintext.Width(lines[last])+len(gap)+plaintext.Width(t) <= width {
			lines[last] += gap + t
			continue
		}
		lines = append(lines, strings.TrimSpace(t))
	}
	return lines
}
