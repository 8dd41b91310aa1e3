package result

import (
	"underfoot/assess"
	"underfoot/assess/schema"
)

// A Change says how a finding of a later visit stands to the same one of an
// earlier visit.
type Change uint8

// The changes, those that ask most of the reader first. Cured: the rule now
// says that the trouble is not there. Gone: what the finding was about is no
// longer in the record, or the rule no longer applies to it.
const (
	Worse Change = iota
	New
	Unchanged
	Better
	Cured
	Gone
)

// String is the word the contract uses.
func (c Change) String() string {
	return [...]string{"worse", "new", "unchanged", "better", "cured", "gone"}[c]
}

// Compared says how weighty a finding is when two visits are compared, from 0
// for none: noted or not computed, asks for a look before the work, holds the
// verdict back, taken as trouble, proven trouble. Nil is no finding.
func (f *Finding) Compared() int {
	switch {
	case f == nil || f.Outcome == Holds || f.Outcome == NotApplicable:
		return 0
	case f.Outcome == Fails && !f.Presumed:
		return 5
	case f.Outcome == Fails:
		return 4
	case f.Policy == PolicyHold:
		return 3
	case f.Policy == PolicyVerify:
		return 2
	}
	return 1
}

// ChangeOf compares a finding of two visits, either of which may be nil. The
// change means nothing where both weigh nothing.
func ChangeOf(old, now *Finding) Change {
	was, is := old.Compared(), now.Compared()
	switch {
	case was == 0:
		return New
	case now == nil || now.Outcome == NotApplicable:
		return Gone
	case is == 0:
		return Cured
	case is > was:
		return Worse
	case is < was:
		return Better
	}
	return Unchanged
}

// A Comparison is two visits to one house, judged by the same rules.
type Comparison struct {
	Old, New *Result
	Areas    []AreaComparison
	Added    []string // ids of areas that only the later record has
	Missing  []string // ids of areas that only the earlier record has
	Answers  []AnswerChange
}

// An AreaComparison is one room at two visits.
type AreaComparison struct {
	ID, Name string
	Old, New *AreaResult
	Zones    []ZoneComparison
	Findings []FindingChange // those that ask most first; what weighed nothing at both visits is left out
	Accept   []Acceptance    // for each finding of the earlier visit, and each new one
}

// A ZoneComparison is one zone at two visits; Old or New is nil where the
// record of that visit has no such zone.
type ZoneComparison struct {
	ID       string
	Old, New *ZoneResult
}

// A FindingChange is one finding at two visits; Old or New is nil where that
// visit has none.
type FindingChange struct {
	Change   Change
	Zone     string // empty for a finding about the whole room or house
	Old, New *Finding
}

// Latest is the finding of the later visit, or else that of the earlier one.
func (c *FindingChange) Latest() *Finding {
	if c.New != nil {
		return c.New
	}
	return c.Old
}

// An Acceptance says what must be seen or measured before a finding is taken as
// settled.
type Acceptance struct {
	FindingChange
	Inspections []Inspection // what decides it, or what is missing
}

// An Inspection is one thing to see or measure.
type Inspection struct {
	Address schema.Address
	Label   string       // the question in a few words
	How     string       // the way to find out, or empty
	Value   string       // what the later record says, or empty
	Basis   assess.Basis // how the later record knows it
	Missing bool         // the finding is open on it
}

// Firm reports whether the later record says that somebody measured it, saw it
// or has it on paper.
func (l *Inspection) Firm() bool {
	return l.Basis == assess.Measured || l.Basis == assess.Seen || l.Basis == assess.Document
}

// An AnswerChange is an answer that the two records give differently; Old or
// New is nil where one does not give it.
type AnswerChange struct {
	Address  schema.Address
	Label    string
	Old, New *AnswerRow
}
