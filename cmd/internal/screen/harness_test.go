package screen

import (
	"strings"
	"sync"
	"testing"

	tea "github.com/charmbracelet/bubbletea"

	"underfoot/assess"
	"underfoot/assess/message"
	"underfoot/assess/quantity"
	"underfoot/assess/question"
	"underfoot/assess/result"
	"underfoot/assess/schema"
	"underfoot/rules"
	"underfoot/rules/inquiry"
	"underfoot/rules/interview"
)

// engine is the real rules, opened once.
var engine = sync.OnceValues(func() (*rules.Engine, error) { return rules.Open("us", quantity.US, message.English()) })

func openEngine(t testing.TB) *rules.Engine {
	t.Helper()
	e, err := engine()
	if err != nil {
		t.Fatal(err)
	}
	return e
}

// A guide judges jobs; the real rules are one.
type guide interface {
	judge(*assess.Job) interview.Judgment
}

// A script is a guide whose questions are pending for every job.
type script []inquiry.Candidate

func (s script) judge(*assess.Job) interview.Judgment { return s }
func (s script) Pending() []inquiry.Candidate         { return s }
func (s script) Alarm() string                        { return "" }
func (s script) Span() result.Span                    { return result.Span{Low: result.Prepare, High: result.Stop} }

// real are the rules themselves.
type real struct{ *rules.Engine }

func (r real) judge(job *assess.Job) interview.Judgment { return r.Judge(job, "2026-05-04") }

// wants is a script of addresses that the verdict waits for.
func wants(t testing.TB, addresses ...string) script {
	t.Helper()
	var s script
	for _, text := range addresses {
		a, err := schema.ParseAddress(text)
		if err != nil {
			t.Fatal(err)
		}
		job := (&assess.Job{}).Normal()
		if a, err = job.Locate(a); err != nil {
			t.Fatal(err)
		}
		s = append(s, inquiry.Candidate{Address: a, Stage: inquiry.Deciding})
	}
	return s
}

// A sitting is one interview without a terminal, and what it has saved.
type sitting struct {
	*model
	t     testing.TB
	saved []interview.Change
}

func sit(t testing.TB, g guide) *sitting { return sitWith(t, &assess.Job{}, g) }

func sitWith(t testing.TB, job *assess.Job, g guide) *sitting {
	t.Helper()
	s := &sitting{t: t}
	s.model = newModel(&Interview{
		Session: interview.New(job, openEngine(t).Catalogue, message.English(), g.judge), Language: message.English(),
		Save: func(changes []interview.Change) error {
			s.saved = append(s.saved, changes...)
			return nil
		},
	})
	s.size(80, 24)
	return s
}

func (s *sitting) size(width, height int) { s.Update(tea.WindowSizeMsg{Width: width, Height: height}) }

// press presses keys one after the other, as slowly as a person reads. A word
// that is no key is typed.
func (s *sitting) press(keys ...string) *sitting {
	for _, k := range keys {
		s.Update(rested(s.rests))
		s.slam(k)
	}
	return s
}

// slam presses keys faster than anybody reads.
func (s *sitting) slam(keys ...string) {
	for _, k := range keys {
		s.Update(keyOf(k))
	}
}

var special = map[string]tea.KeyType{
	"enter": tea.KeyEnter, "up": tea.KeyUp, "down": tea.KeyDown, "home": tea.KeyHome, "end": tea.KeyEnd, "esc": tea.KeyEsc,
	"shift+tab": tea.KeyShiftTab, "tab": tea.KeyTab, "f1": tea.KeyF1, "f2": tea.KeyF2, "f3": tea.KeyF3, "f4": tea.KeyF4, "f5": tea.KeyF5,
	"f10": tea.KeyF10, "ctrl+c": tea.KeyCtrlC, "ctrl+q": tea.KeyCtrlQ, "ctrl+n": tea.KeyCtrlN, "ctrl+h": tea.KeyCtrlH,
	"ctrl+k": tea.KeyCtrlK, "ctrl+x": tea.KeyCtrlX, "ctrl+o": tea.KeyCtrlO, "pgdown": tea.KeyPgDown, "pgup": tea.KeyPgUp,
	"backspace": tea.KeyBackspace,
}

func keyOf(k string) tea.KeyMsg {
	if k == " " {
		return tea.KeyMsg{Type: tea.KeySpace, Runes: []rune(" ")}
	}
	if kind, ok := special[k]; ok {
		return tea.KeyMsg{Type: kind}
	}
	return tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(k)}
}

// choose moves the cursor to the row that begins with a text.
func (s *sitting) choose(label string) *sitting {
	s.t.Helper()
	list := s.top().field.(*picker)
	s.press("home")
	for range list.rows {
		if strings.HasPrefix(list.rows[list.at].label, label) {
			return s
		}
		s.press("down")
	}
	s.t.Fatalf("no row begins with %q: %v", label, list.rows)
	return s
}

// last is the newest change, as address and answer.
func (s *sitting) last() (address string, a assess.Answer) {
	s.t.Helper()
	if len(s.saved) == 0 {
		s.t.Fatal("nothing was saved")
	}
	c := s.saved[len(s.saved)-1]
	return c.Address.Local(), c.Answer
}

// sees fails where a text is not on the screen, however it is broken.
func (s *sitting) sees(texts ...string) {
	s.t.Helper()
	shown := strings.Join(strings.Fields(s.View()), " ")
	for _, text := range texts {
		if !strings.Contains(shown, text) {
			s.t.Errorf("%q is not on the screen:\n%s", text, s.View())
		}
	}
}

func allQuestions(t testing.TB) []question.Question { return openEngine(t).Catalogue.Questions }
