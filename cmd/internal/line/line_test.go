package line

import (
	"context"
	"errors"
	"strings"
	"testing"

	"underfoot/assess"
	"underfoot/assess/message"
	"underfoot/assess/quantity"
	"underfoot/assess/schema"
	"underfoot/rules"
	"underfoot/rules/interview"
)

// talk holds an interview over the lines and gives back what was printed, what
// was saved, and how it ended.
func talk(t *testing.T, job *assess.Job, lines ...string) (printed string, saved []interview.Change, err error) {
	t.Helper()
	e, err := rules.Open("us", quantity.US, message.English())
	if err != nil {
		t.Fatal(err)
	}
	var out strings.Builder
	a := &Asker{In: strings.NewReader(strings.Join(lines, "\n")), Out: &out, Language: message.English(), System: quantity.US,
		Session: interview.New(job, e.Catalogue, message.English(), judging(e)),
		Save:    func(c []interview.Change) error { saved = append(saved, c...); return nil }}
	err = a.Run(context.Background())
	return out.String(), saved, err
}

// judging are the rules themselves.
func judging(e *rules.Engine) interview.Rules {
	return func(job *assess.Job) interview.Judgment { return e.Judge(job, "2026-05-04") }
}

func empty() *assess.Job { return &assess.Job{Region: "us", Units: "us", Visited: "2026-05-04"} }

func TestEndOfInputTakesNothing(t *testing.T) {
	for _, lines := range [][]string{{}, {""}, {"", "", ""}, {"?"}, {"nonsense"}, {"9"}} {
		_, saved, err := talk(t, empty(), lines...)
		if !errors.Is(err, ErrStopped) || len(saved) > 0 {
			t.Errorf("%q: saved %v, ended with %v", lines, saved, err)
		}
	}
}

func TestAFamilyIsAnsweredAsOne(t *testing.T) {
	for line, wantYes := range map[string]string{"none": "", "3": "danger.gas", "gas, 5": "danger.gas danger.co_alarm"} {
		_, saved, _ := talk(t, empty(), line)
		var yes []string
		for _, c := range saved {
			if c.Answer.Set == schema.SetYes {
				yes = append(yes, c.Address.Short())
			}
		}
		if len(saved) != 7 || strings.Join(yes, " ") != wantYes {
			t.Errorf("%q: %d saved, yes of %v", line, len(saved), yes)
		}
	}
	_, saved, _ := talk(t, empty(), "not sure")
	for _, c := range saved {
		if c.Answer.Reply != assess.NotSure {
			t.Errorf("not sure became %+v", c)
		}
	}
}

func TestAListGrowsAndShrinks(t *testing.T) {
	printed, saved, _ := talk(t, empty(), "none", "add", "lino", "not sure", "not sure", "not sure")
	if !strings.Contains(printed, "layer l1: ") {
		t.Errorf("the layer's own questions are not asked:\n%s", printed)
	}
	var kind assess.Answer
	for _, c := range saved {
		if c.Address.Short() == "layer.kind" {
			kind = c.Answer
		}
	}
	if len(kind.Set.Words(&schema.Declaration{Choices: make([]string, 64)})) != 2 || kind.Text != "lino" {
		t.Errorf("lino became %+v, want sheet vinyl or linoleum", kind)
	}
}

func TestBackAsksTheLastQuestionAgain(t *testing.T) {
	printed, saved, _ := talk(t, empty(), "none", "back", "gas", "stop")
	if strings.Count(printed, "Is any of this so now?") != 2 {
		t.Errorf("back did not ask again:\n%s", printed)
	}
	if last := saved[len(saved)-5]; last.Address.Short() != "danger.gas" || last.Answer.Set != schema.SetYes {
		t.Errorf("the second answer is not taken: %+v", saved)
	}
	if first, _, _ := talk(t, empty(), "back", "stop"); !strings.Contains(first, "This is the first question.") {
		t.Error("back at the beginning says nothing")
	}
}

// wooden is a job of which little more than the joists is open.
func wooden(t *testing.T) *assess.Job {
	t.Helper()
	j := empty().Normal()
	j.Areas[0].Zones[0].Answers = assess.Answers{"zone.base": {Set: schema.Set{Mask: 1}}, "joist.member": {Set: schema.Set{Mask: 1}}}
	return j
}

func TestUnclearNumbersAreAskedBack(t *testing.T) {
	e, err := rules.Open("us", quantity.US, message.English())
	if err != nil {
		t.Fatal(err)
	}
	q := e.Catalogue.Find("joist.spacing")
	var out strings.Builder
	a := &Asker{In: strings.NewReader("1\n"), Out: &out, Language: message.English(), System: quantity.US,
		Session: interview.New(wooden(t), e.Catalogue, message.English(), judging(e))}
	a.begin()
	p := interview.Prompt{Question: q, Address: schema.Address{Area: "the-room", Zone: "main", Topic: "joist", Field: "spacing"}}
	changes, problem, err := a.take(p, "16' OC")
	if err != nil || problem != "" || len(changes) != 1 || changes[0].Answer.Set.Range != quantity.Point(16) {
		t.Errorf("16' OC, first reading picked: %+v, %q, %v\n%s", changes, problem, err, out.String())
	}
}

func TestAYearIsAskedHowItIsKnown(t *testing.T) {
	e, err := rules.Open("us", quantity.US, message.English())
	if err != nil {
		t.Fatal(err)
	}
	var out strings.Builder
	a := &Asker{In: strings.NewReader("9\n1\n"), Out: &out, Language: message.English(), System: quantity.US,
		Session: interview.New(empty(), e.Catalogue, message.English(), judging(e))}
	a.begin()
	p := interview.Prompt{Question: e.Catalogue.Find("layer.year"), Address: schema.Address{Area: "the-room", Zone: "main", Topic: "layer", Item: "l1", Field: "year"}}
	changes, _, err := a.take(p, "1998")
	if err != nil || changes[0].Answer.Basis != assess.Document {
		t.Errorf("%+v, %v", changes, err)
	}
}
