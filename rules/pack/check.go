package pack

import (
	"maps"
	"regexp"
	"slices"
	"strings"

	"underfoot/assess/figure"
	"underfoot/assess/message"
	"underfoot/assess/result"
	"underfoot/assess/schema"
)

// check holds each rule against what every rule must have.
func (l *loader) check(r *Rule, at place) {
	l.policy(r.Unknown, r, at.key("unknown"))
	for i, c := range r.UnknownWhen {
		l.policy(c.Then, r, at.key("unknown_when").item(i).key("then"))
	}
	if !slices.Contains(result.Protected(), r.Protects) {
		l.misspelt(at.key("protects"), string(r.Protects), words(result.Protected()), message.New("pack/rule.protects", "word", quoted(string(r.Protects))))
	}
	if r.IsPermit() && r.Scope > schema.ScopeZone {
		l.problem(at.key("permits"), message.New("pack/rule.permits_wide"))
	}
	if len(r.Sources) == 0 {
		l.problem(at, message.New("pack/rule.no_source"))
	}
	l.warnings(r.Cautions, at.key("cautions"))
	if len(r.AtSteps) > 0 && len(r.Cautions) == 0 {
		l.problem(at.key("at_steps"), message.New("pack/rule.no_caution"))
	}
	l.checkCases(r, at)
	l.checkText(r, at)
	l.makes(r.Makes, at.key("makes"))
	l.reveals(r.Reveals, at.key("reveals"))
}

// policy finds words that say nothing about an open outcome, and those that
// say too little for a rule that protects people.
func (l *loader) policy(p result.Policy, r *Rule, at place) {
	if !slices.Contains(result.Policies(), p) {
		l.misspelt(at, string(p), words(result.Policies()), message.New("pack/no_such.policy", "word", quoted(p)))
	}
	if p == result.PolicyVerify && r.Protects == result.ProtectsPeople {
		l.problem(at, message.New("pack/rule.people_verify"))
	}
}

// words are words of a kind of their own as plain ones.
func words[T ~string](list []T) []string {
	out := make([]string, len(list))
	for i, w := range list {
		out[i] = string(w)
	}
	return out
}

// warnings finds cautions that there are not.
func (l *loader) warnings(ids []string, at place) {
	for i, id := range ids {
		if _, ok := l.pack.Cautions[id]; !ok {
			l.misspelt(at.item(i), id, slices.Collect(maps.Keys(l.pack.Cautions)), message.New("pack/no_such.caution", "id", quoted(id)))
		}
	}
}

// expectations are what a case may expect.
var expectations = []string{"yes", "no", "open"}

func (l *loader) checkCases(r *Rule, at place) {
	for _, want := range expectations {
		if !slices.ContainsFunc(r.Cases, func(c Case) bool { return c.Expect == want }) {
			l.problem(at, message.New("pack/rule.no_case", "truth", want))
		}
	}
	for i, c := range r.Cases {
		at := at.key("case").item(i)
		if !slices.Contains(expectations, c.Expect) {
			l.misspelt(at.key("expect"), c.Expect, expectations, message.New("pack/no_such.expectation", "word", quoted(c.Expect)))
		}
		for _, name := range slices.Sorted(maps.Keys(c.Facts)) {
			if l.names.Schema.Find(name) == nil {
				l.misspelt(at.key("facts").name(name), name, l.factNames(), message.New("pack/no_such.fact", "name", name))
			}
		}
	}
}

func (l *loader) factNames() []string {
	all := l.names.Schema.All()
	names := make([]string, len(all))
	for i := range all {
		names[i] = all[i].ID
	}
	return names
}

// checkText finds sentences that are missing and holes that nothing fills.
func (l *loader) checkText(r *Rule, at place) {
	t := r.Text
	if t.Fails == "" || t.Open == "" || t.Why == "" || t.Title == "" {
		l.problem(at, message.New("pack/rule.no_text"))
	}
	for key, sentence := range t.all() {
		for _, hole := range holes.FindAllStringSubmatch(sentence, -1) {
			l.shown(hole[1], r.Scope, at.key(key))
		}
	}
	if r.Value != "" {
		l.shown(r.Value, r.Scope, at.key("value"))
	}
	if r.Limit != "" {
		l.shown(r.Limit, r.Scope, at.key("limit"))
	}
}

// holes are where a sentence takes a fact or a figure.
var holes = regexp.MustCompile(`{([^{}]*)}`)

// shown finds a fact or a figure that a rule of the scope prints.
func (l *loader) shown(name string, scope schema.Scope, at place) {
	if l.isFigure(name) {
		return
	}
	switch d := l.names.Schema.Find(name); {
	case d == nil:
		l.misspelt(at, name, l.factNames(), message.New("pack/rule.shows_nothing", "name", quoted(name)))
	case !encloses(d.Scope, scope):
		l.problem(at, message.New("pack/rule.shows_outside", "scope", scope, "name", name, "of", d.Scope))
	}
}

// isFigure reports whether the name is that of a figure, figure.ID.
func (l *loader) isFigure(name string) bool {
	id, ok := strings.CutPrefix(name, "figure.")
	if !ok || l.names.Figures == nil {
		return false
	}
	_, here := l.names.Figures.Figure(id)
	return here || slices.Contains(l.names.Figures.IDs(), id)
}

// makes finds facts that a step makes true, or copies, and that are none.
func (l *loader) makes(values map[string]string, at place) {
	for _, name := range slices.Sorted(maps.Keys(values)) {
		if l.names.Schema.Find(name) == nil {
			l.problem(at, message.New("pack/rule.makes_nothing", "name", quoted(name)))
		}
		if from, copied := strings.CutPrefix(values[name], "="); copied && l.names.Schema.Find(from) == nil && !l.isFigure(from) {
			l.problem(at, message.New("pack/rule.copies_nothing", "name", quoted(from)))
		}
	}
}

// reveals finds names of facts, or topics with a star, that are none.
func (l *loader) reveals(names []string, at place) {
	for _, name := range names {
		topic, all := strings.CutSuffix(name, ".*")
		if _, ok := schema.TopicScope(topic); all && ok || !all && l.names.Schema.Find(name) != nil {
			continue
		}
		l.problem(at, message.New("pack/rule.reveals_nothing", "name", quoted(name)))
	}
}

// ids finds rules and cautions that stand twice, and texts of rules that there
// are not. A rule of another region counts too.
func (l *loader) ids(rs records) {
	seen := map[string]bool{}
	for _, r := range rs.rules {
		if seen[r.ID] {
			l.problem(place{file: r.file + " " + r.ID}, message.New("pack/twice.rule"))
		}
		seen[r.ID] = true
		l.regions(&r)
	}
	for _, id := range slices.Sorted(maps.Keys(rs.texts)) {
		if !seen[id] {
			l.problem(place{file: "text " + id}, message.New("pack/no_such.rule_of_text"))
		}
	}
	for _, id := range slices.Sorted(maps.Keys(rs.cases)) {
		if !seen[id] {
			l.misspelt(place{file: "cases " + id}, id, slices.Collect(maps.Keys(seen)), message.New("pack/no_such.rule_of_text"))
		}
	}
	stray(l, "caution", rs.warnings, func(id string) bool { return l.pack.Cautions[id].ID != "" })
	stray(l, "step", rs.stepText, func(id string) bool {
		p, ok := result.ParsePath(id)
		return ok && l.pack.Steps[p] != nil
	})
	for _, c := range rs.cautions {
		if seen["caution "+c.ID] {
			l.problem(place{file: "caution " + c.ID}, message.New("pack/twice.caution"))
		}
		seen["caution "+c.ID] = true
	}
}

// stray finds texts of cautions or steps that there are not.
func stray[T any](l *loader, kind string, texts map[string]T, known func(id string) bool) {
	for _, id := range slices.Sorted(maps.Keys(texts)) {
		if !known(id) {
			l.problem(place{file: kind + " text " + id}, message.New("pack/no_such.record_of_text"))
		}
	}
}

// ranks finds rules that call or permit without a rank, and ties.
func (l *loader) ranks() {
	at := map[float64]string{}
	for _, r := range l.pack.Rules {
		if !r.IsPermit() && r.Calls == result.NoPath {
			continue
		}
		if r.Rank == 0 {
			l.problem(place{file: r.File + " " + r.ID}, message.New("pack/rank.missing"))
		} else if other, taken := at[r.Rank]; taken {
			l.problem(place{file: r.File + " " + r.ID}, message.New("pack/rank.taken", "rank", r.Rank, "other", other))
		}
		at[r.Rank] = r.ID
	}
}

// regions finds words that are no regions, and cases that would never run. It
// looks at the rules of every region, so that none is left out unseen.
func (l *loader) regions(r *ruleRecord) {
	for _, region := range r.Regions {
		if !slices.Contains(figure.Regions, region) {
			l.problem(place{file: r.file + " " + r.ID}, message.New("pack/no_such.region", "word", quoted(region)))
		}
	}
	for i := range r.Cases {
		switch region := r.Cases[i].region(); {
		case !slices.Contains(figure.Regions, region):
			l.problem(place{file: r.file + " " + r.ID}, message.New("pack/no_such.region", "word", quoted(region)))
		case len(r.Regions) > 0 && !slices.Contains(r.Regions, region):
			l.problem(place{file: r.file + " " + r.ID}, message.New("pack/case.elsewhere", "name", quoted(r.Cases[i].Name), "region", region))
		}
	}
}
