package screen

import (
	tea "github.com/charmbracelet/bubbletea"

	"underfoot/assess"
)

// An action is what a key does before any field sees it.
type action uint8

const (
	typed action = iota // nothing: the field gets the key
	take
	help
	notSure
	detail
	couldNotSee
	doesNotApply
	back
	leave
	interrupt
	mark
	ownWords
)

// A binding is an action with its keys, as the terminal names them and as a
// person does; the second key is for terminals that keep function keys.
type binding struct {
	act          action
	keys         []string
	first, later string
	word         string // its sentence, under screen/key
}

var bindings = []binding{
	{take, []string{"enter"}, "Enter", "", "take"},
	{mark, []string{" "}, "Space", "", "mark"},
	{ownWords, []string{"/"}, "/", "", "words"},
	{help, []string{"f1", "ctrl+h"}, "F1", "Ctrl-H", "help"},
	{notSure, []string{"f2", "ctrl+n"}, "F2", "Ctrl-N", "not_sure"},
	{detail, []string{"f3", "ctrl+k"}, "F3", "Ctrl-K", "detail"},
	{couldNotSee, []string{"f4", "ctrl+x"}, "F4", "Ctrl-X", "could_not_see"},
	{doesNotApply, []string{"f5", "ctrl+o"}, "F5", "Ctrl-O", "does_not_apply"},
	{back, []string{"esc", "shift+tab"}, "Esc", "Shift-Tab", "back"},
	{leave, []string{"f10", "ctrl+q"}, "F10", "Ctrl-Q", "leave"},
	{interrupt, []string{"ctrl+c"}, "Ctrl-C", "", "stop"},
}

// replies are the actions that answer without a value.
var replies = map[action]assess.Reply{notSure: assess.NotSure, couldNotSee: assess.CouldNotSee, doesNotApply: assess.DoesNotApply}

// takes reports whether the action may give an answer.
func (a action) takes() bool { return a == take || replies[a] != assess.Given }

// action is what a key does where the person is now. Letters are the field's
// own where it takes text.
func (m *model) action(msg tea.KeyMsg) action {
	if msg.Paste {
		return typed
	}
	act := typed
	for _, b := range bindings {
		for _, k := range b.keys {
			if k == msg.String() {
				act = b.act
			}
		}
	}
	_, picking := m.top().field.(*picker)
	switch {
	case (act == mark || act == ownWords) && !picking:
		return typed
	case msg.Type == tea.KeyCtrlH && m.top().field.holdsText():
		return typed // many terminals send it for Backspace
	}
	return act
}

// do carries an action out.
func (m *model) do(act action, msg tea.KeyMsg) {
	if _, reading := m.top().field.(*page); reading && act != typed {
		m.shut() // any key but those that scroll closes help
		return
	}
	switch act {
	case take:
		m.top().field.enter(m)
	case help:
		m.explain()
	case back:
		m.back()
	case mark:
		m.top().field.(*picker).toggle(m)
	case ownWords:
		m.askWords()
	case detail:
		m.askDetail()
	case typed:
		m.top().field.press(msg)
	default:
		if m.asking() {
			m.reply(replies[act])
		}
	}
}
