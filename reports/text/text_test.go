package text

import (
	"os"
	"testing"

	"underfoot/reports"
	"underfoot/reports/internal/sample"
)

func TestLook(t *testing.T) {
	v := reports.NewView(sample.Result(), reports.Options{})
	for n, o := range map[string]Options{"80": {}, "40": {Width: 40}, "all": {All: true}, "all40": {All: true, Width: 40}} {
		f, _ := os.Create("/tmp/h8/" + n + ".txt")
		if err := Write(f, v, o); err != nil {
			t.Fatal(err)
		}
		f.Close()
	}
}
