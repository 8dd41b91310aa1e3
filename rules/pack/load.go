package pack

import (
	"fmt"
	"io/fs"
	"slices"

	"underfoot/assess"
	"underfoot/assess/condition"
	"underfoot/assess/figure"
)

// Edition names the rules that the program ships.
const Edition = "1"

// Base is the pack that the program ships, as it is for one region. All
// problems come back at once as assess.Problems.
func Base(names condition.Names, region string) (*Pack, error) {
	return load(base, "base", names, region)
}

// load compiles the records of a folder.
func load(files fs.FS, dir string, names condition.Names, region string) (*Pack, error) {
	rs, err := readFiles(files, dir)
	if err != nil {
		return nil, err
	}
	l := loader{names: names, region: region, pack: &Pack{ID: "underfoot", Edition: Edition, Region: region,
		Steps: map[assess.PathID]*Step{}, Cautions: map[string]assess.Caution{}}}
	l.cautions(rs)
	l.steps(rs)
	for i := range rs.rules {
		l.rule(&rs.rules[i], rs.texts)
	}
	l.ids(rs)
	l.ranks()
	return l.pack, l.problems.Err()
}

// A loader compiles records and collects what is wrong with them.
type loader struct {
	names    condition.Names
	region   string
	pack     *Pack
	problems assess.Problems
}

func (l *loader) problem(place, format string, args ...any) {
	l.problems = append(l.problems, &assess.Problem{Kind: assess.Invalid, Place: place, What: fmt.Sprintf(format, args...)})
}

func (l *loader) rule(r *ruleRecord, texts map[string]Text) {
	if len(r.Regions) > 0 && !slices.Contains(r.Regions, l.region) {
		return
	}
	place := r.file + " " + r.ID
	out := &Rule{ID: r.ID, Since: r.Since, Rank: r.Rank, Unknown: Policy(r.Unknown), Protects: r.Protects, Ready: r.Ready,
		Makes: r.Makes, Reveals: r.Reveals, Cautions: r.Cautions, Sources: r.Sources, Value: r.Value, Limit: r.Limit,
		Risk: r.Risk, Text: texts[r.ID], Cases: r.Cases, File: r.file}
	var ok bool
	if out.Scope, ok = assess.ParseScope(r.Scope); !ok {
		l.problem(place, "%q is not a scope", r.Scope)
		return
	}
	out.Applies, out.When = l.compile(r.Applies, place, out.Scope), l.compile(r.When, place, out.Scope)
	for _, c := range r.UnknownWhen {
		out.UnknownWhen = append(out.UnknownWhen, PolicyCase{l.compile(c.When, place, out.Scope), Policy(c.Then)})
	}
	out.TakesUp = l.compile(r.TakesUp, place, assess.ScopeLayer)
	l.effects(r, out, place)
	l.check(out, place)
	l.pack.Rules = append(l.pack.Rules, out)
}

func (l *loader) compile(src, place string, scope assess.Scope) *condition.Condition {
	if src == "" {
		return nil
	}
	c, problems := condition.Compile(src, condition.Place{File: place}, l.names)
	l.problems = append(l.problems, problems...)
	if c == nil {
		return nil
	}
	for _, s := range c.Scopes() {
		if !encloses(s, scope) {
			l.problem(place, "a rule of %s scope cannot name a fact of %s scope; use a tally", scope, s)
		}
	}
	return c
}

// encloses reports whether a thing of scope inner sees the facts of outer.
func encloses(outer, inner assess.Scope) bool {
	return outer == inner || outer <= assess.ScopeZone && outer < inner
}

func (l *loader) effects(r *ruleRecord, out *Rule, place string) {
	if r.Calls != "" {
		out.Calls = l.path(r.Calls, place, false)
	}
	for _, word := range r.Permits {
		out.Permits = append(out.Permits, l.path(word, place, true))
	}
	for _, word := range r.Bars {
		if word == "this" {
			out.BarsThis = true
			continue
		}
		out.Bars = append(out.Bars, l.path(word, place, true))
	}
	for _, word := range r.Alternatives {
		p, ok := assess.ParsePath(word)
		if !ok {
			l.problem(place, "%q is not a path", word)
		}
		out.Alternatives = append(out.Alternatives, p)
	}
}

func (l *loader) path(word, place string, isBase bool) assess.PathID {
	p, ok := assess.ParsePath(word)
	switch {
	case !ok:
		l.problem(place, "%q is not a path", word)
	case p.IsBase() != isBase:
		l.problem(place, "%s is called for if it is a step, permitted or barred if it is a base", word)
	}
	return p
}

func (l *loader) cautions(rs records) {
	for _, c := range rs.cautions {
		text, ok := rs.warnings[c.ID]
		if !ok || text == "" {
			l.problem("caution "+c.ID, "the caution has no text")
		}
		out := assess.Caution{ID: c.ID, Text: text}
		for _, id := range c.Sources {
			cited, ok := figure.Cite(id)
			if !ok {
				l.problem("caution "+c.ID, "there is no citation %q", id)
			}
			out.Sources = append(out.Sources, cited.Source)
		}
		l.pack.Cautions[c.ID] = out
	}
}

func (l *loader) steps(rs records) {
	for _, s := range rs.steps {
		path, ok := assess.ParsePath(s.Path)
		if !ok {
			l.problem("step "+s.Path, "%q is not a path", s.Path)
		}
		text := rs.stepText[s.Path]
		if text.Text == "" {
			l.problem("step "+s.Path, "the step has no text")
		}
		l.makes(s.Makes, "step "+s.Path)
		l.reveals(s.Reveals, "step "+s.Path)
		l.pack.Steps[path] = &Step{Path: path, Ends: s.Ends, Makes: s.Makes, Reveals: s.Reveals, Cautions: s.Cautions, Text: text}
	}
	for _, p := range assess.Paths() {
		if l.pack.Steps[p] == nil {
			l.problem("step "+p.String(), "the path has no step record")
		}
	}
}
