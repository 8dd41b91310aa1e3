package facts_test

import (
	"strings"
	"testing"

	"underfoot/assess"
	"underfoot/assess/check"
	"underfoot/assess/facts"
	"underfoot/assess/figure"
	"underfoot/assess/logic"
	"underfoot/assess/message"
	"underfoot/assess/quantity"
	"underfoot/assess/question"
	"underfoot/assess/result"
	"underfoot/assess/schema"
)

// derive is a derivation of the zone that reads facts and gives one.
func derive(gives string, reads ...string) result.Derivation {
	return result.Derivation{ID: "sum of " + gives, Scope: schema.ScopeZone, Reads: reads,
		Gives: []schema.Declaration{{ID: gives, Scope: schema.ScopeZone, Kind: schema.KindYesNo, Choices: schema.YesNoChoices, Nature: schema.Derived}},
		Make: func(result.Thing) ([]schema.Fact, *result.Check) {
			return []schema.Fact{{Presence: logic.Proven}}, nil
		}}
}

func plan(t *testing.T, more ...result.Derivation) (*facts.Plan, error) {
	t.Helper()
	figures := figure.For("us", quantity.US)
	all := append(check.All(figures), more...)
	c, err := question.Open(figures, facts.Derived(all), message.English())
	if err != nil {
		t.Fatal(err)
	}
	return facts.NewPlan(c, all)
}

func TestFaultyDerivations(t *testing.T) {
	for _, tt := range []struct {
		name string
		more []result.Derivation
		want string
	}{
		{"a circle of two", []result.Derivation{derive("floor.x", "floor.y"), derive("floor.y", "floor.x")},
			"facts go round in a circle: floor.x reads floor.y reads floor.x"},
		{"a circle of three", []result.Derivation{derive("floor.x", "floor.y"), derive("floor.y", "floor.z"), derive("floor.z", "floor.x")},
			"facts go round in a circle: floor.x reads floor.y reads floor.z reads floor.x"},
		{"a circle that is reached from outside it", []result.Derivation{derive("floor.w", "floor.x"), derive("floor.x", "floor.y"), derive("floor.y", "floor.x")},
			"facts go round in a circle: floor.x reads floor.y reads floor.x"},
		{"reads what is not declared", []result.Derivation{derive("floor.x", "floor.nothing")}, "sum of floor.x reads floor.nothing, which is not declared"},
	} {
		t.Run(tt.name, func(t *testing.T) {
			if _, err := plan(t, tt.more...); err == nil || err.Error() != tt.want {
				t.Errorf("%v\nwant %s", err, tt.want)
			}
		})
	}
}

// A derivation may give a fact that the catalogue was not told of, or be told
// of and left out: both are faults of the program that the order finds.
func TestCatalogueAndPlanMustAgree(t *testing.T) {
	figures := figure.For("us", quantity.US)
	checks := check.All(figures)
	stranger := derive("floor.x", "zone.base")
	c, err := question.Open(figures, facts.Derived(checks), message.English())
	if err != nil {
		t.Fatal(err)
	}
	if _, err := facts.NewPlan(c, append(checks, stranger)); err == nil || !strings.Contains(err.Error(), "gives floor.x, which is not declared") {
		t.Errorf("a fact not declared: %v", err)
	}
	if c, err = question.Open(figures, facts.Derived(append(checks, stranger)), message.English()); err != nil {
		t.Fatal(err)
	}
	if _, err := facts.NewPlan(c, append(checks, derive("floor.covers", "floor.x"))); err == nil || !strings.Contains(err.Error(), "nothing makes the fact floor.x") {
		t.Errorf("a fact that nothing makes: %v", err)
	}
}

// A derivation reads only what it says that it reads.
func TestUnknownNameInADerivationPanics(t *testing.T) {
	d := derive("floor.x")
	d.Make = func(thing result.Thing) ([]schema.Fact, *result.Check) {
		return []schema.Fact{thing.Fact("floor.nothing")}, nil
	}
	p, err := plan(t, d)
	if err != nil {
		t.Fatal(err)
	}
	defer func() {
		if recover() == nil {
			t.Error("an unknown fact was read")
		}
	}()
	p.Fill((&assess.Job{}).Normal(), "2026-06-01")
}

// What a fact is made from is told down to what people answer.
func TestAsked(t *testing.T) {
	p, err := plan(t)
	if err != nil {
		t.Fatal(err)
	}
	schema := schemaOf(t)
	for _, tt := range []struct{ fact, want string }{
		{"crack.width", "crack.width"},
		{"layer.lab_clear", "layer.lab_result layer.lab_complete"},
		{"floor.cracks", "crack.kind crack.count"},
	} {
		f, _ := schema.Lookup(tt.fact)
		var got []string
		for _, q := range p.Asked(f) {
			got = append(got, schema.Decl(q).ID)
		}
		if joined := strings.Join(got, " "); joined != tt.want {
			t.Errorf("%s is made from %q, want %q", tt.fact, joined, tt.want)
		}
	}
}

func schemaOf(t *testing.T) *schema.Schema {
	t.Helper()
	figures := figure.For("us", quantity.US)
	c, err := question.Open(figures, facts.Derived(check.All(figures)), message.English())
	if err != nil {
		t.Fatal(err)
	}
	return c.Schema()
}
