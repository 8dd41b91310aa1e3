package page

import (
	"os"
	"testing"

	"underfoot/reports"
	"underfoot/reports/internal/sample"
)

func TestLook(t *testing.T) {
	v := reports.NewView(sample.Result(), reports.Options{})
	f, _ := os.Create("/tmp/h8/page.html")
	if err := Write(f, v, Options{}); err != nil {
		t.Fatal(err)
	}
	f.Close()
}
