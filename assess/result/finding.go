package result

import (
	"underfoot/assess/figure"
	"underfoot/assess/schema"
)

// A FindingOutcome is what a rule says. The five are never merged.
type FindingOutcome uint8

// The outcomes of a finding, worst first.
const (
	Fails FindingOutcome = iota
	NotSettled
	NotComputed
	Holds
	NotApplicable
)

// String is the word the contract uses.
func (o FindingOutcome) String() string {
	return [...]string{"fails", "not-settled", "not-computed", "holds", "not-applicable"}[o]
}

// A Source is where a statement or a figure was read, and how it is known.
type Source = figure.Source

// A Finding is what one rule says of one thing.
type Finding struct {
	ID          string // the rule's id, or rule@subject
	Rule        string
	Subject     string // item id, `rest`, path, or empty for a zone, area or job; with the zone before it where an area has several
	Zone        string
	Outcome     FindingOutcome
	Presumed    bool   // the trouble is not proven but taken as there
	Policy      Policy // what the open outcome did
	Protects    Protects
	Text        string
	Why         string
	Remedy      string
	Failure     Failure
	Value       string // what was found, in words and units
	Limit       string
	Basis       []Source // what the limit rests on: its figure in this region, or the rule's sources
	Unit        string
	Explanation string // what decided it, a line for each comparison, set in by depth; empty where nobody asked for it
	Missing     []schema.Address
	Sources     []Source
	Calls       PathID   // the step that the rule calls, or NoPath
	Permits     []PathID // the bases that it permits
	Bars        []PathID // the bases that it bars
}

// Failure is the risk that a finding stands for, in words.
type Failure struct {
	Mode                                                                   string
	LikelihoodBefore, ConsequenceBefore, LikelihoodAfter, ConsequenceAfter string
}
