package rules

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"underfoot/assess"
	"underfoot/assess/facts"
	"underfoot/assess/logic"
	"underfoot/assess/quantity"
	"underfoot/assess/result"
	"underfoot/assess/schema"
	"underfoot/rules/judge"
	"underfoot/rules/plan"
)

// A seen is all that is decided about a job of one zone.
type seen struct {
	zone       *facts.Frame
	evaluation *judge.Evaluation
	planned    plan.Plan
}

func see(e *Engine, j *assess.Job) seen {
	j = j.Normal()
	zone := e.facts.Fill(j, today).Zones[0][0]
	evaluation := e.judge.Zone(zone, false)
	p := &plan.Planner{Judge: e.judge, Facts: e.facts, Describer: e.describer, Today: today}
	return seen{zone, evaluation, p.Zone(j, 0, 0, evaluation)}
}

// safety are the properties that no floor may break. Each gives what is wrong,
// or nothing.
var safety = map[string]func(*Engine, seen) string{
	"verdict":  hasVerdict,
	"danger":   dangerStops,
	"engineer": engineerStops,
	"barred":   barredNeverLeads,
	"ending":   planEnds,
	"suspect":  suspectIsLeftAlone,
	"topping":  toppingIsLeftAlone,
}

// TestSafety holds the properties over many floors: some drawn at random, in
// most of which something dangerous is said, and more that are mostly sound, so
// that their plans go far.
func TestSafety(t *testing.T) {
	e := openUS(t)
	ends := map[result.PathID]int{}
	trials(t, e, 20_000, func(t *testing.T, g floorplan) {
		j := g.job(one(g, 20, 60, 95, 100))
		if g.Intn(6) > 0 {
			g.calm(e, j)
		}
		s := see(e, j)
		for name, property := range safety {
			if wrong := property(e, s); wrong != "" {
				small := shrink(j, func(j *assess.Job) bool { return property(e, see(e, j)) != "" })
				t.Fatalf("%s: %s\n%s\nthe smallest such record: %s", name, wrong, outline(s), describe(e, small))
			}
		}
		ends[s.planned.Steps[len(s.planned.Steps)-1].Path]++
	})
	t.Logf("plans by their last step: %v", ends)
	for _, p := range []result.PathID{result.CallService, result.Engineer, result.FindOut, result.DirectBond, result.BackerBoard} {
		if ends[p] == 0 {
			t.Errorf("no plan ends in %s: the floors are too much alike", p)
		}
	}
}

// calm gives most hazards and defects of a job their harmless value, ends most
// lists, and makes the dangers rare.
func (g floorplan) calm(e *Engine, j *assess.Job) {
	for _, s := range slots(e, j) {
		order, hazard := worse[s.decl.ID]
		switch {
		case s.decl.ID == "layer.lab_result", g.Intn(20) == 0:
		case s.addr.Field == "complete":
			j.Put(s.addr, assess.Answer{Set: schema.SetYes, Basis: assess.Document})
		case hazard:
			j.Put(s.addr, assess.Answer{Set: harmless(s.decl, order), Basis: assess.Document})
		}
	}
}

func harmless(d *schema.Declaration, order any) schema.Set {
	switch order := order.(type) {
	case []string:
		bit, _ := d.ChoiceBit(order[0])
		return schema.Set{Mask: bit}
	case float64:
		if order > 0 {
			return schema.Set{Range: quantity.Point(d.Bounds.Lo)}
		}
	}
	return schema.Set{Range: quantity.Point(d.Bounds.Hi)}
}

// hasVerdict: no input without a verdict, and a leading path or a reason.
func hasVerdict(e *Engine, s seen) string {
	switch v := s.evaluation.Span.Verdict(); {
	case s.evaluation.Span.Low > s.evaluation.Span.High:
		return fmt.Sprint("the span is upside down: ", s.evaluation.Span)
	case !slices.Contains([]string{"ready", "prepare", "repair", "stop", "hold"}, v.String()):
		return fmt.Sprint("the verdict is no word: ", v)
	case len(s.planned.Steps) == 0:
		return "there is no plan"
	case s.evaluation.Lead == result.NoPath && len(s.planned.Steps[len(s.planned.Steps)-1].FindingIDs) == 0:
		return "nothing leads and no reason is given"
	}
	if e.sentence(s.evaluation) == "" {
		return "no sentence says why"
	}
	return ""
}

// dangerStops: a danger now leads to the service, alone, and is stop.
func dangerStops(e *Engine, s seen) string {
	for _, d := range e.Catalogue.Schema().All() {
		if !strings.HasPrefix(d.ID, "danger.") || !s.zone.HasChoice(d.ID, "yes") {
			continue
		}
		if s.evaluation.Lead != result.CallService || s.evaluation.Span.Verdict() != result.Stop || s.planned.Steps[0].Path != result.CallService || len(s.planned.Steps) > 1 {
			return d.ID + " is yes, and the service is not called before all else"
		}
	}
	return ""
}

// engineerStops: where an engineer is called for, the verdict is stop.
func engineerStops(_ *Engine, s seen) string {
	for i := range s.evaluation.Rulings {
		if r := &s.evaluation.Rulings[i]; r.Rule.Calls == result.Engineer && r.Outcome.Truth == logic.Yes && s.evaluation.Span.Low != result.Stop {
			return r.FindingID() + " calls the engineer and the span is not stop"
		}
	}
	return ""
}

// barredNeverLeads: no base leads, now or at the end of the plan, that a rule
// strikes out.
func barredNeverLeads(_ *Engine, s seen) string {
	for _, l := range []*judge.Evaluation{s.evaluation, s.planned.Evaluation} {
		for i := range l.Rulings {
			r := &l.Rulings[i]
			bars := slices.Contains(r.Rule.Bars, l.Lead) || r.Rule.BarsThis && r.Thing.ID() == l.Lead.String()
			if bars && l.Lead.IsAssembly() && r.Proven() {
				return fmt.Sprintf("%s leads, which %s strikes out", l.Lead, r.FindingID())
			}
		}
	}
	return ""
}

// planEnds: a plan ends in a base, with the engineer, the service or finding
// out, or in another finish, and where a laboratory has found asbestos with the
// qualified person; no step stands twice unless it says so.
func planEnds(_ *Engine, s seen) string {
	steps := s.planned.Steps
	taken := map[result.PathID]bool{}
	for i, step := range steps {
		if taken[step.Path] != step.Repeats {
			return fmt.Sprintf("step %d, %s, is there twice or says so wrongly", i+1, step.Path)
		}
		if (step.Repeats || step.Path.IsAssembly()) && i < len(steps)-1 {
			return fmt.Sprintf("%s is not the last step", step.Path)
		}
		taken[step.Path] = true
	}
	last := steps[len(steps)-1]
	ends := []result.PathID{result.NoPath, result.Engineer, result.CallService, result.FindOut}
	if slices.ContainsFunc(last.FindingIDs, func(id string) bool { return strings.HasPrefix(id, "asbestos-found") }) {
		ends = append(ends, result.TestOrAbate)
	}
	if !last.Path.IsAssembly() && !last.Repeats && !slices.Contains(ends, last.Path) {
		return fmt.Sprintf("the plan ends in %s", last.Path)
	}
	return ""
}

// suspects are the kinds that are presumed to hold asbestos by their year.
var suspects = []string{"sheet-vinyl", "vinyl-tile", "vinyl-composition-tile", "asphalt-tile", "linoleum", "rubber", "magnesite",
	"black-glue", "brown-glue"}

// presumedTo is the last year of a presumed layer in the United States: OSHA 29
// CFR 1926.1101(k). It and the kinds are spelt here, not taken from the rules.
const presumedTo = 1980

// suspect reports whether a layer is suspect and no laboratory has cleared it:
// yes, no, or open where it may be.
func suspect(l *facts.Frame) logic.Truth {
	kinds, year := l.Words("layer.kind"), l.Number("layer.laid")
	known := func(word string) bool { return slices.Contains(suspects, word) }
	switch {
	case l.HasChoice("layer.lab_result", "asbestos", "trace") && !l.IsRest():
		return logic.Yes
	case l.HasChoice("layer.lab_clear", "yes"), !slices.ContainsFunc(kinds, known), year.Lo > presumedTo:
		return logic.No
	case !slices.ContainsFunc(kinds, func(w string) bool { return !known(w) }) && year.Hi <= presumedTo && !l.IsRest():
		return logic.Yes
	}
	return logic.Open
}

// suspectIsLeftAlone: where a layer is suspect and no laboratory has cleared
// it, nothing comes before the test or the abatement that covers, breaks, cuts,
// sands or grinds it, or fastens into it; where it may be suspect, nothing
// before finding out either, but that what only lies there is lifted.
func suspectIsLeftAlone(_ *Engine, s seen) string {
	for _, l := range s.zone.All(schema.ScopeLayer) {
		truth := suspect(l)
		if truth == logic.No {
			continue
		}
		for _, step := range s.planned.Steps {
			if step.Path == result.TestOrAbate || truth == logic.Open && step.Path == result.FindOut {
				break
			}
			if disturbing(step.Path) && !(truth == logic.Open && lifts(s.zone, step)) {
				return fmt.Sprintf("%s comes before the test of %s, suspect: %v", step.Path, l.ID(), truth)
			}
		}
	}
	return ""
}

// lifts reports whether a step takes up nothing but floors that float or lie
// loose, which breaks nothing below them.
func lifts(zone *facts.Frame, step result.PlanStep) bool {
	loose := map[string]bool{}
	for _, l := range zone.Things(schema.ScopeLayer) {
		loose[l.ID()] = l.HasChoice("layer.held", "floating", "loose-laid")
	}
	return step.Path == result.Remove && !slices.ContainsFunc(step.FindingIDs, func(finding string) bool {
		_, layer, _ := strings.Cut(finding, "@")
		return !loose[layer]
	})
}

// disturbing reports whether a step covers a layer, breaks it or works on it.
func disturbing(p result.PathID) bool {
	return p.IsAssembly() || slices.Contains([]result.PathID{result.Remove, result.Strengthen, result.Level}, p)
}
