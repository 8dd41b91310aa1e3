package structure

import (
	"underfoot/assess"
	"underfoot/assess/figure"
)

// Options are the ways to make a row of joists stiffer, each computed on the
// same inputs; those that reach the bound come first. A refused member has none.
func Options(m Member, loads Loads, b Bound, t *figure.Table) []assess.Option { return nil }

// NoHelp are the things that people hope for and that do not stiffen a joist,
// each a sentence with its reason.
func NoHelp() []string { return nil }
