// Package question holds every question that can be asked of a floor: what a
// person is asked and why, which values the answer may have, when the question
// applies, and how lists of answers are tallied into facts of their zone.
package question

import (
	"fmt"
	"io/fs"

	"underfoot/assess"
	"underfoot/assess/condition"
	"underfoot/assess/message"
	"underfoot/assess/quantity"
	"underfoot/assess/schema"
)

// A Question is one entry of the catalogue.
type Question struct {
	ID       schema.FactID
	Decl     *schema.Declaration
	Relevant *condition.Condition // nil: always
	Implied  []Implied            // what follows where nobody has answered
	Group    string
	Text     Text
}

// Implied is what an unanswered question may be where a condition holds.
type Implied struct {
	When *condition.Condition
	Then schema.Set
}

// A Catalogue is the questions and tallies, compiled for one region's figures.
type Catalogue struct {
	Questions []Question // in catalogue order; the index is the FactID
	Tallies   []Tally
	names     condition.Names
	words     synonyms
	titles    map[string]string
}

// Open reads and compiles the catalogue. The derived declarations are the facts
// that checks and the program itself give; conditions may name them. What a
// person reads is in the language. All problems come back at once as
// assess.Problems.
func Open(figures condition.Figures, derived []schema.Declaration, l *message.Language) (*Catalogue, error) {
	return open(shipped, figures, derived, l)
}

// open is Open on files of the same names.
func open(files fs.FS, figures condition.Figures, derived []schema.Declaration, l *message.Language) (*Catalogue, error) {
	records, err := readFacts(files)
	if err != nil {
		return nil, err
	}
	tallies, err := readTallies(files)
	if err != nil {
		return nil, err
	}
	words, err := readWords(files)
	if err != nil {
		return nil, err
	}
	texts, err := readTexts(files, l)
	if err != nil {
		return nil, err
	}
	c := &Catalogue{words: texts.words, titles: texts.groups}
	list := make([]schema.Declaration, 0, len(records)+len(tallies)+len(derived))
	for i := range records {
		d, err := records[i].declare()
		if err != nil {
			return nil, err
		}
		list = append(list, d)
	}
	for i := range tallies {
		d, err := tallies[i].declare(list)
		if err != nil {
			return nil, err
		}
		list = append(list, d)
	}
	for _, d := range derived {
		if like := find(list, d.Like); like != nil {
			d.Choices = append(append([]string(nil), like.Choices...), d.Choices...)
		}
		list = append(list, d)
	}
	c.names = condition.Names{Schema: schema.NewSchema(list), Figures: figures}
	return c, c.compile(records, tallies, words, texts)
}

func (c *Catalogue) compile(records []factRecord, tallies []tallyRecord, words condition.Definitions, texts texts) error {
	vocabulary, problems := c.names.Words.With(words, vocabularyFile, c.names)
	c.names.Words = vocabulary
	names := c.names
	for i := range records {
		q, ps := records[i].compile(schema.FactID(i), names)
		q.Text = texts.facts[records[i].ID]
		c.Questions = append(c.Questions, q)
		problems = append(problems, ps...)
	}
	for i := range tallies {
		t, ps := tallies[i].compile(names)
		c.Tallies = append(c.Tallies, t)
		problems = append(problems, ps...)
	}
	c.names.Words = vocabulary.Using(mentioned(records, tallies)...)
	return append(problems, texts.check(c)...).Err()
}

// mentioned are the names that the records use.
func mentioned(records []factRecord, tallies []tallyRecord) []string {
	var names []string
	for _, r := range records {
		names = append(names, condition.Mentions(r.Relevant)...)
		for _, im := range r.Implied {
			names = append(names, condition.Mentions(im.When)...)
		}
	}
	for _, r := range tallies {
		names = append(names, append(condition.Mentions(r.When), condition.Mentions(r.Where)...)...)
	}
	return names
}

// Names are what conditions may refer to: the facts, the figures of the region,
// and the sets and conditions that have names here.
func (c *Catalogue) Names() condition.Names { return c.names }

// Schema is every fact, asked, tallied and derived.
func (c *Catalogue) Schema() *schema.Schema { return c.names.Schema }

// Question is the question of a fact; nil for a fact that is not asked.
func (c *Catalogue) Question(f schema.FactID) *Question {
	if int(f) < len(c.Questions) {
		return &c.Questions[f]
	}
	return nil
}

// Find is the question of a short name; nil where there is none.
func (c *Catalogue) Find(id string) *Question {
	f, ok := c.names.Schema.Lookup(id)
	if !ok {
		return nil
	}
	return c.Question(f)
}

// GroupTitle is the heading of a group of questions.
func (c *Catalogue) GroupTitle(group string) string { return c.titles[group] }

// Groups are the groups in the order in which they are asked.
func (c *Catalogue) Groups() []string { return groups }

func (r *factRecord) declare() (schema.Declaration, error) {
	d := schema.Declaration{ID: r.ID, Default: r.Default, Family: r.Family, Choices: r.Choices, Always: r.Relevant == "", Bounds: quantity.Everything}
	var ok bool
	if d.Scope, ok = schema.ParseScope(r.Scope); !ok {
		return d, fmt.Errorf("%s: %q is not a scope", r.ID, r.Scope)
	}
	if d.Kind, ok = kinds[r.Kind]; !ok {
		return d, fmt.Errorf("%s: %q is not a kind", r.ID, r.Kind)
	}
	if d.Nature, ok = natures[r.Nature]; !ok {
		return d, fmt.Errorf("%s: %q is not a nature", r.ID, r.Nature)
	}
	if d.Kind == schema.KindYesNo {
		d.Choices = schema.YesNoChoices
	}
	if d.Kind != schema.KindQuantity {
		return d, nil
	}
	if d.Dimension, ok = quantity.ParseDimension(r.Dimension); !ok {
		return d, fmt.Errorf("%s: %q is not a dimension", r.ID, r.Dimension)
	}
	bounds, err := readBounds(d.Dimension, r.Bounds)
	if err != nil {
		return d, fmt.Errorf("%s: bounds: %w", r.ID, err)
	}
	d.Bounds = bounds
	return d, nil
}

var (
	kinds = map[string]schema.Kind{"yes-no": schema.KindYesNo, "choice": schema.KindChoice,
		"quantity": schema.KindQuantity, "text": schema.KindText}
	natures = map[string]schema.Nature{"found": schema.Found, "chosen": schema.Chosen}
)

func (r *factRecord) compile(id schema.FactID, names condition.Names) (Question, assess.Problems) {
	d := names.Schema.Decl(id)
	q := Question{ID: id, Decl: d, Group: r.group}
	place := condition.Place{File: "catalogue/" + r.group + ".toml " + r.ID}
	var problems assess.Problems
	if r.Relevant != "" {
		q.Relevant, problems = condition.Compile(r.Relevant, place, names)
	}
	for _, im := range r.Implied {
		when, ps := condition.Compile(im.When, place, names)
		problems = append(problems, ps...)
		then, err := readChoices(d, im.Then)
		if err != nil {
			problems = append(problems, &assess.Problem{Kind: assess.Invalid, Place: place.File, What: message.Verbatim(err.Error())})
		}
		q.Implied = append(q.Implied, Implied{When: when, Then: then})
	}
	return q, problems
}
