package screen

import (
	"regexp"
	"strings"
	"testing"

	"github.com/charmbracelet/x/ansi"
	"pgregory.net/rapid"

	"underfoot/assess/message"
)

// TestEveryQuestionFitsEveryWindow draws every question of the catalogue after
// a few keys in windows from the smallest to a large one.
func TestEveryQuestionFitsEveryWindow(t *testing.T) {
	questions := allQuestions(t)
	rapid.Check(t, func(r *rapid.T) {
		q := rapid.SampledFrom(questions).Draw(r, "question")
		s := sit(t, wants(t, q.Decl.ID))
		s.size(rapid.IntRange(leastWidth, 120).Draw(r, "width"), rapid.IntRange(leastHeight, 50).Draw(r, "height"))
		keys := []string{"down", "up", "end", "home", " ", "f1", "f3", "12", "/", "esc", "pgdown", "pgup"}
		s.press(rapid.SliceOfN(rapid.SampledFrom(keys), 0, 8).Draw(r, "keys")...)
		lines := strings.Split(s.View(), "\n")
		if len(lines) != s.height {
			r.Fatalf("%s: %d lines in a window of %d:\n%s", q.Decl.ID, len(lines), s.height, s.View())
		}
		for _, line := range lines {
			if ansi.StringWidth(line) > s.width {
				r.Fatalf("%s: a line is wider than %d:\n%s", q.Decl.ID, s.width, line)
			}
		}
	})
}

// TestTheQuestionAndTheCursorAreAlwaysSeen also holds where a list does not
// fit: the library loses the last line of a list whose lines are broken, and
// scrolls away lines for which there is room.
func TestTheQuestionAndTheCursorAreAlwaysSeen(t *testing.T) {
	for _, q := range allQuestions(t) {
		for _, size := range [][2]int{{80, 24}, {40, 20}, {leastWidth, leastHeight}} {
			s := sit(t, wants(t, q.Decl.ID))
			s.size(size[0], size[1])
			list, picking := s.top().field.(*picker)
			if !picking {
				s.sees(s.prompt.Text())
				continue
			}
			for i := range list.rows {
				shown := strings.Join(strings.Fields(s.View()), " ")
				if want := strings.Join(strings.Fields(list.rows[i].label), " "); !strings.Contains(shown, want) || !strings.Contains(shown, s.prompt.Text()) {
					t.Errorf("%s at %v, row %d %q:\n%s", q.Decl.ID, size, i, want, s.View())
					break
				}
				s.press("down")
			}
		}
	}
}

func TestAListThatFitsIsShownWhole(t *testing.T) {
	s := sit(t, wants(t, "zone.base"))
	s.press("end")
	s.sees("> Could not see it", "Not sure", "Joists")
	s.press("up", "up")
	s.sees("Not sure", "Could not see it")
}

func TestANewSizeKeepsWhatWasDone(t *testing.T) {
	s := sit(t, wants(t, "joist.span", "zone.base"))
	s.press("13 ft")
	s.size(40, 20)
	s.sees("> 13 ft")
	s.size(20, 5)
	s.sees("Enlarge this window to 36 by 14", "--plain")
	s.press("enter", "x", "f2", "esc")
	if len(s.saved) > 0 {
		t.Fatal("a question that cannot be read was answered")
	}
	s.size(90, 30)
	s.press(" 6 in", "enter")
	if _, a := s.last(); a.Text != "13 ft 6 in" {
		t.Errorf("saved %q", a.Text)
	}
	s.choose("Joists").press(" ").choose("Concrete on the ground").press(" ")
	s.size(50, 18)
	s.press("enter")
	if _, a := s.last(); a.Text != "joists, slab-on-ground" {
		t.Errorf("saved %q", a.Text)
	}
}

// sequences are the escape sequences of a screen.
var sequences = regexp.MustCompile("\x1b\\[[0-9;]*[A-Za-z]")

// Without colour only the writing cursor is turned (7), and turned back (0).
func TestWithoutColourOnlyTheWritingCursorIsTurned(t *testing.T) {
	for _, keys := range [][]string{nil, {"down", " "}, {"f1"}, {"f2"}, {"f2", "x", "enter"}} {
		s := sit(t, wants(t, "zone.base", "joist.span"))
		s.press(keys...)
		for _, seq := range sequences.FindAllString(s.View(), -1) {
			if seq != "\x1b[7m" && seq != "\x1b[0m" {
				t.Errorf("%v: %q", keys, seq)
			}
		}
	}
}

// Colour adds nothing that a word or a mark does not say.
func TestColourChangesNoWord(t *testing.T) {
	plain, coloured := sit(t, wants(t, "zone.base")), sit(t, wants(t, "zone.base"))
	coloured.theme = newTheme(true)
	for _, s := range []*sitting{plain, coloured} {
		s.choose("Joists").press(" ")
	}
	if plain.View() == coloured.View() || ansi.Strip(plain.View()) != ansi.Strip(coloured.View()) {
		t.Errorf("with colour:\n%s\nwithout:\n%s", coloured.View(), plain.View())
	}
}

func TestALongListOfThingsGivesWayToTheField(t *testing.T) {
	s := sit(t, wants(t, "layer.complete"))
	for range 14 {
		s.Session.Add(s.prompt)
	}
	s.size(40, 20)
	s.next()
	s.sees("Are these all the layers", "before these; F1 lists them", "14. not said what it is", "Not sure", "Yes, these are all")
	for s.press("f1"); !strings.Contains(s.View(), " 1. not said what it is"); s.press("pgdown") {
		if strings.Contains(s.View(), "stop at once") {
			t.Fatal("help does not list what gave way")
		}
	}
}

func TestEveryKeyHasItsWord(t *testing.T) {
	used := map[string]string{}
	for _, b := range bindings {
		if !message.English().Has("screen/key." + b.word) {
			t.Errorf("%s has no word", b.first)
		}
		for _, k := range b.keys {
			if used[k] != "" {
				t.Errorf("%s is bound to %s and %s", k, used[k], b.word)
			}
			used[k] = b.word
		}
	}
	for _, word := range []string{"not_sure", "could_not_see", "does_not_apply", "none", "add", "add_first", "complete", "empty"} {
		if !message.English().Has("interview/replies." + word) {
			t.Errorf("the interview has no words for %s", word)
		}
	}
}
