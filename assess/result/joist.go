package result

import (
	"underfoot/assess/formula"
	"underfoot/assess/message"
	"underfoot/assess/quantity"
)

// A JoistSheet is what the sums say of one joist, for a reader: what was put
// in, what came out, how far from the limit, and what would cure it.
type JoistSheet struct {
	Language   *message.Language // in which it is told
	Inputs     []AnswerRow       // in the order in which they were given
	Outcome    CheckOutcome
	Refusal    message.Message // why there is no number and who has it
	Deflection quantity.Range  // in, under live load
	LongTerm   quantity.Range  // in, live load and dead load with creep
	Live       quantity.Range  // span over live-load deflection
	Total      quantity.Range  // span over live- and dead-load deflection
	Limit      float64         // N of L/N
	Least      quantity.Range  // what the limit asks for on this span
	LimitLoad  string          // live or total
	Margin     quantity.Range
	Span       quantity.Range // in, clear
	Longest    struct{ Deflection, Bending, Governing quantity.Range }
	Share      quantity.Range // of joists expected to be softer than the limit needs
	Bending    quantity.Range // of the tabulated strength
	Shear      quantity.Range
	Deciding   message.Message // the fact that settles an open result, and where it turns
	Options    []Option
	NoHelp     []message.Message
	LoadTest   []message.Message // how to make one, step by step, with its cautions
	Assumed    []message.Message
	Notes      []message.Message
	Sources    []Source
	Sheets     []*formula.Sheet
}
