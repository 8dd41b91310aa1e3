package screen

import (
	"cmp"
	"slices"
	"strings"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/huh"

	"underfoot/assess/message"
	"underfoot/assess/plaintext"
)

// A row is one line to choose. Rows that can be marked are taken together,
// with the picker's several; any other is taken alone.
type row struct {
	label string
	short string // what a mark on it is called; empty: the label
	mark  bool
	doubt bool // a second mark says not sure
	take  func()
}

// A picker is a list with a cursor. The cursor starts on the first row, which
// therefore never says anything of a floor.
type picker struct {
	rows    []row
	marked  []int              // in the order of the rows
	unsure  []int              // those of them that are not sure
	stood   int                // how many marks stood when the list was opened
	several func(marked []int) // nil where nothing can be marked
	at      int
	width   int
	look    *theme
	list    *huh.Select[int]
}

// fieldKeys are the keys that fields get: those that move. Letters search and
// move in the library's own map; here they do neither.
var fieldKeys = moving()

func moving() *huh.KeyMap {
	bind := func(keys ...string) key.Binding { return key.NewBinding(key.WithKeys(keys...)) }
	k := huh.NewDefaultKeyMap()
	k.Select = huh.SelectKeyMap{Up: bind("up"), Down: bind("down"), GotoTop: bind("home"), GotoBottom: bind("end"),
		HalfPageUp: bind("pgup"), HalfPageDown: bind("pgdown")}
	return k
}

// build makes the list with plain options each time: the library loses lines
// of a list that changes. The list has its full height; lines cuts it.
func (p *picker) build(l *theme, width int) {
	p.look, p.width = l, width
	options := make([]huh.Option[int], len(p.rows))
	for i := range p.rows {
		options[i] = huh.NewOption(strings.Join(p.label(i), "\n"), i)
	}
	at := p.at
	p.list = huh.NewSelect[int]().Options(options...).Value(&at)
	p.list.WithTheme(l.theme).WithKeyMap(fieldKeys).WithWidth(width)
	_ = p.list.Focus()
	_, _ = p.list.Update(nil)
}

// label is a row on as many lines as it needs, those after the first set in.
func (p *picker) label(i int) []string {
	lead := ""
	if p.several != nil {
		lead = "    "
	}
	lines := plaintext.Wrap(p.rows[i].label, p.width-len(cursorMark)-len(lead))
	for n := range lines {
		lines[n] = lead + lines[n]
	}
	if p.rows[i].mark {
		box := "[ ] "
		switch {
		case slices.Contains(p.unsure, i):
			box = "[?] "
		case slices.Contains(p.marked, i):
			box = "[x] "
		}
		lines[0] = box + strings.TrimPrefix(lines[0], lead)
	}
	return lines
}

func (p *picker) press(msg tea.KeyMsg) {
	if p.list == nil {
		return
	}
	_, _ = p.list.Update(msg)
	if at, ok := p.list.Hovered(); ok {
		p.at = at
	}
}

// toggle marks the row, or takes its mark away.
func (p *picker) toggle(m *model) {
	switch {
	case p.several == nil:
	case !p.rows[p.at].mark:
		m.notice = m.say("screen/say.alone")
	default:
		p.flip(p.at)
		p.stood = 0
		m.build()
	}
}

// flip goes round a row's marks: none, so, and where there may be doubt not sure.
func (p *picker) flip(i int) {
	n, found := slices.BinarySearch(p.marked, i)
	switch {
	case !found:
		p.marked = slices.Insert(p.marked, n, i)
	case p.rows[i].doubt && !slices.Contains(p.unsure, i):
		p.unsure = append(p.unsure, i)
	default:
		p.marked = slices.Delete(p.marked, n, n+1)
		p.unsure = slices.DeleteFunc(p.unsure, func(u int) bool { return u == i })
	}
}

// enter takes the row, or all marked ones from one of them. With marks
// elsewhere it is not clear what is meant, and nothing is taken.
func (p *picker) enter(m *model) {
	switch {
	case len(p.marked) == 0:
		p.rows[p.at].take()
	case slices.Contains(p.marked, p.at):
		p.several(p.marked)
	case len(p.marked) == p.stood && !p.rows[p.at].mark:
		p.rows[p.at].take() // the marks are those that stood: the row alone is meant
	default:
		m.notice = m.say("screen/say.marked", "list", p.names())
	}
}

func (p *picker) names() string {
	names := make([]string, len(p.marked))
	for n, i := range p.marked {
		names[n] = cmp.Or(p.rows[i].short, p.rows[i].label)
	}
	return strings.Join(names, "; ")
}

func (p *picker) holdsText() bool { return false }

// lines cuts the list around the cursor.
func (p *picker) lines(height int) ([]string, message.Message) {
	all := strings.Split(p.list.View(), "\n")
	if len(all) <= height {
		return all, message.Message{}
	}
	above := 0
	for i := range p.at {
		above += len(p.label(i))
	}
	own := len(p.label(p.at))
	from := max(0, min(above+own/2-height/2, len(all)-height, above))
	return all[from : from+height], message.New("screen/row.place", "at", p.at+1, "all", len(p.rows))
}
