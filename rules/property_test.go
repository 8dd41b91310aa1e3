package rules

import (
	"slices"
	"testing"

	"underfoot/assess"
	"underfoot/assess/facts"
	"underfoot/assess/logic"
	"underfoot/assess/message"
	"underfoot/assess/quantity"
	"underfoot/assess/schema"
	"underfoot/rules/judge"
)

const today = assess.Day("2026-05-04")

func evaluate(e *Engine, j *assess.Job) *judge.Evaluation { return e.Judge(j, today).Evaluation(0, 0) }

// slot is one place where a job has, or could have, an answer.
type slot struct {
	addr schema.Address
	decl *schema.Declaration
}

// slots are all places of a job's one zone, items included.
func slots(e *Engine, j *assess.Job) []slot {
	var all []slot
	z := &j.Areas[0].Zones[0]
	for i := range e.Catalogue.Questions {
		d := e.Catalogue.Questions[i].Decl
		a, err := schema.ParseAddress(d.ID)
		if err != nil {
			continue
		}
		if !d.Scope.Listed() {
			if a, err = j.Locate(a); err == nil {
				all = append(all, slot{a, d})
			}
			continue
		}
		for _, it := range z.Lists[d.Scope] {
			a.Area, a.Zone, a.Item = "the-room", "main", it.ID
			all = append(all, slot{a, d})
		}
	}
	return all
}

// settle gives one unsettled place of the job a settled answer within what it
// may be; false where everything is settled.
func settle(e *Engine, g floorplan, j *assess.Job) bool {
	floor := e.facts.Fill(j, today)
	var open []slot
	for _, s := range slots(e, j) {
		a, said := j.Answer(s.addr)
		switch {
		case said && a.Reply == assess.Given && a.Set.Settled(s.decl.Kind):
		case s.decl.Default != "" && !said, s.addr.Field == "complete": // a change of mind, not more knowledge
		case s.decl.ID == "edge.enough": // a judgement over the number beside it
		case possible(e, floor, s).Settled(s.decl.Kind):
		default:
			open = append(open, s)
		}
	}
	if len(open) == 0 {
		return false
	}
	s := one(g, open...)
	j.Put(s.addr, assess.Answer{Set: g.within(s.decl, possible(e, floor, s)), Basis: assess.Document})
	return true
}

// possible is what the place may be by what other answers imply: the year of a
// layer lies where the layer can have been laid.
func possible(e *Engine, floor *facts.Floor, s slot) schema.Set {
	id := s.decl.ID
	if id == "layer.year" {
		id = "layer.laid"
	}
	f, _ := e.Catalogue.Schema().Lookup(id)
	for _, frame := range floor.Zones[0][0].All(s.decl.Scope) {
		if s.addr.Item == "" || frame.ID() == s.addr.Item {
			if fact := frame.Fact(f); fact.Presence.Truth != logic.No {
				return fact.Set
			}
		}
	}
	return s.decl.Full()
}

// TestKnowledgeNarrows: more knowledge only narrows the span before
// presumption, and never changes a settled outcome.
func TestKnowledgeNarrows(t *testing.T) {
	e := openUS(t)
	trials(t, e, 1000, func(t *testing.T, g floorplan) {
		j := g.job(one(g, 10, 50, 90))
		before := evaluate(e, j)
		if !settle(e, g, j) {
			return
		}
		after := evaluate(e, j)
		if after.RawSpan().Low < before.RawSpan().Low || after.RawSpan().High > before.RawSpan().High {
			t.Fatalf("the span %v widened to %v", before.RawSpan(), after.RawSpan())
		}
		compareSettled(t, before, after)
	})
}

func compareSettled(t *testing.T, before, after *judge.Evaluation) {
	later := map[string]logic.Truth{}
	for i := range after.Rulings {
		later[after.Rulings[i].FindingID()] = after.Rulings[i].Outcome.Truth
	}
	for i := range before.Rulings {
		r := &before.Rulings[i]
		now, there := later[r.FindingID()]
		if there && r.Outcome.Truth != logic.Open && now != r.Outcome.Truth {
			t.Fatalf("%s was %v and became %v by more knowledge", r.FindingID(), r.Outcome.Truth, now)
		}
	}
}

// TestListsSettleOverEveryCompletion: an outcome over an unfinished list is
// settled only if it is the same with 0, 1 and 2 further items.
func TestListsSettleOverEveryCompletion(t *testing.T) {
	e := openUS(t)
	trials(t, e, 1000, func(t *testing.T, g floorplan) {
		j := g.job(60)
		z := &j.Areas[0].Zones[0]
		list := one(g, schema.ListScopes[:]...)
		z.Answers[assess.CompleteField(list)] = assess.Answer{Set: schema.SetNo}
		before := evaluate(e, j)
		for range g.Intn(3) {
			id := string(list.String()[0]) + string(rune('5'+len(z.Lists[list])))
			answers := g.answers(list, 100)
			for name := range answers { // an unnamed thing has the declared values
				if d := e.Catalogue.Schema().Find(name); d.Default != "" {
					delete(answers, name)
				}
			}
			if year, ok := answers["layer.year"]; ok { // no layer is older than the house
				year.Basis = assess.Told
				answers["layer.year"] = year
			}
			z.Lists[list] = append(z.Lists[list], assess.Item{ID: id, Answers: answers})
		}
		z.Answers[assess.CompleteField(list)] = assess.Answer{Set: schema.SetYes}
		compareSettled(t, before, evaluate(e, j))
	})
}

// TestNamedAnswersSettle: answering only what a ruling says it misses settles it.
func TestNamedAnswersSettle(t *testing.T) {
	e := openUS(t)
	trials(t, e, 200, func(t *testing.T, g floorplan) {
		j := g.job(one(g, 0, 30, 80))
		for range 60 {
			missing := firstMissing(evaluate(e, j))
			if len(missing) == 0 {
				return
			}
			for _, a := range missing {
				d := e.Catalogue.Schema().Find(a.Short())
				if d == nil || d.Nature == schema.Derived {
					t.Fatalf("%s is missed but cannot be answered", a)
				}
				set := d.Full()
				if before, said := j.Answer(a); said && before.Reply == assess.Given {
					set = before.Set
				}
				answer := g.within(d, set)
				if a.Field == "complete" {
					answer = schema.SetYes
				}
				j.Put(a, assess.Answer{Set: answer, Basis: assess.Document})
			}
		}
		t.Fatalf("after 60 rounds these are still missed: %v", firstMissing(evaluate(e, j)))
	})
}

func firstMissing(l *judge.Evaluation) []schema.Address {
	for i := range l.Rulings {
		if r := &l.Rulings[i]; r.Outcome.Truth == logic.Open {
			return r.Missing()
		}
	}
	return nil
}

// TestOrderNeverMatters: the order in which rules are stored changes nothing.
func TestOrderNeverMatters(t *testing.T) {
	e, shuffled := openUS(t), openUS(t)
	trials(t, e, 1000, func(t *testing.T, g floorplan) {
		g.Shuffle(len(shuffled.Pack.Rules), func(i, k int) {
			shuffled.Pack.Rules[i], shuffled.Pack.Rules[k] = shuffled.Pack.Rules[k], shuffled.Pack.Rules[i]
		})
		shuffled.judge = judge.New(shuffled.Pack, shuffled.Catalogue.Schema())
		j := g.job(one(g, 20, 80))
		a, b := evaluate(e, j), evaluate(shuffled, j)
		if a.Span != b.Span || a.Lead != b.Lead || a.Blocked != b.Blocked || !slices.Equal(a.Steps, b.Steps) {
			t.Fatalf("the order of rules matters: %v %v, %v %v", a.Lead, a.Span, b.Lead, b.Span)
		}
	})
}

// TestUnitsNeverMatter: the same region read in the other units says the same.
func TestUnitsNeverMatter(t *testing.T) {
	e := openUS(t)
	metric, err := Open("us", quantity.Metric, message.English())
	if err != nil {
		t.Fatal(err)
	}
	trials(t, e, 1000, func(t *testing.T, g floorplan) {
		j := g.job(one(g, 20, 80))
		a, b := evaluate(e, j), evaluate(metric, j)
		if a.Span != b.Span || a.Lead != b.Lead {
			t.Fatalf("the units matter: %v %v, %v %v", a.Lead, a.Span, b.Lead, b.Span)
		}
	})
}
