package pack

import (
	"io/fs"
	"maps"
	"slices"
	"strconv"

	"underfoot/assess"
	"underfoot/assess/condition"
	"underfoot/assess/figure"
	"underfoot/assess/message"
	"underfoot/assess/result"
	"underfoot/assess/schema"
)

// Edition names the rules that the program ships.
const Edition = "1"

// Shipped is the pack that the program ships, as it is for one region, with the
// texts of a language. All problems come back at once as assess.Problems.
func Shipped(names condition.Names, region string, l *message.Language) (*Pack, error) {
	return load(shipped, "shipped", names, region, l)
}

// load compiles the records of a folder.
func load(files fs.FS, dir string, names condition.Names, region string, lang *message.Language) (*Pack, error) {
	rs, err := readFiles(files, dir, lang)
	if err != nil {
		return nil, err
	}
	l := loader{names: names, region: region, pack: &Pack{ID: "underfoot", Edition: Edition, Region: region,
		Steps: map[result.PathID]*Step{}, Cautions: map[string]result.Caution{}}}
	l.vocabulary(rs)
	l.cautions(rs)
	l.steps(rs)
	for i := range rs.rules {
		r := &rs.rules[i]
		l.rule(r, rs.texts[r.ID], place{file: r.file + " " + r.ID})
	}
	l.ids(rs)
	l.ranks()
	return l.pack, l.problems.Err()
}

// vocabulary takes up the names that the rules share. One that no rule, no case
// and nothing of the catalogue uses is a fault; the rules of every region count.
func (l *loader) vocabulary(rs records) {
	words, problems := l.names.Words.With(rs.words, vocabularyFile, l.names)
	l.problems = append(l.problems, problems...)
	for i := range rs.rules {
		words = words.Using(rs.rules[i].mentions()...)
	}
	for _, id := range words.Unused() {
		l.add(place{file: vocabularyFile + " " + id}, message.New("pack/vocabulary.unused"), message.New("pack/vocabulary.unused_hint"))
	}
	l.names.Words, l.pack.Words = words, words
}

// mentions are the names that the conditions and cases of a rule use.
func (r *ruleRecord) mentions() []string {
	names := append(condition.Mentions(r.Applies), condition.Mentions(r.When)...)
	names = append(names, condition.Mentions(r.TakesUp)...)
	for _, c := range r.UnknownWhen {
		names = append(names, condition.Mentions(c.When)...)
	}
	return names
}

// A loader compiles records and collects what is wrong with them.
type loader struct {
	names    condition.Names
	region   string
	pack     *Pack
	own      map[string]figure.Citation // sources that a local pack brings with it
	problems assess.Problems
}

// maxProblems bounds what is told of one pack, so that a file which is none
// costs little.
const maxProblems = 100

// problem notes what is wrong at a place, where the next step is plain.
func (l *loader) problem(at place, what message.Message) { l.add(at, what, message.Message{}) }

func (l *loader) add(at place, what, hint message.Message) {
	if len(l.problems) < maxProblems {
		l.problems = append(l.problems, at.problem(what, hint))
	}
}

// misspelt is a problem with a word that is none of those that there are.
func (l *loader) misspelt(at place, word string, among []string, what message.Message) {
	if len(l.problems) < maxProblems {
		l.add(at, what, assess.DidYouMean(word, among))
	}
}

// quoted is a word in the quotes in which it stands in a pack.
func quoted[T ~string](word T) string { return strconv.Quote(string(word)) }

// cite finds a source: one of the pack's own, or one of the program's.
func (l *loader) cite(at place, ids []string) []figure.Citation {
	var out []figure.Citation
	for i, id := range ids {
		c, ok := l.own[id]
		if !ok {
			c, ok = figure.Cite(id)
		}
		if !ok {
			among := append(slices.Collect(maps.Keys(l.own)), figure.CitationIDs()...)
			l.misspelt(at.item(i), id, among, message.New("pack/no_such.citation", "id", quoted(id)))
			continue
		}
		out = append(out, c)
	}
	return out
}

// rule compiles one rule into the pack; nil where it has no scope, or holds in
// other regions.
func (l *loader) rule(r *ruleRecord, text Text, at place) *Rule {
	if len(r.Regions) > 0 && !slices.Contains(r.Regions, l.region) {
		return nil
	}
	out := &Rule{ID: r.ID, Since: r.Since, Rank: r.Rank, Unknown: result.Policy(r.Unknown), Protects: result.Protects(r.Protects), Ready: r.Ready, Ends: r.Ends,
		Makes: r.Makes, Reveals: r.Reveals, Cautions: r.Cautions, Sources: r.Sources, Value: r.Value, Limit: r.Limit,
		Risk: r.Risk, Text: text, Cases: r.Cases, File: r.file}
	var ok bool
	if out.Scope, ok = schema.ParseScope(r.Scope); !ok {
		l.misspelt(at.key("scope"), r.Scope, scopeWords(), message.New("pack/no_such.scope", "word", quoted(r.Scope)))
		return nil
	}
	if r.When == "" {
		l.problem(at, message.New("pack/rule.no_when"))
	}
	out.Applies, out.When = l.compile(r.Applies, at.key("applies"), out.Scope), l.compile(r.When, at.key("when"), out.Scope)
	for i, c := range r.UnknownWhen {
		when := l.compile(c.When, at.key("unknown_when").item(i).key("when"), out.Scope)
		out.UnknownWhen = append(out.UnknownWhen, PolicyCase{when, result.Policy(c.Then)})
	}
	out.TakesUp = l.compile(r.TakesUp, at.key("takes_up"), schema.ScopeLayer)
	l.effects(r, out, at)
	out.Cited = l.cite(at.key("sources"), r.Sources)
	l.check(out, at)
	l.pack.Rules = append(l.pack.Rules, out)
	return out
}

func scopeWords() []string {
	var words []string
	for s := schema.ScopeJob; s <= schema.ScopePath; s++ {
		words = append(words, s.String())
	}
	return words
}

func (l *loader) compile(src string, at place, scope schema.Scope) *condition.Condition {
	if src == "" {
		return nil
	}
	c, problems := condition.Compile(src, at.text(), l.names)
	l.problems = append(l.problems, problems...)
	if c == nil {
		return nil
	}
	for _, s := range c.Scopes() {
		if !encloses(s, scope) {
			l.problem(at, message.New("pack/rule.names_outside", "scope", scope, "of", s))
		}
	}
	return c
}

// encloses reports whether a thing of scope inner sees the facts of outer.
func encloses(outer, inner schema.Scope) bool {
	return outer == inner || outer <= schema.ScopeZone && outer < inner
}

func (l *loader) effects(r *ruleRecord, out *Rule, at place) {
	if r.Calls != "" {
		out.Calls = l.path(r.Calls, at.key("calls"), false)
	}
	for i, word := range r.Permits {
		out.Permits = append(out.Permits, l.path(word, at.key("permits").item(i), true))
	}
	for i, word := range r.Bars {
		if word == "this" {
			out.BarsThis = true
			continue
		}
		out.Bars = append(out.Bars, l.path(word, at.key("bars").item(i), true))
	}
	out.Alternatives = l.paths(r.Alternatives, at.key("alternatives"))
	out.AtSteps = l.paths(r.AtSteps, at.key("at_steps"))
}

// paths reads a list in which steps and bases may stand.
func (l *loader) paths(words []string, at place) []result.PathID {
	var out []result.PathID
	for i, word := range words {
		p, ok := result.ParsePath(word)
		if !ok {
			l.misspelt(at.item(i), word, pathWords(), message.New("pack/no_such.path", "word", quoted(word)))
		}
		out = append(out, p)
	}
	return out
}

func (l *loader) path(word string, at place, isBase bool) result.PathID {
	p, ok := result.ParsePath(word)
	switch {
	case !ok:
		l.misspelt(at, word, pathWords(), message.New("pack/no_such.path", "word", quoted(word)))
	case p.IsAssembly() != isBase:
		l.problem(at, message.New("pack/rule.step_or_base", "path", word))
	}
	return p
}

func pathWords() []string {
	var words []string
	for _, p := range result.Paths() {
		words = append(words, p.String())
	}
	return words
}

func (l *loader) cautions(rs records) {
	for _, c := range rs.cautions {
		at := place{file: "caution " + c.ID}
		text := rs.warnings[c.ID].Text
		if text == "" {
			l.problem(at, message.New("pack/caution.no_text"))
		}
		l.caution(c, text, at)
	}
}

// caution puts one caution into the pack.
func (l *loader) caution(c cautionRecord, text string, at place) {
	out := result.Caution{ID: c.ID, Text: text}
	for _, cited := range l.cite(at.key("sources"), c.Sources) {
		out.Sources = append(out.Sources, cited.Source)
	}
	l.pack.Cautions[c.ID] = out
}

func (l *loader) steps(rs records) {
	for _, s := range rs.steps {
		at := place{file: "step " + s.Path}
		path, ok := result.ParsePath(s.Path)
		if !ok {
			l.problem(at, message.New("pack/no_such.path", "word", quoted(s.Path)))
		}
		text := rs.stepText[s.Path]
		if text.Text == "" {
			l.problem(at, message.New("pack/step.no_text"))
		}
		l.makes(s.Makes, at)
		l.reveals(s.Reveals, at)
		l.pack.Steps[path] = &Step{Path: path, Ends: s.Ends, Makes: s.Makes, Reveals: s.Reveals, Cautions: s.Cautions, Text: text}
	}
	for _, p := range result.Paths() {
		if l.pack.Steps[p] == nil {
			l.problem(place{file: "step " + p.String()}, message.New("pack/step.missing"))
		}
	}
}
