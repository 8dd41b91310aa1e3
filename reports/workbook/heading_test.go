package workbook

import (
	"slices"
	"testing"

	"underfoot/reports"
)

// A sheet repeats the headings of its first table on every page, so tables with
// other columns do not follow it on the sheets that run over pages.
func TestRepeatedHeadingsAreThoseOfEveryTable(t *testing.T) {
	for _, id := range []string{reports.FindingsSection, reports.PlanSection, reports.QuantitiesSection} {
		section := sampleView().Section(id)
		for _, part := range section.Parts {
			if !slices.Equal(part.Table.Columns, section.Parts[0].Table.Columns) {
				t.Errorf("%s: %s stands under the headings of %s", id, part.Table.ID, section.Parts[0].Table.ID)
			}
		}
	}
}
