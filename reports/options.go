package reports

import (
	"underfoot/assess"
	"underfoot/assess/quantity"
)

// Options say for whom a view is made.
type Options struct {
	Units quantity.System
	Note  string // printed before everything else, such as that the data is invented
}

// NewView makes the view of a result.
func NewView(r *assess.Result, o Options) *View {
	return newBuilder(r, o).view()
}
