package facts_test

import (
	"fmt"
	"strings"
	"sync"
	"testing"

	"underfoot/assess"
	"underfoot/assess/check"
	"underfoot/assess/condition"
	"underfoot/assess/facts"
	"underfoot/assess/figure"
	"underfoot/assess/logic"
	"underfoot/assess/message"
	"underfoot/assess/quantity"
	"underfoot/assess/question"
	"underfoot/assess/schema"
)

// A world is the shipped catalogue with tallies of the tests' own beside it,
// so that every fold is tried.
type world struct {
	catalogue *question.Catalogue
	plan      *facts.Plan
}

// A trial is one tally of the tests. On a slab, what asks for joists is refuted
// of any item there may be, named or not, and what asks for a slab is proven.
type trial struct {
	id, when, of, where string
	over                schema.Scope
	fold                question.Fold
}

var trials = []trial{
	{id: "floor.any_wide", over: schema.ScopeCrack, fold: question.Any, when: `crack.width > "1/8 in"`},
	{id: "floor.any_on_joists", over: schema.ScopeCrack, fold: question.Any, when: `zone.base == "joists" && crack.width > "1/8 in"`},
	{id: "floor.any_on_slab", over: schema.ScopeCrack, fold: question.Any, when: `zone.base == "slab-on-ground"`},
	{id: "floor.any_wide_crack", over: schema.ScopeCrack, fold: question.Any, when: `crack.width > "1/8 in"`, where: `crack.kind == "crack"`},
	{id: "floor.all_thin", over: schema.ScopeCrack, fold: question.All, when: `crack.width <= "1/8 in"`},
	{id: "floor.all_on_slab", over: schema.ScopeCrack, fold: question.All, when: `zone.base == "slab-on-ground" || crack.width <= "1/8 in"`},
	{id: "floor.count_wide", over: schema.ScopeCrack, fold: question.Count, when: `crack.width > "1/8 in"`},
	{id: "floor.count_on_joists", over: schema.ScopeCrack, fold: question.Count, when: `zone.base == "joists" && crack.width > "1/8 in"`},
	{id: "floor.sum", over: schema.ScopeCrack, fold: question.Sum, of: "crack.count", where: `crack.kind == "crack"`},
	{id: "floor.sum_on_joists", over: schema.ScopeCrack, fold: question.Sum, of: "crack.count", where: `zone.base == "joists"`},
	{id: "floor.most", over: schema.ScopeCrack, fold: question.Most, of: "crack.width", where: `crack.kind == "crack"`},
	{id: "floor.most_on_joists", over: schema.ScopeCrack, fold: question.Most, of: "crack.width", where: `zone.base == "joists"`},
	{id: "floor.least", over: schema.ScopeCrack, fold: question.Least, of: "crack.width", where: `crack.kind == "crack"`},
	{id: "floor.least_on_joists", over: schema.ScopeCrack, fold: question.Least, of: "crack.width", where: `zone.base == "joists"`},
}

func (x trial) declare(c *question.Catalogue) schema.Declaration {
	d := schema.Declaration{ID: x.id, Scope: schema.ScopeZone, Nature: schema.Derived, Always: true, Bounds: quantity.Everything}
	switch x.fold {
	case question.Any, question.All:
		d.Kind, d.Choices = schema.KindYesNo, schema.YesNoChoices
	case question.Count:
		d.Kind, d.Dimension = schema.KindQuantity, quantity.Number
	default:
		of := c.Schema().Find(x.of)
		d.Kind, d.Dimension = of.Kind, of.Dimension
	}
	return d
}

// theWorld opens once; tests only read it.
var theWorld = sync.OnceValue(func() *world {
	figures := figure.For("us", quantity.US)
	checks := check.All(figures)
	plain, err := question.Open(figures, facts.Derived(checks), message.English())
	if err != nil {
		panic(err)
	}
	declared := facts.Derived(checks)
	for _, x := range trials {
		declared = append(declared, x.declare(plain))
	}
	c, err := question.Open(figures, declared, message.English())
	if err != nil {
		panic(err)
	}
	for _, x := range trials {
		c.Tallies = append(c.Tallies, x.tally(c, figures))
	}
	p, err := facts.NewPlan(c, checks)
	if err != nil {
		panic(err)
	}
	return &world{c, p}
})

func (x trial) tally(c *question.Catalogue, figures *figure.Table) question.Tally {
	compile := func(src string) *condition.Condition {
		if src == "" {
			return nil
		}
		out, problems := condition.Compile(src, condition.Place{}, condition.Names{Schema: c.Schema(), Figures: figures})
		if len(problems) > 0 {
			panic(problems.Error())
		}
		return out
	}
	t := question.Tally{Over: x.over, Fold: x.fold, When: compile(x.when), Where: compile(x.where)}
	t.ID, _ = c.Schema().Lookup(x.id)
	if x.of != "" {
		t.Of, _ = c.Schema().Lookup(x.of)
	}
	return t
}

// job is a record of one zone from lines such as `layer.l1.year = 1998 document`:
// the last word may be a basis, the value a reply.
func (w *world) job(t testing.TB, lines ...string) *assess.Job {
	t.Helper()
	j := (&assess.Job{Region: "us", Units: "us", Visited: "2026-05-04"}).Normal()
	for _, line := range lines {
		address, text, _ := strings.Cut(line, " = ")
		a, err := schema.ParseAddress(address)
		if err == nil {
			a, err = j.Locate(a)
		}
		if err != nil {
			t.Fatal(err)
		}
		j.Put(a, w.answer(t, a.Short(), text))
	}
	return j
}

func (w *world) answer(t testing.TB, id, text string) assess.Answer {
	t.Helper()
	var a assess.Answer
	for _, word := range assess.BasisWords() {
		if before, ok := strings.CutSuffix(text, " "+word); ok {
			text = before
			a.Basis, _ = assess.ParseBasis(word)
		}
	}
	if a.Reply = assess.ParseReply(text); a.Reply != assess.Given {
		return a
	}
	d := w.catalogue.Schema().Find(id)
	if d == nil {
		t.Fatalf("there is no fact %s", id)
	}
	var err error
	if a.Set, err = w.catalogue.Read(d, text, quantity.US); err != nil {
		t.Fatalf("%s = %s: %v", id, text, err)
	}
	return a
}

// floor is the filled floor of some lines, and its one zone.
func (w *world) floor(t testing.TB, lines ...string) (*facts.Floor, *facts.Frame) {
	t.Helper()
	fl := w.plan.Fill(w.job(t, lines...), "2026-06-01")
	return fl, fl.Zones[0][0]
}

// item is a thing of the zone by its id.
func item(t testing.TB, zone *facts.Frame, list schema.Scope, id string) *facts.Frame {
	t.Helper()
	for _, f := range zone.Things(list) {
		if f.ID() == id {
			return f
		}
	}
	t.Fatalf("there is no %v %s", list, id)
	return nil
}

// show is a fact as one line: `absent`, or the value, `maybe` before one that
// may not apply, and after `<-` the answers that would tell.
func (w *world) show(f *facts.Frame, name string) string {
	id, ok := w.catalogue.Schema().Lookup(name)
	if !ok {
		return "no fact " + name
	}
	fact, d := f.Fact(id), w.catalogue.Schema().Decl(id)
	if fact.Presence.Truth == logic.No {
		return "absent"
	}
	text := w.catalogue.Write(d, fact.Set, quantity.US)
	if fact.Set == d.Full() {
		text = "anything"
	}
	if fact.Presence.Truth == logic.Open {
		text = "maybe " + text
	}
	var missing []string
	for _, a := range f.Named(fact.Presence.Deps.Union(fact.Deps)) {
		missing = append(missing, a.Local())
	}
	if len(missing) > 0 {
		text += fmt.Sprint(" <- ", strings.Join(missing, ", "))
	}
	return text
}
