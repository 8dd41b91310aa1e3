// Package workbook writes a view as an office workbook (.xlsx): a sheet for
// each section, with the calculations and the sums of the heights as formulas.
package workbook

import (
	"fmt"

	"github.com/xuri/excelize/v2"

	"underfoot/reports"
)

// Options say how the workbook is set.
type Options struct {
	Paper  string // letter or a4; empty is letter
	Cached bool   // write each formula's value beside it, for readers that do not compute
}

// papers are the numbers that the format uses for paper sizes (ECMA-376 part 1,
// section 18.3.1.63).
var papers = map[string]int{"": 1, "letter": 1, "a4": 9}

// Build makes the workbook in memory; the same view and options give the same
// bytes. The error names an unknown paper.
func Build(v *reports.View, o Options) ([]byte, error) {
	paper, ok := papers[o.Paper]
	if !ok {
		return nil, fmt.Errorf("paper %q is neither letter nor a4", o.Paper)
	}
	b := &book{
		file: excelize.NewFile(), view: v, paper: paper,
		styles: map[cellStyle]int{}, formulas: map[string]map[string]any{},
	}
	defer b.file.Close()
	if err := b.fill(); err != nil {
		return nil, fmt.Errorf("build workbook: %w", err)
	}
	pack := &archive{core: coreProperties(v), day: string(v.Day), formulas: b.formulas, cached: o.Cached}
	b.file.SetZipWriter(pack.open)
	buf, err := b.file.WriteToBuffer()
	if err != nil {
		return nil, fmt.Errorf("write workbook: %w", err)
	}
	return buf.Bytes(), nil
}

// A book is a workbook being filled. The first error stays and stops the rest.
type book struct {
	file     *excelize.File
	view     *reports.View
	paper    int
	styles   map[cellStyle]int
	formulas map[string]map[string]any // by part and cell: what each formula gives
	err      error
}

func (b *book) fill() error {
	for i := range b.view.Sections {
		b.section(i)
	}
	full := true
	b.try(b.file.SetCalcProps(&excelize.CalcPropsOptions{FullCalcOnLoad: &full}))
	b.try(b.file.SetAppProps(&excelize.AppProperties{Application: "underfoot"}))
	return b.err
}

func (b *book) try(err error) {
	if b.err == nil {
		b.err = err
	}
}

// say is a sentence of the report.
func (b *book) say(key string) string { return b.view.Language.Text(key) }

// section fills the sheet of one section; the library's first sheet becomes
// that of the first section.
func (b *book) section(i int) {
	s := &b.view.Sections[i]
	if i == 0 {
		b.try(b.file.SetSheetName("Sheet1", s.Sheet))
	} else if _, err := b.file.NewSheet(s.Sheet); err != nil {
		b.try(err)
	}
	w := &sheet{book: b, section: s, name: s.Sheet, part: fmt.Sprintf("xl/worksheets/sheet%d.xml", i+1), columns: columnsOf(s)}
	b.formulas[w.part] = map[string]any{}
	w.fill(i == 0)
	if i == 0 {
		w.contents()
	}
	w.setPage()
}
