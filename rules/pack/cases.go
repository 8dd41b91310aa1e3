package pack

import (
	"cmp"
	"fmt"

	"underfoot/assess/condition"
	"underfoot/assess/logic"
	"underfoot/assess/message"
	"underfoot/assess/schema"
)

// A Failure is a case that does not give what it expects.
type Failure struct {
	Rule, Case string
	Want, Got  string          // yes, no or open; Got is empty where the case cannot be tried
	Fault      message.Message // why it cannot be tried
	applies    *condition.Explanation
	when       *condition.Explanation
}

// Explain is the branches that decided, with the values of the case; empty where
// the case cannot be tried.
func (f *Failure) Explain(l *message.Language) string {
	switch {
	case f.when == nil:
		return ""
	case f.applies == nil:
		return f.when.Lines(l)
	}
	return l.Text("pack/case.applies", "lines", f.applies.Lines(l)) + "\n" + l.Text("pack/case.when", "lines", f.when.Lines(l))
}

// defaultRegion is where a case holds that names no region.
const defaultRegion = "us"

func (c *Case) region() string { return cmp.Or(c.Region, defaultRegion) }

// Test runs the cases of the pack's region and gives those that fail and how
// many were run. A fact of a case is a value as a record holds it, a list of
// values of which it is one, or `absent` for one that does not apply. A fact
// that the case does not name may be anything, and may not apply unless it is
// one that always does.
func (p *Pack) Test(schema *schema.Schema, read func(d *schema.Declaration, text string) (schema.Set, error)) (failures []Failure, run int) {
	on := stage{schema, p.Words, read}
	for _, r := range p.Tested() {
		for i := range r.Cases {
			c := &r.Cases[i]
			if c.region() != p.Region {
				continue
			}
			run++
			if f, ok := r.try(c, on); !ok {
				failures = append(failures, f)
			}
		}
	}
	return failures, run
}

// Tested are the rules whose cases Test runs: with local packs only theirs,
// since the thresholds in the cases of the program's rules are the program's.
func (p *Pack) Tested() []*Rule {
	if len(p.Locals) == 0 {
		return p.Rules
	}
	var out []*Rule
	for _, r := range p.Rules {
		if r.Local {
			out = append(out, r)
		}
	}
	return out
}

// try runs one case.
func (r *Rule) try(c *Case, on stage) (Failure, bool) {
	f := Failure{Rule: r.ID, Case: c.Name, Want: c.Expect}
	facts, err := on.scene(c)
	if err != nil {
		f.Fault = message.Of(err)
		return f, false
	}
	outcome, _ := r.Eval(facts)
	f.Got = outcome.Truth.String()
	if f.Got == f.Want {
		return f, true
	}
	f.applies, f.when = r.explain(facts)
	return f, false
}

func (r *Rule) explain(facts schema.Reader) (applies, when *condition.Explanation) {
	x := r.When.Explain(facts, condition.Show{})
	if r.Applies != nil {
		y := r.Applies.Explain(facts, condition.Show{})
		applies = &y
	}
	return applies, &x
}

// readValue reads the text of one value of a fact.
type readValue = func(d *schema.Declaration, text string) (schema.Set, error)

// A stage is what the facts of cases are read with.
type stage struct {
	schema *schema.Schema
	words  *condition.Vocabulary
	read   readValue
}

// A scene is the facts of one case.
type scene struct {
	schema *schema.Schema
	named  map[schema.FactID]schema.Fact
}

func (on stage) scene(c *Case) (*scene, error) {
	s := &scene{on.schema, map[schema.FactID]schema.Fact{}}
	for name, value := range c.Facts {
		id, ok := on.schema.Lookup(name)
		if !ok {
			return nil, message.New("pack/no_such.fact", "name", name).Err()
		}
		fact, err := on.fact(on.schema.Decl(id), value)
		if err != nil {
			return nil, message.New("pack/case.fact", "name", name, "fault", message.Of(err)).Err()
		}
		if fact.Presence.Truth == logic.Yes && !fact.Set.Settled(on.schema.Decl(id).Kind) {
			fact.Deps = s.own(id)
		}
		s.named[id] = fact
	}
	return s, nil
}

// absent is what a case says of a fact that does not apply.
const absent = "absent"

func (on stage) fact(d *schema.Declaration, value any) (schema.Fact, error) {
	if value == absent {
		return schema.Absent, nil
	}
	if table, ok := value.(map[string]any); ok {
		set, err := on.others(d, table)
		return schema.Fact{Presence: logic.Proven, Set: set}, err
	}
	set, err := on.any(d, value)
	return schema.Fact{Presence: logic.Proven, Set: set}, err
}

// others are the words that are none of those of a table { not = ... }.
func (on stage) others(d *schema.Declaration, table map[string]any) (schema.Set, error) {
	not, ok := table["not"]
	if !ok || len(table) > 1 || len(d.Choices) == 0 {
		return schema.Set{}, message.New("pack/case.not").Err()
	}
	set, err := on.any(d, not)
	return schema.Set{Mask: d.Full().Mask &^ set.Mask}, err
}

// any is a value, or anything that the values of a list leave possible.
func (on stage) any(d *schema.Declaration, value any) (schema.Set, error) {
	list, several := value.([]any)
	if !several {
		return on.value(d, value)
	}
	if len(list) == 0 {
		return schema.Set{}, message.New("pack/case.no_value").Err()
	}
	var all schema.Set
	for i, v := range list {
		set, err := on.value(d, v)
		if err != nil {
			return all, err
		}
		if i == 0 {
			all = set
		}
		all = all.Hull(set, d.Kind)
	}
	return all, nil
}

// value reads one value: the name of a set, a text as a record holds it, or a
// bare number.
func (on stage) value(d *schema.Declaration, v any) (schema.Set, error) {
	switch v := v.(type) {
	case string:
		if s := on.words.Set(v, d); s != nil {
			return schema.Set{Mask: d.Mask(s.Words...)}, nil
		}
		return on.read(d, v)
	case int64, float64:
		return on.read(d, fmt.Sprint(v))
	}
	return schema.Set{}, message.New("pack/case.no_kind", "value", v).Err()
}

// Fact is what the case says of a fact, or everything that it may be.
func (s *scene) Fact(id schema.FactID) schema.Fact {
	if f, ok := s.named[id]; ok {
		return f
	}
	f := schema.Fact{Presence: logic.Proven, Set: s.schema.Decl(id).Full(), Deps: s.own(id)}
	if !s.schema.Decl(id).Always {
		f.Presence = logic.OpenOn(f.Deps)
	}
	return f
}

// own is the dependency of an open fact: on its own answer.
func (s *scene) own(id schema.FactID) logic.Deps { return logic.DependOn(logic.Ref(id)) }
