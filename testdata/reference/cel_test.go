package reference

import (
	"flag"
	"strings"
	"sync/atomic"
	"testing"

	"cel.dev/cel-go/cel"
	"cel.dev/cel-go/common/types"

	"underfoot/assess/condition"
	"underfoot/assess/logic"
	"underfoot/assess/quantity"
	"underfoot/assess/schema"
)

var worlds = flag.Int("worlds", 220, "schemas to draw; each has 500 conditions")

const perWorld = 500

// TestAgainstCEL compares the language with cel-go, an independent
// implementation of the Common Expression Language: with all facts known both
// agree; where cel-go settles a condition with some facts unknown, ours gives
// the same outcome; and every condition is one by cel-go's grammar too.
func TestAgainstCEL(t *testing.T) {
	var conditions, settled, open atomic.Int64
	t.Run("worlds", func(t *testing.T) {
		for half := range 2 {
			t.Run("", func(t *testing.T) {
				t.Parallel()
				for seed := half; seed < *worlds; seed += 2 {
					c := comparison{TB: t, world: newWorld(uint64(seed))}
					c.env = c.environment()
					for range perWorld {
						c.one(seed)
					}
					conditions.Add(c.conditions)
					settled.Add(c.settled)
					open.Add(c.open)
				}
			})
		}
	})
	t.Logf("%d conditions: %d outcomes with every fact known, %d that cel-go leaves open", conditions.Load(), settled.Load(), open.Load())
	if conditions.Load() < 100_000 && *worlds >= 220 {
		t.Errorf("only %d conditions", conditions.Load())
	}
}

// A comparison is one world with its reference.
type comparison struct {
	testing.TB
	*world
	env                       *cel.Env
	conditions, settled, open int64
}

// environment declares the facts and figures to cel-go.
func (c *comparison) environment() *cel.Env {
	var options []cel.EnvOption
	for _, d := range c.schema.All() {
		kind := cel.StringType
		if d.Kind == schema.KindQuantity {
			kind = cel.DoubleType
		}
		options = append(options, cel.Variable(d.ID, kind))
	}
	for id := range c.figures {
		options = append(options, cel.Variable("figure."+id, cel.DoubleType))
	}
	env, err := cel.NewEnv(options...)
	if err != nil {
		c.Fatal(err)
	}
	return env
}

// one draws a condition and compares it over several states of the facts.
func (c *comparison) one(seed int) {
	ours, theirs := c.condition(1+c.IntN(3), false).texts(0)
	compiled, problems := condition.Compile(ours, condition.Place{File: "f", Line: 1, Column: 1}, c.names())
	if compiled == nil {
		if len(ours) > 4000 || problems[0].What.Key == "condition/bound.parts" {
			return // past the bounds of our language
		}
		c.Fatalf("world %d: %s", seed, problems[0].Error())
	}
	// `not in` is the one thing that CEL does not have.
	if _, issues := c.env.Parse(ours); !strings.Contains(ours, " not in ") && issues.Err() != nil {
		c.Fatalf("world %d: %s\nis no CEL: %v", seed, ours, issues.Err())
	}
	program := c.program(theirs)
	c.conditions++
	for range 3 {
		state := c.state()
		c.compare(seed, ours, theirs, compiled, program, state, nil)
		c.compare(seed, ours, theirs, compiled, program, state, c.unknown())
	}
}

func (c *comparison) program(text string) cel.Program {
	ast, issues := c.env.Compile(text)
	if issues.Err() != nil {
		c.Fatalf("%s\n%v", text, issues.Err())
	}
	program, err := c.env.Program(ast, cel.EvalOptions(cel.OptPartialEval))
	if err != nil {
		c.Fatal(err)
	}
	return program
}

func (c *comparison) compare(seed int, ours, theirs string, compiled *condition.Condition, program cel.Program, s state, unknown []string) {
	got := compiled.Eval(s.without(unknown)).Truth
	want := c.reference(program, s, unknown)
	switch {
	case want == logic.Open && len(unknown) > 0:
		c.open++ // ours may settle it: it tries the possible values
		return
	case len(unknown) == 0:
		c.settled++
	}
	if got != want {
		c.Fatalf("world %d, unknown %v\n%s\n%s\nis %v, and %v by cel-go with %v", seed, unknown, ours, theirs, got, want, s.values)
	}
}

func (c *comparison) reference(program cel.Program, s state, unknown []string) logic.Truth {
	var patterns []*cel.AttributePatternType
	for _, name := range unknown {
		patterns = append(patterns, cel.AttributePattern(name))
	}
	activation, err := cel.PartialVars(s.values, patterns...)
	if err != nil {
		c.Fatal(err)
	}
	out, _, err := program.Eval(activation)
	switch {
	case err != nil:
		c.Fatal(err)
	case types.IsUnknown(out):
		return logic.Open
	case out == types.True:
		return logic.Yes
	}
	return logic.No
}

// A state is a value for every fact and figure, in the form of each side.
type state struct {
	schema *schema.Schema
	facts  []schema.Fact
	values map[string]any
}

func (s state) Fact(f schema.FactID) schema.Fact { return s.facts[f] }

// without is the state with some facts not known.
func (s state) without(unknown []string) state {
	s.facts = append([]schema.Fact(nil), s.facts...)
	for _, name := range unknown {
		f, _ := s.schema.Lookup(name)
		s.facts[f].Set = s.schema.Decl(f).Full()
		s.facts[f].Deps = logic.DependOn(logic.Ref(f))
	}
	return s
}

func (c *comparison) state() state {
	s := state{schema: c.schema, facts: make([]schema.Fact, c.schema.Len()), values: map[string]any{}}
	for i, d := range c.schema.All() {
		s.facts[i].Presence = logic.Proven
		if d.Kind == schema.KindQuantity {
			v := c.value()
			s.facts[i].Set.Range, s.values[d.ID] = quantity.Point(v), v
			continue
		}
		word := d.Choices[c.IntN(len(d.Choices))]
		s.facts[i].Set.Mask, _ = d.ChoiceBit(word)
		s.values[d.ID] = word
	}
	for id, f := range c.figures {
		s.values["figure."+id] = f.Value
	}
	return s
}

// unknown draws facts that are not known, at least one.
func (c *comparison) unknown() []string {
	all := c.schema.All()
	var names []string
	for _, i := range c.Perm(len(all))[:1+c.IntN(len(all)/2)] {
		names = append(names, all[i].ID)
	}
	return names
}
