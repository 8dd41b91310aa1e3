// Package pack holds the rules as records: what each looks at, what it does
// while it is not settled, what it bars, permits or calls for, and every
// sentence that goes with it.
package pack

import (
	"iter"

	"underfoot/assess/condition"
	"underfoot/assess/figure"
	"underfoot/assess/result"
	"underfoot/assess/schema"
)

// A Rule is one record, compiled.
type Rule struct {
	ID, Since    string
	Scope        schema.Scope
	Rank         float64 // order among rules that call or permit; 0 for the others
	Applies      *condition.Condition
	When         *condition.Condition
	Unknown      result.Policy
	UnknownWhen  []PolicyCase
	Protects     result.Protects
	Bars         []result.PathID
	BarsThis     bool // of path scope: bars the path that it looks at
	Permits      []result.PathID
	Calls        result.PathID
	Ready        bool                 // of a permit: its direct bond leaves nothing to prepare
	Ends         bool                 // of a call: somebody else's word starts a new record
	Alternatives []result.PathID      // of a permit: other ways that many would go
	TakesUp      *condition.Condition // of a zone's remove call: the layers that come up
	Makes        map[string]string    // what its step makes true beside what the step's record says
	Reveals      []string             // what its step lays open beside what the step's record says
	Cautions     []string
	AtSteps      []result.PathID // steps at which its cautions stand though it does not call for them
	Sources      []string
	Cited        []figure.Citation // what the sources are
	Value        string            // the fact whose value the finding shows
	Limit        string            // the figure or fact that it is compared with
	Risk         Risk
	Text         Text
	Cases        []Case
	File         string
	Local        bool // of a pack that the program does not ship
}

// A PolicyCase picks a policy where its condition is a proven yes.
type PolicyCase struct {
	When *condition.Condition
	Then result.Policy
}

// Risk is likelihood and consequence before and after the remedy, in words.
type Risk struct {
	Likelihood       string `toml:"likelihood"`
	Consequence      string `toml:"consequence"`
	LikelihoodAfter  string `toml:"likelihood_after"`
	ConsequenceAfter string `toml:"consequence_after"`
}

// A Text is every sentence of a rule. Fails, Presumed, Open and Holds are the
// finding's text for each outcome.
type Text struct {
	Title    string `toml:"title"`
	Fails    string `toml:"fails"`
	Presumed string `toml:"presumed"`
	Open     string `toml:"open"`
	Holds    string `toml:"holds"`
	Why      string `toml:"why"`
	Remedy   string `toml:"remedy"`
	Mode     string `toml:"mode"`
}

// all are the sentences by key, in the order in which they are told.
func (t *Text) all() iter.Seq2[string, string] {
	return func(yield func(key, sentence string) bool) {
		for _, s := range [...][2]string{{"title", t.Title}, {"fails", t.Fails}, {"presumed", t.Presumed}, {"open", t.Open},
			{"holds", t.Holds}, {"why", t.Why}, {"remedy", t.Remedy}, {"mode", t.Mode}} {
			if !yield(s[0], s[1]) {
				return
			}
		}
	}
}

// A Case is one test of a rule, held beside it: facts by short name, and what
// `applies` and `when` together give.
type Case struct {
	Name   string         `toml:"name"`
	Facts  map[string]any `toml:"facts"`
	Region string         `toml:"region"`
	Expect string         `toml:"expect"`
}

// A Step says what a path makes true once it is done and what it lays open.
type Step struct {
	Path     result.PathID
	Ends     bool // somebody else's word starts a new record
	Makes    map[string]string
	Reveals  []string
	Cautions []string
	Text     StepText
}

// A StepText is every sentence of a step or base.
type StepText struct {
	Label     string   `toml:"label"`
	Text      string   `toml:"text"`
	Who       string   `toml:"who"`
	Hold      string   `toml:"hold"`
	Verify    []string `toml:"verify"`
	For       string   `toml:"for"`
	Against   string   `toml:"against"`
	Uncovered string   `toml:"uncovered"`
	Needs     []string `toml:"needs"`
}

// A Pack is a set of rules with the steps and cautions that they name.
type Pack struct {
	ID, Edition string
	Region      string // the region that it was opened for
	Rules       []*Rule
	Steps       map[result.PathID]*Step
	Cautions    map[string]result.Caution
	Locals      []result.PackRef      // the packs that were added, by id
	Words       *condition.Vocabulary // the names that conditions and cases may use
}

// Rule finds a rule by its id; nil where there is none.
func (p *Pack) Rule(id string) *Rule {
	for _, r := range p.Rules {
		if r.ID == id {
			return r
		}
	}
	return nil
}

// IsPermit reports whether a yes of the rule is good news: it permits a base.
func (r *Rule) IsPermit() bool { return len(r.Permits) > 0 }

// IsTrouble reports whether the rule states a trouble: it calls or bars.
func (r *Rule) IsTrouble() bool { return r.Calls != result.NoPath || len(r.Bars) > 0 || r.BarsThis }
