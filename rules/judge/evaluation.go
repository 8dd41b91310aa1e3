// Package judge evaluates a floor: every rule's outcome, what that
// means for every path, the span of verdicts, and the path that leads.
package judge

import (
	"cmp"
	"math"
	"slices"

	"underfoot/assess/facts"
	"underfoot/assess/logic"
	"underfoot/assess/result"
	"underfoot/assess/schema"
	"underfoot/rules/pack"
)

// A Ruling is what one rule says of one thing.
type Ruling struct {
	Rule    *pack.Rule
	Thing   *facts.Frame
	Outcome logic.Outcome
	Policy  result.Policy // of an open outcome
	Applies bool          // false: proven not to apply
	Lacks   []string      // figures that the region has no value for
	blocked bool          // its step breaks into what a waiting test or engineer comes before
	gates   bool          // open, and nothing comes up before it is settled
}

// Presumed reports whether the trouble is not proven but taken as there.
func (r *Ruling) Presumed() bool {
	return r.Outcome.Truth == logic.Open && r.Policy == result.PolicyPresume && !r.Rule.IsPermit()
}

// Proven reports whether the rule takes effect: yes, or presumed.
func (r *Ruling) Proven() bool { return r.Outcome.Truth == logic.Yes || r.Presumed() }

// Due reports whether the step that the rule calls for may be taken as things
// stand: it is proven, and waits behind no test and no engineer.
func (r *Ruling) Due() bool { return r.Proven() && !r.blocked }

// Waits reports whether paths wait for the rule.
func (r *Ruling) Waits() bool { return r.Outcome.Truth == logic.Open && r.Policy == result.PolicyHold }

// Verifies reports whether the open rule only asks for a look before the work.
func (r *Ruling) Verifies() bool {
	return r.Outcome.Truth == logic.Open && r.Policy == result.PolicyVerify
}

// An Evaluation is what the rules say of one zone.
type Evaluation struct {
	Rulings    []Ruling // in rank order
	Paths      []result.PathStanding
	Span       result.Span
	Lead       result.PathID
	LeadRuling *Ruling       // the ruling that leads, nil where none does
	Blocked    result.PathID // a step already proven while find-out leads
	Steps      []result.PathID
	// Untested: a test-or-abate call waits, so something here may be suspect.
	TestPending bool
	// Guarded are the layers that an engineer is asked about before they come up.
	Guarded         []string
	EngineerPending bool // one of them would come up now, and the rule that asks is open
	possible        map[result.PathID]bool
}

// A Judge evaluates floors with the rules of one pack.
type Judge struct {
	Pack   *pack.Pack
	Schema *schema.Schema
	rules  []*pack.Rule // by rank, those without one last
}

// New is a judge with the rules of a pack, whatever the order of storage.
func New(p *pack.Pack, schema *schema.Schema) *Judge {
	rank := func(r *pack.Rule) float64 {
		if r.Rank == 0 {
			return math.Inf(1)
		}
		return r.Rank
	}
	rules := slices.Clone(p.Rules)
	slices.SortFunc(rules, func(a, b *pack.Rule) int {
		return cmp.Or(cmp.Compare(rank(a), rank(b)), cmp.Compare(a.ID, b.ID))
	})
	return &Judge{Pack: p, Schema: schema, rules: rules}
}

// Zone evaluates one zone. Favour takes every open trouble as absent: what
// finding out would leave if it went well.
func (j *Judge) Zone(zone *facts.Frame, favour bool) *Evaluation {
	e := &Evaluation{}
	for _, r := range j.rules {
		for _, t := range zone.All(r.Scope) {
			e.Rulings = append(e.Rulings, rule(r, t, favour))
		}
	}
	j.uncover(e, zone)
	e.askEngineerFirst(zone, favour)
	e.permit()
	e.lead()
	e.stand()
	e.Span = e.span()
	return e
}

// rule gives one ruling. Of the rest of a list nothing is ever proven or
// presumed: it may be no thing at all. A layer that is coming out is judged as
// gone, except where people are at risk from it.
func rule(r *pack.Rule, t *facts.Frame, favour bool) Ruling {
	out := Ruling{Rule: r, Thing: t, Lacks: r.When.Lacks()}
	out.Outcome, out.Applies = r.Eval(t)
	if r.Scope == schema.ScopeLayer && r.Protects != result.ProtectsPeople {
		out.Outcome = out.Outcome.And(t.Stays())
	}
	if !out.Applies {
		return out
	}
	if t.IsRest() && out.Outcome.Truth != logic.No {
		out.Outcome = logic.OpenOn(t.RestDeps())
	}
	if out.Outcome.Truth != logic.Open {
		return out
	}
	out.Policy = policy(r, t)
	if favour && !r.IsPermit() && out.Policy != result.PolicyVerify {
		out.Outcome, out.Policy = logic.Refuted, ""
	}
	return out
}

// policy picks what the open rule does.
func policy(r *pack.Rule, t *facts.Frame) result.Policy {
	p := r.Unknown
	for _, c := range r.UnknownWhen {
		if c.When.Eval(t).Truth == logic.Yes {
			p = c.Then
			break
		}
	}
	if t.IsRest() && p == result.PolicyPresume {
		return result.PolicyHold
	}
	return p
}

// uncover lowers to verify the open rules whose missing facts all come to
// light by a step that is called for anyway, unless they protect people.
func (j *Judge) uncover(e *Evaluation, zone *facts.Frame) {
	var revealed []string
	for i := range e.Rulings {
		r := &e.Rulings[i]
		if r.Rule.Calls != result.NoPath && r.Proven() {
			revealed = append(append(revealed, j.Pack.Steps[r.Rule.Calls].Reveals...), r.Rule.Reveals...)
		}
	}
	if len(revealed) == 0 {
		return
	}
	for i := range e.Rulings {
		r := &e.Rulings[i]
		if r.Waits() && r.Rule.Protects != result.ProtectsPeople && len(r.Outcome.Deps) > 0 && allRevealed(zone.Named(r.Outcome.Deps), revealed) {
			r.Policy = result.PolicyVerify
		}
	}
}

func allRevealed(missing []schema.Address, patterns []string) bool {
	for _, a := range missing {
		if !revealed(a, patterns) {
			return false
		}
	}
	return true
}

func revealed(a schema.Address, patterns []string) bool {
	for _, p := range patterns {
		if p == a.Topic+".*" || p == a.Short() {
			return true
		}
	}
	return false
}
