package judge

import (
	"cmp"
	"slices"
	"strings"

	"underfoot/assess/figure"
	"underfoot/assess/logic"
	"underfoot/assess/message"
	"underfoot/assess/quantity"
	"underfoot/assess/question"
	"underfoot/assess/result"
	"underfoot/assess/schema"
)

// A Describer turns rulings into findings in the reader's units.
type Describer struct {
	Catalogue *question.Catalogue
	Figures   *figure.Table
	System    quantity.System
	Language  *message.Language
}

// Findings are what the rules say, in rank order. Several marks a room of more
// than one zone: subjects then carry the zone's id.
func (d *Describer) Findings(e *Evaluation, zone string, several bool) []result.Finding {
	out := make([]result.Finding, 0, len(e.Rulings))
	for i := range e.Rulings {
		if !e.concerns(&e.Rulings[i]) {
			continue
		}
		out = append(out, d.Finding(&e.Rulings[i], zone, several))
	}
	return out
}

// Finding is what one ruling says.
func (d *Describer) Finding(r *Ruling, zone string, several bool) result.Finding {
	f := d.finding(r)
	f.Zone = zone
	f.Subject = r.subjectIn(zone, several)
	f.ID = r.FindingIDIn(zone, several)
	return f
}

// concerns reports whether a ruling is worth telling: one that only speaks of
// bases that no rule permits is not.
func (e *Evaluation) concerns(r *Ruling) bool {
	if r.Rule.Scope == schema.ScopePath {
		base, _ := result.ParsePath(r.Thing.ID())
		return e.Possible(base)
	}
	onlyBars := len(r.Rule.Bars) > 0 && r.Rule.Calls == result.NoPath && !r.Rule.IsPermit()
	return !onlyBars || slices.ContainsFunc(r.Rule.Bars, e.Possible)
}

// SortFindings puts the worst first: what fails, then what is not settled;
// within each what asks for more, and what protects people.
func SortFindings(list []result.Finding) {
	type key struct{ outcome, weight, protects, place int }
	keys := make([]key, len(list))
	for i := range list {
		f := &list[i]
		keys[i] = key{int(f.Outcome), -weight(f), protects(f), i}
	}
	slices.SortFunc(keys, func(a, b key) int {
		return cmp.Or(cmp.Compare(a.outcome, b.outcome), cmp.Compare(a.weight, b.weight), cmp.Compare(a.protects, b.protects), cmp.Compare(a.place, b.place))
	})
	unsorted := slices.Clone(list)
	for i, k := range keys {
		list[i] = unsorted[k.place]
	}
}

// weight is how much a finding asks of the reader.
func weight(f *result.Finding) int {
	w := 0
	if f.Calls != result.NoPath {
		w = 10 + int(f.Calls.MinVerdict())
	}
	switch f.Policy {
	case result.PolicyPresume, result.PolicyHold:
		w += 100
	case result.PolicyVerify:
		w += 50
	}
	return w
}

func protects(f *result.Finding) int {
	return slices.Index(result.Protected(), f.Protects)
}

func (d *Describer) finding(r *Ruling) result.Finding {
	rule := r.Rule
	f := result.Finding{
		Rule: rule.ID, Protects: rule.Protects,
		Outcome: r.outcome(), Presumed: r.Presumed(), Policy: r.Policy,
		Why: d.fill(rule.Text.Why, r), Remedy: d.fill(rule.Text.Remedy, r),
		Failure: result.Failure{Mode: rule.Text.Mode, LikelihoodBefore: rule.Risk.Likelihood, ConsequenceBefore: rule.Risk.Consequence,
			LikelihoodAfter: rule.Risk.LikelihoodAfter, ConsequenceAfter: rule.Risk.ConsequenceAfter},
		Missing: r.Thing.Named(r.Outcome.Deps), Calls: rule.Calls, Permits: rule.Permits, Bars: r.bars(),
	}
	f.Text = d.Text(r)
	f.Value, _ = d.value(rule.Value, r)
	f.Limit, f.Unit = d.value(rule.Limit, r)
	for _, cited := range rule.Cited {
		f.Sources = append(f.Sources, cited.Source)
	}
	f.Basis = d.basis(rule.Limit, f.Sources)
	return f
}

// bars are the bases that the ruling's rule bars: those that it names, or the one
// that it looks at.
func (r *Ruling) bars() []result.PathID {
	if base, ok := result.ParsePath(r.Thing.ID()); ok && r.Rule.BarsThis {
		return []result.PathID{base}
	}
	return r.Rule.Bars
}

// basis is the source of a limit: of the figure that it is, else of the rule
// whose check works it out.
func (d *Describer) basis(limit string, sources []result.Source) []result.Source {
	if id, ok := strings.CutPrefix(limit, "figure."); ok {
		if f, ok := d.Figures.Figure(id); ok {
			return []result.Source{f.Source}
		}
	}
	return sources
}

// Text is the sentence that the rule says of its outcome.
func (d *Describer) Text(r *Ruling) string { return d.fill(r.text(), r) }

// outcome turns a ruling into what a finding says, by the rule's polarity.
func (r *Ruling) outcome() result.FindingOutcome {
	switch {
	case !r.Applies:
		return result.NotApplicable
	case len(r.Lacks) > 0:
		return result.NotComputed
	case r.Presumed():
		return result.Fails
	case r.Outcome.Truth == logic.Open:
		return result.NotSettled
	case r.Rule.IsTrouble() && !r.Rule.IsPermit():
		if r.Outcome.Truth == logic.Yes {
			return result.Fails
		}
		return result.Holds
	case r.Outcome.Truth == logic.Yes:
		return result.Holds
	}
	return result.NotApplicable
}

func (r *Ruling) text() string {
	text := r.Rule.Text
	switch {
	case r.Presumed() && text.Presumed != "":
		return text.Presumed
	case r.Outcome.Truth == logic.Open && !r.Presumed():
		return text.Open
	case r.Outcome.Truth == logic.No:
		return text.Holds
	}
	return text.Fails
}

// Show is a fact in words and units; what nothing is known of says so.
func (d *Describer) Show(id schema.FactID, f schema.Fact) (text, unit string) {
	decl := d.Catalogue.Schema().Decl(id)
	unit = decl.Kind.Unit(decl.Dimension)
	switch {
	case f.Presence.Truth == logic.No:
		return d.Language.Text("judge/value.does_not_apply"), unit
	case f.Set == decl.Full():
		return d.Language.Text("judge/value.not_known"), unit
	}
	return d.Catalogue.Show(id, f.Set, d.System), unit
}
