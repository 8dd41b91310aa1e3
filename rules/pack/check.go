package pack

import (
	"maps"
	"regexp"
	"slices"
	"strings"

	"underfoot/assess"
	"underfoot/assess/figure"
)

// check holds each rule against what every rule must have.
func (l *loader) check(r *Rule, place string) {
	policies := []Policy{Presume, Hold, Verify, Note}
	all := append([]PolicyCase{{Then: r.Unknown}}, r.UnknownWhen...)
	for i, c := range all {
		if !slices.Contains(policies, c.Then) {
			l.problem(place, "%q is not a policy: presume, hold, verify or note", c.Then)
		}
		if c.Then == Verify && r.Protects == "people" {
			l.problem(place, "a rule that protects people may not leave an open question to verify (policy %d)", i+1)
		}
	}
	if !slices.Contains([]string{"people", "structure", "bond", "finish"}, r.Protects) {
		l.problem(place, "%q does not say whom the rule protects: people, structure, bond or finish", r.Protects)
	}
	if r.When == nil {
		l.problem(place, "the rule has no `when`")
	}
	if r.IsPermit() && r.Scope > assess.ScopeZone {
		l.problem(place, "only a rule of zone or area scope may permit a base")
	}
	if len(r.Sources) == 0 {
		l.problem(place, "the rule names no source")
	}
	for _, s := range r.Sources {
		if _, ok := figure.Cite(s); !ok {
			l.problem(place, "there is no citation %q", s)
		}
	}
	for _, c := range r.Cautions {
		if _, ok := l.pack.Cautions[c]; !ok {
			l.problem(place, "there is no caution %q", c)
		}
	}
	l.checkCases(r, place)
	l.checkText(r, place)
	l.makes(r.Makes, place)
	l.reveals(r.Reveals, place)
}

func (l *loader) checkCases(r *Rule, place string) {
	for _, want := range []string{"yes", "no", "open"} {
		if !slices.ContainsFunc(r.Cases, func(c Case) bool { return c.Expect == want }) {
			l.problem(place, "the rule has no case that expects %s", want)
		}
	}
}

// checkText finds sentences that are missing and holes that nothing fills.
func (l *loader) checkText(r *Rule, place string) {
	t := r.Text
	if t.Fails == "" || t.Open == "" || t.Why == "" || t.Title == "" {
		l.problem(place, "the rule's title, fails, open or why text is missing")
	}
	for _, sentence := range []string{t.Title, t.Fails, t.Presumed, t.Open, t.Holds, t.Why, t.Remedy, t.Mode} {
		for _, hole := range holes.FindAllStringSubmatch(sentence, -1) {
			l.shown(hole[1], r.Scope, place)
		}
	}
	for _, name := range []string{r.Value, r.Limit} {
		if name != "" {
			l.shown(name, r.Scope, place)
		}
	}
}

// holes are where a sentence takes a fact or a figure.
var holes = regexp.MustCompile(`{([^{}]*)}`)

// shown finds a fact or a figure that a rule of the scope prints.
func (l *loader) shown(name string, scope assess.Scope, place string) {
	if l.isFigure(name) {
		return
	}
	switch d := l.names.Schema.Find(name); {
	case d == nil:
		l.problem(place, "it shows %q, which is no fact and no figure", name)
	case !encloses(d.Scope, scope):
		l.problem(place, "a rule of %s scope cannot show %s, a fact of %s scope", scope, name, d.Scope)
	}
}

// isFigure reports whether the name is that of a figure, figure.ID.
func (l *loader) isFigure(name string) bool {
	id, ok := strings.CutPrefix(name, "figure.")
	return ok && l.names.Figures != nil && slices.Contains(l.names.Figures.IDs(), id)
}

// makes finds facts that a step makes true, or copies, and that are none.
func (l *loader) makes(values map[string]string, place string) {
	for _, name := range slices.Sorted(maps.Keys(values)) {
		if l.names.Schema.Find(name) == nil {
			l.problem(place, "it makes %q true, which is no fact", name)
		}
		if from, copied := strings.CutPrefix(values[name], "="); copied && l.names.Schema.Find(from) == nil && !l.isFigure(from) {
			l.problem(place, "it copies %q, which is no fact and no figure", from)
		}
	}
}

// reveals finds names of facts, or topics with a star, that are none.
func (l *loader) reveals(names []string, place string) {
	for _, name := range names {
		topic, all := strings.CutSuffix(name, ".*")
		if _, ok := assess.TopicScope(topic); all && ok || !all && l.names.Schema.Find(name) != nil {
			continue
		}
		l.problem(place, "it lays open %q, which is no fact", name)
	}
}

// ids finds rules and cautions that stand twice, and texts of rules that there
// are not. A rule of another region counts too.
func (l *loader) ids(rs records) {
	seen := map[string]bool{}
	for _, r := range rs.rules {
		if seen[r.ID] {
			l.problem(r.file+" "+r.ID, "the rule stands twice")
		}
		seen[r.ID] = true
		l.regions(&r)
	}
	for _, id := range slices.Sorted(maps.Keys(rs.texts)) {
		if !seen[id] {
			l.problem("text "+id, "there is no rule of that id")
		}
	}
	for _, c := range rs.cautions {
		if seen["caution "+c.ID] {
			l.problem("caution "+c.ID, "the caution stands twice")
		}
		seen["caution "+c.ID] = true
	}
}

// ranks finds rules that call or permit without a rank, and ties.
func (l *loader) ranks() {
	at := map[float64]string{}
	for _, r := range l.pack.Rules {
		if !r.IsPermit() && r.Calls == assess.NoPath {
			continue
		}
		if r.Rank == 0 {
			l.problem(r.File+" "+r.ID, "a rule that calls or permits needs a rank")
		} else if other, taken := at[r.Rank]; taken {
			l.problem(r.File+" "+r.ID, "the rank %g is that of %s too", r.Rank, other)
		}
		at[r.Rank] = r.ID
	}
}

// regions finds words that are no regions, and cases that would never run. It
// looks at the rules of every region, so that none is left out unseen.
func (l *loader) regions(r *ruleRecord) {
	for _, region := range r.Regions {
		if !slices.Contains(figure.Regions, region) {
			l.problem(r.file+" "+r.ID, "%q is not a region", region)
		}
	}
	for i := range r.Cases {
		switch region := r.Cases[i].region(); {
		case !slices.Contains(figure.Regions, region):
			l.problem(r.file+" "+r.ID, "%q is not a region", region)
		case len(r.Regions) > 0 && !slices.Contains(r.Regions, region):
			l.problem(r.file+" "+r.ID, "%q is a case of region %s, where the rule does not hold", r.Cases[i].Name, region)
		}
	}
}
