// Package workbook writes a view as an office workbook (.xlsx).
package workbook

import "underfoot/reports"

// Options say how the workbook is set.
type Options struct {
	Paper  string // letter or a4; empty is letter
	Cached bool   // write each formula's value beside it, for readers that do not compute
}

// Build makes the workbook in memory.
func Build(v *reports.View, o Options) ([]byte, error) {
	return nil, nil
}
