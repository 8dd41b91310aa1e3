package assess

import (
	"cmp"

	"underfoot/assess/figure"
	"underfoot/assess/formula"
	"underfoot/assess/message"
	"underfoot/assess/quantity"
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
	ID       string // the rule's id, or rule@subject
	Rule     string
	Subject  string // item id, `rest`, path, or empty for a zone, area or job; with the zone before it where an area has several
	Zone     string
	Outcome  FindingOutcome
	Presumed bool   // the trouble is not proven but taken as there
	Policy   Policy // what the open outcome did
	Protects Protects
	Text     string
	Why      string
	Remedy   string
	Failure  Failure
	Value    string // what was found, in words and units
	Limit    string
	Basis    []Source // what the limit rests on: its figure in this region, or the rule's sources
	Unit     string
	Decided  string // what decided it, a line for each comparison, set in by depth; empty where nobody asked for it
	Missing  []Address
	Sources  []Source
	Calls    PathID   // the step that the rule calls, or NoPath
	Permits  []PathID // the bases that it permits
	Bars     []PathID // the bases that it bars
}

// Failure is the risk that a finding stands for, in words.
type Failure struct {
	Mode                                                                   string
	LikelihoodBefore, ConsequenceBefore, LikelihoodAfter, ConsequenceAfter string
}

// A CheckOutcome is how a computed value stands to its limit.
type CheckOutcome uint8

// The outcomes of a check.
const (
	CheckHolds CheckOutcome = iota
	CheckFails
	CheckOpen    // holds for some of what is possible and fails for the rest, or an input is missing
	CheckRefused // the program does not compute this; Note says who does
)

// String is the word the contract uses.
func (o CheckOutcome) String() string {
	return [...]string{"holds", "fails", "open", "refused"}[o]
}

// A Check is one computed quantity against its limit.
type Check struct {
	ID        string // such as joist.ratio_live
	Zone      string
	Path      PathID // of a check that belongs to one base, else NoPath
	Title     message.Message
	Outcome   CheckOutcome
	Value     quantity.Range // base unit of Dimension
	Limit     quantity.Range
	Dimension quantity.Dimension
	AtLeast   bool            // the value must be at least the limit, rather than at most
	Margin    quantity.Range  // distance from the limit as a share of it; positive is on the good side
	Note      message.Message // refusal, or what to know of the value
	Work      *formula.Sheet  // the arithmetic, line by line; nil for a refusal
	Missing   []Address
	Sources   []Source
	Notes     []message.Message // more to know, a sentence each: who is expected to fall short, what settles it, where it turns
	Options   []Option          // ways to reach the limit, computed; those that reach it first
}

// An Option is one way to reach a limit, with what it leads to.
type Option struct {
	ID         string // kebab-case
	Text       message.Message
	Outcome    CheckOutcome      // of the limit, with the option carried out
	Live       quantity.Range    // span over live-load deflection
	Total      quantity.Range    // span over live- and dead-load deflection
	Height     quantity.Range    // in, added above the joists
	Weight     quantity.Range    // psf, added to the dead load
	Quantities []Quantity        // material
	Needs      []message.Message // what it stands on: bearing, footing, permit, engineer
	Work       *formula.Sheet
}

// A PathState says how a path stands.
type PathState uint8

// The states of a path.
const (
	PathOpen PathState = iota
	PathRuledOut
	PathWaiting
)

// String is the word the contract uses.
func (s PathState) String() string { return [...]string{"open", "ruled-out", "waiting"}[s] }

// A PathStanding is one path with its reasons.
type PathStanding struct {
	Path      PathID
	State     PathState
	Because   []string // finding ids
	Questions []Address
}

// A Quantity is one line of material or work of a plan step.
type Quantity struct {
	Text  message.Message
	Value quantity.Range
	Unit  message.Message
	Note  message.Message
}

// A PlanStep is one thing to do, in working order.
type PlanStep struct {
	Path         PathID
	Text         string
	Who          string    // owner, setter, licensed trade, laboratory, engineer
	Hold         string    // do not go on until ..., or empty
	Verify       []string  // what to measure or look at first
	If           string    // what must be as described for a later step, or empty
	Needs        []string  // what a base is built with, by the names of the standards
	Reasons      []string  // finding ids that call for the step
	Because      string    // what the first of them says, of the floor as it is then
	Ask          []Address // of finding out: the questions that are waited for
	Before       []Address // of a base: what to measure or look at before anything is bought
	Alternatives []PathID  // the other ways that stand open
	Repeats      bool      // the step was taken before and is called for again: a new record is needed
	Cautions     []string  // caution ids
	Quantities   []Quantity
	Look         int // number of the look that led to the step, from 1
}

// A BuildUp is what one base adds: layers, height and weight.
type BuildUp struct {
	Path   PathID
	Layers []BuiltLayer
	Height quantity.Range // in
	Weight quantity.Range // psf
}

// A BuiltLayer is one layer of a build-up, from the top.
type BuiltLayer struct {
	Name      message.Message
	Thickness quantity.Range // in
	Weight    quantity.Range // psf
	Source    Source
}

// A Span is the pair of verdicts between which the answers leave a zone.
type Span struct{ Low, High Verdict }

// Verdict is the one word of the span.
func (s Span) Verdict() Verdict {
	switch {
	case s.Low == s.High:
		return s.Low
	case s.High <= Prepare:
		return Prepare
	}
	return Hold
}

// Wider is the larger of each end.
func (s Span) Wider(t Span) Span { return Span{max(s.Low, t.Low), max(s.High, t.High)} }

// A ZoneResult is what was found for one zone.
type ZoneResult struct {
	ID       string
	Span     Span
	Verdict  Verdict
	Path     PathID // leading path
	Behind   PathID // a step already proven while find-out leads, or NoPath
	Because  string // one sentence: why this path leads
	Paths    []PathStanding
	Plan     []PlanStep
	BuildUps []BuildUp
}

// An Ask is a question worth asking, with the way to find out.
type Ask struct {
	Address Address
	Label   string // the question in a few words
	Text    string
	How     string
	Who     string
	Decides []string // path words or finding ids that the answer may settle
	Before  bool     // nothing waits for it: a look before the work
}

// A Caution is a warning that the findings or the plan attach.
type Caution struct {
	ID      string
	Text    string
	Sources []Source
}

// An AreaResult is what was found for one room.
type AreaResult struct {
	ID, Name  string
	Verdict   Verdict
	Span      Span
	Reason    string // one sentence that a homeowner understands
	Now       string // what to do at once, where the verdict is stop
	Zones     []ZoneResult
	Leading   int       // index of the zone whose path leads
	Findings  []Finding // every one, worst first
	Checks    []Check
	Questions []Ask // the deciding one first
	Cautions  []Caution
}

// A PackRef names a rule pack that took part.
type PackRef struct {
	ID      string
	Edition string
	Local   bool
	Relaxes []message.Message // what a local pack relaxes, each with its source
}

// Relaxed is what the pack relaxes in a language, English where it is nil.
func (p *PackRef) Relaxed(l *message.Language) []string {
	out := make([]string, len(p.Relaxes))
	for i, m := range p.Relaxes {
		out[i] = cmp.Or(l, message.English()).Say(m)
	}
	return out
}

// A Said is one answer as a report lists it.
type Said struct {
	Address Address
	Label   string // the question in a few words
	Value   string // the value in the reader's units, or the reply
	Answer  Answer
	Parked  bool // kept in the record but no longer relevant
	Default bool // nothing of the kind was said: the declared value
}

// A Result is the whole answer to one job.
type Result struct {
	File     string
	Job      *Job
	Region   string
	Units    quantity.System
	Language *message.Language // in which it is told
	Today    Day
	Verdict  Verdict
	Span     Span
	Areas    []AreaResult
	Said     []Said            // every answer, in catalogue order
	Labels   map[string]string // of every question, by short name, a few words each
	Packs    []PackRef
}

// Area is the result of an area by its id; nil where there is none.
func (r *Result) Area(id string) *AreaResult {
	for i := range r.Areas {
		if r.Areas[i].ID == id {
			return &r.Areas[i]
		}
	}
	return nil
}

// Zone is the result of a zone by its id; nil where there is none.
func (a *AreaResult) Zone(id string) *ZoneResult {
	for i := range a.Zones {
		if a.Zones[i].ID == id {
			return &a.Zones[i]
		}
	}
	return nil
}
