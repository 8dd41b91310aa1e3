package screen

import (
	"errors"
	"strings"
	"testing"

	"underfoot/assess"
	"underfoot/assess/quantity"
	"underfoot/assess/schema"
	"underfoot/rules/interview"
)

func TestAnAnswerIsSavedAndTheNextIsAsked(t *testing.T) {
	s := sit(t, wants(t, "zone.base", "tile.kind", "joist.span"))
	s.choose("Joists").press("enter")
	if address, a := s.last(); address != "zone.base" || a.Text != "joists" || len(s.saved) != 1 {
		t.Fatalf("saved %v", s.saved)
	}
	s.sees("What kind of tile")
	s.press("f2")
	s.sees("How far do the joists span")
	s.press("13 ft 6 in", "enter")
	// 13 ft 6 in is 162 in: 12 inches to the foot
	if address, a := s.last(); address != "joist.span" || a.Set.Range != quantity.Point(162) || a.Text != "13 ft 6 in" {
		t.Errorf("%s %+v", address, a)
	}
	if !s.done || s.err != nil {
		t.Error("nothing is left to ask, and the interview goes on")
	}
}

func TestBlindEnterNeverSaysAnythingOfTheFloor(t *testing.T) {
	for _, q := range allQuestions(t) {
		s := sit(t, wants(t, q.Decl.ID))
		s.press("enter", "enter", "enter")
		for _, c := range s.saved {
			if c.Answer.Reply != assess.NotSure {
				t.Errorf("%s: three Enters answer %+v", q.Decl.ID, c.Answer)
			}
		}
	}
}

func TestSeveralWords(t *testing.T) {
	s := sit(t, wants(t, "layer.l1.kind"))
	s.choose("Sheet vinyl").press(" ").choose("Linoleum").press(" ")
	s.choose("Cork").press("enter")
	if len(s.saved) > 0 {
		t.Fatal("Enter beside the marked rows was taken for an answer")
	}
	s.sees("Marked: Sheet vinyl", "Linoleum")
	s.choose("Linoleum").press("enter")
	_, a := s.last()
	if a.Text != "sheet-vinyl, linoleum" {
		t.Errorf("saved %q", a.Text)
	}
}

func TestOwnWordsMarkWhatFits(t *testing.T) {
	s := sit(t, wants(t, "layer.l1.kind"))
	s.press("/", "lino", "enter")
	if len(s.saved) > 0 {
		t.Fatal("own words were taken before they were looked at")
	}
	s.press("enter")
	if _, a := s.last(); a.Text != "sheet-vinyl, linoleum" {
		t.Errorf("saved %q", a.Text)
	}
	s = sit(t, wants(t, "layer.l1.kind"))
	s.press("/", "gravel", "enter")
	s.sees(`"gravel" is not a choice`)
	s.press("esc")
	s.sees("What is this layer")
}

func TestAFamilyHasItsNoneAsALineOfItsOwn(t *testing.T) {
	said := func(s *sitting) map[string]string {
		m := map[string]string{}
		for _, c := range s.saved {
			m[c.Address.Local()] = c.Answer.Text + c.Answer.Reply.String()
		}
		return m
	}
	s := sit(t, wants(t, "danger.gas"))
	s.choose("None of these").press("enter")
	if m := said(s); len(m) != 7 || m["danger.gas"] != "no" || m["danger.sewage"] != "no" {
		t.Errorf("none: %v", m)
	}
	s = sit(t, wants(t, "danger.gas"))
	s.choose("Do you smell gas").press(" ").choose("None of these").press("enter")
	if len(s.saved) > 0 {
		t.Fatal("none was taken beside a mark")
	}
	s.sees("Marked: Smell of gas")
	s.press(" ")
	s.sees("cannot be marked together")
	s.choose("Do you smell gas").press("enter")
	if m := said(s); m["danger.gas"] != "yes" || m["danger.sewage"] != "no" {
		t.Errorf("some: %v", m)
	}
	s = sit(t, wants(t, "danger.gas"))
	s.press("enter")
	if m := said(s); m["danger.gas"] != "not sure" || len(m) != 7 {
		t.Errorf("blind: %v", m)
	}
}

// growing wants the kind of every layer that is there, and then the list.
type growing struct{ script }

func (g growing) judge(job *assess.Job) interview.Judgment {
	var list script
	for _, item := range job.Normal().Areas[0].Zones[0].Lists[schema.ScopeLayer] {
		c := g.script[0]
		c.Address.Item, c.Address.Field = item.ID, "kind"
		list = append(list, c)
	}
	return append(list, g.script...)
}

func TestAListGrowsAndIsClosed(t *testing.T) {
	s := sit(t, growing{wants(t, "layer.complete")})
	s.sees("Add one", "There is none")
	s.choose("Add one").press("enter")
	if address, a := s.last(); address != "layer.complete" || a.Set != schema.SetNo {
		t.Errorf("adding says %s %+v", address, a)
	}
	s.sees("layer l1: What is this layer")
	s.choose("Cork").press("enter")
	s.sees("Are these all the layers", "1. Cork", "Yes, these are all")
	s.choose("Yes, these are all").press("enter")
	if address, a := s.last(); address != "layer.complete" || a.Set != schema.SetYes {
		t.Errorf("closing says %s %+v", address, a)
	}
}

func TestAThingIsNamedWithItsQuestion(t *testing.T) {
	s := sit(t, wants(t, "layer.l1.kind", "layer.l1.held"))
	s.choose("Cork").press("enter")
	s.sees("layer l1: How is this layer held down?", "It is said to be: Cork floor.")
}

func TestAnUnclearReadingIsAskedBack(t *testing.T) {
	s := sit(t, wants(t, "joist.span"))
	s.press("12", "enter")
	s.sees("Which of these is meant?", "You wrote: 12", "How far do the joists span")
	s.press("enter")
	if len(s.saved) > 0 {
		t.Fatal("Enter alone picked a reading")
	}
	s.sees("> 12")
	s.press("enter").choose("12 ft").press("enter")
	if _, a := s.last(); a.Set.Range != quantity.Point(144) || a.Text != "12 ft" {
		t.Errorf("%+v", a)
	}
}

func TestWhatIsWrongStandsUnderTheField(t *testing.T) {
	s := sit(t, wants(t, "joist.depth"))
	s.press("enter")
	s.sees("Nothing is taken for an answer")
	s.press("3000 in", "enter")
	s.sees("> 3000 in", "it lies in")
	s.press("backspace")
	if s.notice != "" {
		t.Error("the notice outlives the next key")
	}
	if len(s.saved) > 0 {
		t.Errorf("saved %v", s.saved)
	}
}

func TestRepliesByKeyAndByWord(t *testing.T) {
	for keys, want := range map[string]assess.Reply{"f2": assess.NotSure, "ctrl+n": assess.NotSure, "f4": assess.CouldNotSee,
		"ctrl+x": assess.CouldNotSee, "f5": assess.DoesNotApply, "ctrl+o": assess.DoesNotApply} {
		s := sit(t, wants(t, "joist.span"))
		if _, a := s.press(keys).last(); a.Reply != want {
			t.Errorf("%s: %+v", keys, a)
		}
	}
	s := sit(t, wants(t, "joist.span"))
	if _, a := s.press("Could not see", "enter").last(); a.Reply != assess.CouldNotSee {
		t.Errorf("%+v", a)
	}
	s = sit(t, wants(t, "slab.kind"))
	if _, a := s.choose("Does not apply").press("enter").last(); a.Reply != assess.DoesNotApply {
		t.Errorf("%+v", a)
	}
	s = sit(t, wants(t, "zone.base")) // applies whatever else is known
	if strings.Contains(s.View(), "Does not apply") {
		t.Error("what always applies is offered as not applying")
	}
}

func TestASaveThatFailsEndsTheInterview(t *testing.T) {
	full := errors.New("the disk is full")
	s := sit(t, wants(t, "zone.base", "tile.kind"))
	s.Save = func([]interview.Change) error { return full }
	s.press("enter")
	if !s.done || !errors.Is(s.err, full) {
		t.Errorf("done %v, error %v", s.done, s.err)
	}
}
