package result

import (
	"underfoot/assess/formula"
	"underfoot/assess/message"
	"underfoot/assess/quantity"
	"underfoot/assess/schema"
)

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
	Missing   []schema.Address
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
