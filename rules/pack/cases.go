package pack

import (
	"cmp"
	"fmt"

	"underfoot/assess"
	"underfoot/assess/condition"
	"underfoot/assess/message"
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
func (p *Pack) Test(names condition.Names, read func(d *assess.Declaration, text string) (assess.Set, error)) (failures []Failure, run int) {
	for _, r := range p.Tested() {
		for i := range r.Cases {
			c := &r.Cases[i]
			if c.region() != p.Region {
				continue
			}
			run++
			if f, ok := r.try(c, names.Schema, read); !ok {
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
func (r *Rule) try(c *Case, schema *assess.Schema, read readValue) (Failure, bool) {
	f := Failure{Rule: r.ID, Case: c.Name, Want: c.Expect}
	facts, err := newScene(c, schema, read)
	if err != nil {
		f.Fault = message.Of(err)
		return f, false
	}
	f.Got = r.outcome(facts).Truth.String()
	if f.Got == f.Want {
		return f, true
	}
	f.applies, f.when = r.explain(facts)
	return f, false
}

// outcome is what `applies` and `when` give together.
func (r *Rule) outcome(facts assess.Reader) assess.Outcome {
	if r.Applies == nil {
		return r.When.Eval(facts)
	}
	return r.Applies.Eval(facts).And(r.When.Eval(facts))
}

func (r *Rule) explain(facts assess.Reader) (applies, when *condition.Explanation) {
	x := r.When.Explain(facts, condition.Show{})
	if r.Applies != nil {
		y := r.Applies.Explain(facts, condition.Show{})
		applies = &y
	}
	return applies, &x
}

// readValue reads the text of one value of a fact.
type readValue = func(d *assess.Declaration, text string) (assess.Set, error)

// A scene is the facts of one case.
type scene struct {
	schema *assess.Schema
	named  map[assess.FactID]assess.Fact
}

func newScene(c *Case, schema *assess.Schema, read readValue) (*scene, error) {
	s := &scene{schema, map[assess.FactID]assess.Fact{}}
	for name, value := range c.Facts {
		id, ok := schema.Lookup(name)
		if !ok {
			return nil, message.New("pack/no_such.fact", "name", name).Err()
		}
		fact, err := s.fact(id, value, read)
		if err != nil {
			return nil, message.New("pack/case.fact", "name", name, "fault", message.Of(err)).Err()
		}
		s.named[id] = fact
	}
	return s, nil
}

// absent is what a case says of a fact that does not apply.
const absent = "absent"

func (s *scene) fact(id assess.FactID, value any, read readValue) (assess.Fact, error) {
	if value == absent {
		return assess.Absent, nil
	}
	list, several := value.([]any)
	if !several {
		list = []any{value}
	}
	if len(list) == 0 {
		return assess.Fact{}, message.New("pack/case.no_value").Err()
	}
	d := s.schema.Decl(id)
	fact := assess.Fact{Presence: assess.Proven}
	for i, v := range list {
		set, err := s.value(d, v, read)
		if err != nil {
			return fact, err
		}
		if i == 0 {
			fact.Set = set
		}
		fact.Set = fact.Set.Hull(set, d.Kind)
	}
	if !fact.Set.Settled(d.Kind) {
		fact.Deps = s.own(id)
	}
	return fact, nil
}

// value reads one value: a text as a record holds it, or a bare number.
func (s *scene) value(d *assess.Declaration, v any, read readValue) (assess.Set, error) {
	switch v := v.(type) {
	case string:
		return read(d, v)
	case int64, float64:
		return read(d, fmt.Sprint(v))
	}
	return assess.Set{}, message.New("pack/case.no_kind", "value", v).Err()
}

// Fact is what the case says of a fact, or everything that it may be.
func (s *scene) Fact(id assess.FactID) assess.Fact {
	if f, ok := s.named[id]; ok {
		return f
	}
	f := assess.Fact{Presence: assess.Proven, Set: s.schema.Decl(id).Full(), Deps: s.own(id)}
	if !s.schema.Decl(id).Always {
		f.Presence = assess.OpenOn(f.Deps)
	}
	return f
}

// own is the dependency of an open fact: on its own answer.
func (s *scene) own(id assess.FactID) assess.Deps { return assess.DependOn(assess.Ref(id)) }
