package interview

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"underfoot/assess"
	"underfoot/assess/logic"
	"underfoot/assess/message"
	"underfoot/assess/result"
	"underfoot/assess/schema"
	"underfoot/rules/inquiry"
	"underfoot/rules/internal/trial"
)

// A script is a judgment in which the same questions are pending, of those that
// the job has not answered as the test wants it, and which counts how often it
// was asked for.
type script struct {
	pending []inquiry.Candidate
	alarm   string
	judged  int
}

func (s *script) Pending() []inquiry.Candidate { return s.pending }
func (s *script) Alarm() string                { return s.alarm }
func (s *script) Span() result.Span            { return result.Span{Low: result.Prepare, High: result.Stop} }

func (s *script) judge(*assess.Job) Judgment {
	s.judged++
	return s
}

// sit begins an interview in which questions such as `2 water.leak` are pending.
func sit(t *testing.T, questions ...string) (*Session, *script) {
	t.Helper()
	w, g := trial.New(t, nil), &script{}
	job := w.Job()
	for _, q := range questions {
		var stage int
		var text string
		if _, err := fmt.Sscan(q, &stage, &text); err != nil {
			t.Fatal(err)
		}
		a, err := schema.ParseAddress(text)
		if err == nil {
			a, err = job.Locate(a)
		}
		if err != nil {
			t.Fatal(err)
		}
		g.pending = append(g.pending, inquiry.Candidate{Address: a, Stage: inquiry.Stage(stage)})
	}
	return New(job, w.Catalogue, message.English(), g.judge), g
}

func next(t *testing.T, s *Session) Prompt {
	t.Helper()
	p, more := s.Next()
	if !more {
		t.Fatal("nothing is asked")
	}
	return p
}

var yes, no = assess.Answer{Set: schema.SetYes, Text: "yes"}, assess.Answer{Set: schema.SetNo, Text: "no"}

// One answer is judged once, however much is asked of it.
func TestOneAnswerIsJudgedOnce(t *testing.T) {
	s, g := sit(t, "0 danger.gas", "2 layer.complete", "2 zone.base")
	for _, step := range []func(Prompt) []Change{
		func(p Prompt) []Change { return s.AnswerFamily(p, slices.Repeat([]assess.Answer{no}, len(p.Members))) },
		func(p Prompt) []Change { return s.Add(p) },
		func(p Prompt) []Change { return s.Drop(p, 0) },
	} {
		g.judged = 0
		p := next(t, s)
		s.Progress()
		s.Span()
		s.Next()
		if g.judged > 1 {
			t.Errorf("%s: judged %d times", p.Address, g.judged)
		}
		g.judged = 0
		if err := s.Alarm(step(p)); err != nil {
			t.Error(err)
		}
		s.Progress()
		if s.Span(); g.judged != 1 {
			t.Errorf("%s: judged %d times behind the answer", p.Address, g.judged)
		}
	}
}

// What presses most is asked first; of its kind the first in catalogue order,
// and the same thing is stayed with.
func TestTheOrderOfQuestions(t *testing.T) {
	s, _ := sit(t, "2 water.puddle", "2 water.leak_cured", "2 zone.base", "2 layer.l1.held", "2 layer.l1.kind", "2 layer.l2.kind", "3 tile.kind")
	var got []string
	for {
		p, more := s.Next()
		if !more {
			break
		}
		got = append(got, p.Address.Local())
		s.Answer(p, assess.Answer{Reply: assess.NotSure})
		if p.Form == Family {
			s.AnswerFamily(p, slices.Repeat([]assess.Answer{no}, len(p.Members)))
		}
	}
	want := "water.leak water.leak_cured zone.base layer.l1.kind layer.l1.held layer.l2.kind tile.kind"
	if strings.Join(got, " ") != want {
		t.Errorf("asked %v\nwant  %s", got, want)
	}
}

func TestAFamilyIsOneQuestion(t *testing.T) {
	s, _ := sit(t, "0 danger.sewage")
	p := next(t, s)
	if p.Form != Family || len(p.Members) != 7 || p.Address.Field != "sagging_now" || p.Text() != "Is any of this so now?" || p.Why() == "" {
		t.Fatalf("%d %s of %d: %q", p.Form, p.Address, len(p.Members), p.Text())
	}
	changes := s.AnswerFamily(p, p.MemberAnswers(func(i int) logic.Truth { return []logic.Truth{logic.Yes, logic.No, logic.Open}[min(i, 2)] }))
	var got []string
	for _, c := range changes {
		got = append(got, c.Address.Field+" "+c.Answer.Text+c.Answer.Reply.String())
	}
	if len(got) != 7 || got[0] != "sagging_now yes" || got[1] != "support_lost no" || got[6] != "sewage not sure" {
		t.Errorf("%q", got)
	}
	if a, said := s.Job.Answer(p.Address); !said || a.Set != schema.SetYes {
		t.Error("the family's answer does not stand in the record")
	}
}

// A member with more words than yes and no is asked by itself.
func TestAMemberWithMoreWordsIsNoneOfTheFamily(t *testing.T) {
	s, _ := sit(t, "2 joist.cut")
	p := next(t, s)
	for _, q := range p.Members {
		if q.Decl.Kind != schema.KindYesNo {
			t.Errorf("%s is asked with its family", q.Decl.ID)
		}
	}
	if s, _ := sit(t, "2 joist.notched"); p.Form != Family || next(t, s).Form != One {
		t.Errorf("form %d, alone %d", p.Form, next(t, s).Form)
	}
}

// A family of which one member is answered is asked member by member.
func TestAFamilyThatWasTouched(t *testing.T) {
	s, g := sit(t, "0 danger.gas", "0 danger.sewage")
	s.Job.Put(g.pending[0].Address, no)
	if p := next(t, s); p.Form != One || p.Address.Field != "sewage" {
		t.Errorf("%d %s", p.Form, p.Address)
	}
}

func TestAList(t *testing.T) {
	s, _ := sit(t, "2 layer.complete")
	p := next(t, s)
	if p.Form != List || len(p.Items) != 0 || !strings.HasPrefix(p.Text(), "What lies on the deck or the slab?") {
		t.Fatalf("%d %v %q", p.Form, p.Items, p.Text())
	}
	first := p
	if c := s.Add(p); len(c) != 1 || c[0].Answer.Set != schema.SetNo || c[0].Address.Field != "complete" {
		t.Errorf("adding changes %+v", c)
	}
	s.Add(p)
	p = next(t, s)
	if !slices.Equal(p.Items, []string{"1. not said what it is", "2. not said what it is"}) || p.Text() == first.Text() {
		t.Fatalf("%v %q", p.Items, p.Text())
	}
	if c := s.Drop(p, 0); len(c) != 1 || !c[0].Drop || c[0].Address.Item != "l1" {
		t.Errorf("dropping changes %+v", c)
	}
	s.Add(p)
	var ids []string
	for _, it := range s.Job.Areas[0].Zones[0].Lists[schema.ScopeLayer] {
		ids = append(ids, it.ID)
	}
	if strings.Join(ids, " ") != "l2 l1" {
		t.Errorf("items %v", ids)
	}
	s.Answer(p, yes)
	if p, more := s.Next(); more {
		t.Errorf("a list that is closed is asked again: %s", p.Address)
	}
}

// A thing that was added is asked about next.
func TestWhatWasAddedIsAskedNext(t *testing.T) {
	s, g := sit(t, "2 layer.complete", "2 zone.base")
	s.Add(Prompt{Form: List, Address: g.pending[0].Address, Question: s.Catalogue.Find("layer.complete")})
	item := g.pending[0].Address
	item.Item, item.Field = "l1", "kind"
	g.pending = append(g.pending, inquiry.Candidate{Address: item, Stage: inquiry.Deciding})
	if p := next(t, s); p.Address.Local() != "layer.l1.kind" {
		t.Errorf("%s is asked", p.Address)
	}
}

func TestBack(t *testing.T) {
	s, _ := sit(t, "2 zone.base", "2 slab.kind")
	if _, ok := s.Back(); ok {
		t.Error("back from the beginning")
	}
	first := next(t, s)
	s.Answer(first, assess.Answer{Set: schema.Set{Mask: 1}, Text: "joists"})
	second := next(t, s)
	s.Answer(second, assess.Answer{Reply: assess.NotSure})
	p, ok := s.Back()
	if !ok || p.Address != second.Address || !p.Answered || p.Before.Reply != assess.NotSure {
		t.Errorf("back once: %s, answered %t", p.Address, p.Answered)
	}
	if p, ok = s.Back(); !ok || p.Address != first.Address || p.Before.Text != "joists" {
		t.Errorf("back twice: %s, %+v", p.Address, p.Before)
	}
	if _, ok = s.Back(); ok {
		t.Error("back three times")
	}
	if _, said := s.Job.Answer(second.Address); !said {
		t.Error("going back forgot an answer")
	}
}

// Nothing that was taken off a list is gone back to.
func TestBackPassesOverWhatIsGone(t *testing.T) {
	s, g := sit(t, "2 layer.l1.kind")
	s.Job.AddItem(g.pending[0].Address)
	s.Answer(next(t, s), assess.Answer{Reply: assess.NotSure})
	s.Drop(Prompt{Form: List, Address: schema.Address{Area: "the-room", Zone: "main", Topic: "layer", Field: "complete"}}, 0)
	if p, ok := s.Back(); ok {
		t.Errorf("back to %s", p.Address)
	}
}

// Only dangers alarm, and only once one of them is proven.
func TestAlarm(t *testing.T) {
	s, g := sit(t, "0 danger.gas", "2 water.leak")
	danger, other := []Change{{Address: g.pending[0].Address}}, []Change{{Address: g.pending[1].Address}}
	if err := s.Alarm(danger); err != nil {
		t.Errorf("no danger is proven: %v", err)
	}
	g.alarm = "Leave the house."
	if err := s.Alarm(danger); err == nil || err.Error() != "Leave the house." {
		t.Errorf("alarm: %v", err)
	}
	if err := s.Alarm(other); err != nil {
		t.Errorf("a leak alarms: %v", err)
	}
}

func TestProgress(t *testing.T) {
	s, g := sit(t, "0 danger.gas", "2 zone.base", "3 tile.kind", "3 room.use")
	s.Job.Put(g.pending[3].Address, assess.Answer{Reply: assess.CouldNotSee})
	if answered, waiting, later := s.Progress(); answered != 1 || waiting != 2 || later != 1 {
		t.Errorf("%d answered, %d waiting, %d later", answered, waiting, later)
	}
}

// How an answer is known matters for a year and for a figure of stiffness.
func TestWantsBasis(t *testing.T) {
	s, _ := sit(t)
	for id, want := range map[string]bool{"layer.year": true, "joist.known_ratio": true, "joist.span": false} {
		if p := (Prompt{Question: s.Catalogue.Find(id)}); p.WantsBasis() != want {
			t.Errorf("%s: %t", id, !want)
		}
	}
	var titles []string
	for stage := inquiry.Danger; stage <= inquiry.Before; stage++ {
		titles = append(titles, s.StageTitle(stage))
	}
	if titles[0] != "First: is anybody in danger now?" || titles[3] != "To look at before anything is bought" {
		t.Errorf("%q", titles)
	}
}
