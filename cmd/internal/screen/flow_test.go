package screen

import (
	"context"
	"errors"
	"strings"
	"testing"

	"underfoot/assess"
	"underfoot/rules/inquiry"
	"underfoot/rules/interview"
)

// A form of the library completes the next question with a fast second Enter;
// here Enter rests until the question can have been read.
func TestAFastSecondEnterAnswersNothing(t *testing.T) {
	s := sit(t, wants(t, "zone.base", "tile.kind", "joist.span"))
	s.slam("enter", "enter", "enter")
	if len(s.saved) != 1 {
		t.Fatalf("three fast Enters gave %d answers", len(s.saved))
	}
	s.Update(rested(s.rests - 1)) // the end of an earlier rest
	s.slam("enter")
	if len(s.saved) != 1 {
		t.Error("an old rest ended the new one")
	}
	s.Update(rested(s.rests))
	s.slam("enter")
	if len(s.saved) != 2 {
		t.Error("Enter stays dead after its rest")
	}
	s.slam("down", "f2")
	if len(s.saved) != 3 {
		t.Error("a key that moves does not end the rest")
	}
}

func TestBackOverAChangedAnswer(t *testing.T) {
	s := sit(t, wants(t, "zone.base", "tile.kind"))
	s.choose("Joists").press("enter", "esc")
	s.sees("Leave it as it is: Joists")
	s.choose("Concrete on the ground").press("enter")
	if address, a := s.last(); address != "zone.base" || a.Text != "slab-on-ground" {
		t.Errorf("%s %+v", address, a)
	}
	s.sees("What kind of tile")
	s.press("shift+tab")
	s.sees("Leave it as it is: Concrete on the ground")
	s.press("esc")
	s.sees("This is the first question.")
}

func TestBackKeepsWhatStandsBesideAnAnswer(t *testing.T) {
	job := (&assess.Job{}).Normal()
	s := sitWith(t, job, wants(t, "joist.span", "tile.kind"))
	s.press("f3").choose("Measured").press("enter", "a tape", "enter", "from below", "enter", "12 ft", "enter")
	_, first := s.last()
	if first.Basis != assess.Measured || first.With != "a tape" || first.Note != "from below" {
		t.Fatalf("%+v", first)
	}
	s.press("esc")
	s.sees("> 12 ft")
	s.press("enter")
	if _, again := s.last(); again.Basis != first.Basis || again.Note != first.Note || len(s.saved) != 2 {
		t.Errorf("Enter on a standing answer saves %+v", again)
	}
	s.press("esc", "backspace", "backspace", "m", "enter")
	if _, a := s.last(); a.Text != "12 m" || a.Note != "" {
		t.Errorf("a new value keeps the old one's note: %+v", a)
	}
}

// The library blocks Back while a field's text is wrong; the host does not ask it.
func TestBackIsNotHeldByAWrongText(t *testing.T) {
	s := sit(t, wants(t, "zone.base", "joist.span"))
	s.press("enter", "rubbish", "enter")
	s.sees("is not a length")
	s.press("esc")
	s.sees("What carries this part")
}

func TestTheBasisIsAskedWhereItDecides(t *testing.T) {
	s := sit(t, wants(t, "layer.l1.year", "tile.kind"))
	s.press("1998", "enter")
	s.sees("How do you know?")
	if len(s.saved) > 0 {
		t.Fatal("saved before the basis was asked")
	}
	s.choose("A paper").press("enter")
	if _, a := s.last(); a.Basis != assess.Document || a.Text != "1998" {
		t.Errorf("%+v", a)
	}
	s = sit(t, wants(t, "layer.l1.year"))
	s.press("1998", "enter", "enter")
	if _, a := s.last(); a.Basis != assess.NoBasis {
		t.Errorf("Enter alone gave the basis %v", a.Basis)
	}
	s = sit(t, wants(t, "layer.l1.year"))
	s.press("1998", "enter", "esc")
	s.sees("> 1998")
}

func TestHelpLiesOverTheQuestion(t *testing.T) {
	s := sit(t, wants(t, "joist.span"))
	s.press("12", "f1")
	s.sees("The question", "Why it matters", "How to find out")
	s.press("end")
	s.sees("Ctrl-C stop at once")
	s.press("pgup", "up", "home", "esc")
	s.sees("> 12")
	if len(s.saved) > 0 {
		t.Error("help answered")
	}
	s.press("ctrl+h") // Backspace on many terminals
	s.sees("> 1")
	s.press("ctrl+h", "ctrl+h")
	s.sees("Why it matters")
	s.press("enter")
	s.sees("How far do the joists span")
}

func TestLeaving(t *testing.T) {
	for key, want := range map[string]error{"ctrl+c": context.Canceled, "f10": ErrStopped, "ctrl+q": ErrStopped} {
		for _, size := range [][2]int{{80, 24}, {20, 5}} {
			s := sit(t, wants(t, "joist.span"))
			s.size(size[0], size[1])
			s.press(key)
			if !s.done || !errors.Is(s.err, want) || len(s.saved) > 0 {
				t.Errorf("%s at %v: done %v, error %v, saved %v", key, size, s.done, s.err, s.saved)
			}
		}
	}
}

// later wants one question for the verdict, and one before the work.
func later(t *testing.T) script {
	s := wants(t, "zone.base", "tile.kind", "joist.span")
	s[1].Stage, s[2].Stage = inquiry.Before, inquiry.Before
	return s
}

// answered leaves out what the job has answered, as the rules do.
type answered struct{ script }

func (g answered) judge(job *assess.Job) interview.Judgment {
	var list script
	for _, c := range g.script {
		if _, said := job.Answer(c.Address); !said {
			list = append(list, c)
		}
	}
	return list
}

func TestAVerdictThatWaitsNoLongerIsToldOnce(t *testing.T) {
	s := sit(t, answered{later(t)})
	s.press("enter")
	s.sees("The verdict no longer waits for anything.", "Go on", "Stop here")
	s.press("enter")
	s.sees("What kind of tile")
	s.press("enter")
	s.sees("How far do the joists span")
	s = sit(t, answered{later(t)})
	s.press("enter").choose("Stop here").press("enter")
	if !errors.Is(s.err, ErrStopped) {
		t.Errorf("error %v", s.err)
	}
}

// TestTheRulesLeadToTheEnd goes through the real rules knowing nothing.
func TestTheRulesLeadToTheEnd(t *testing.T) {
	s := sit(t, real{openEngine(t)})
	for n := 0; !s.done; n++ {
		if n > 400 {
			t.Fatalf("no end in sight; asked %s", s.prompt.Address)
		}
		if _, writing := s.top().field.(*entry); writing {
			s.press("f2")
		} else {
			s.press("home", "enter")
		}
	}
	if s.err != nil {
		t.Fatal(s.err)
	}
	for _, c := range s.saved {
		if c.Answer.Reply != assess.NotSure {
			t.Errorf("%s was answered with %+v", c.Address, c.Answer)
		}
	}
}

func TestNothingTypedOrShownSteersTheScreen(t *testing.T) {
	job := &assess.Job{Areas: []assess.Area{{ID: "kitchen", Name: "Kit\x1b[31mchen\u202e\x07"}}}
	g := wants(t, "joist.size")
	g[0].Address.Area = "kitchen"
	s := sitWith(t, job, g)
	s.press("\x1b[31m2x\u202e10\x07\x9b")
	if text := s.top().field.(*entry).text; text != "2x10" {
		t.Errorf("typed %q", text)
	}
	if v := s.View(); strings.ContainsAny(v, "\u202e\x07") || !strings.Contains(v, "Kitchen") {
		t.Errorf("shown %q", v)
	}
}
