package result

import (
	"underfoot/assess/message"
	"underfoot/assess/quantity"
	"underfoot/assess/schema"
)

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
	Path       PathID
	State      PathState
	FindingIDs []string // finding ids
	Questions  []schema.Address
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
	Who          string           // owner, setter, licensed trade, laboratory, engineer
	Hold         string           // do not go on until ..., or empty
	Verify       []string         // what to measure or look at first
	If           string           // what must be as described for a later step, or empty
	Needs        []string         // what a base is built with, by the names of the standards
	FindingIDs   []string         // finding ids that call for the step
	Sentence     string           // what the first of them says, of the floor as it is then
	Pending      []schema.Address // of finding out: the questions that are waited for
	Before       []schema.Address // of a base: what to measure or look at before anything is bought
	Alternatives []PathID         // the other ways that stand open
	Repeats      bool             // the step was taken before and is called for again: a new record is needed
	Cautions     []string         // caution ids
	Quantities   []Quantity
	Round        int // number of the evaluation that led to the step, from 1
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
