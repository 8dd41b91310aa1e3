package workbook

import (
	"os"
	"testing"

	"underfoot/reports"
	"underfoot/reports/internal/sample"
)

func TestLook(t *testing.T) {
	v := reports.NewView(sample.Result(), reports.Options{})
	b, err := Build(v, Options{Cached: true})
	if err != nil {
		t.Fatal(err)
	}
	os.WriteFile("/tmp/h8/book.xlsx", b, 0o644)
}
