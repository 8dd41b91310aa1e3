package record_test

import (
	"bytes"
	"errors"
	"os"
	"path/filepath"
	"testing"

	"underfoot/assess"
	"underfoot/assess/record"
)

// FuzzRead: whatever the bytes are, they are a record, or problems with a
// place; a record untouched gives the same bytes, and one that was changed
// reads back as what it says.
func FuzzRead(f *testing.F) {
	broken, _ := filepath.Glob("testdata/broken/*.yaml")
	for _, path := range append(cases(f), broken...) {
		data, err := os.ReadFile(path)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(data)
	}
	f.Add([]byte(kitchen))
	f.Add([]byte(`{"format": "underfoot.assessment/1", "areas": [{"id": "hall"}]}`))
	f.Fuzz(func(t *testing.T, data []byte) {
		d, err := record.Read(data, "record.yaml", values())
		var problems assess.Problems
		if err != nil {
			if !errors.As(err, &problems) || len(problems) == 0 || problems[0].Place == "" {
				t.Fatalf("%v", err)
			}
			return
		}
		if out, err := d.Bytes(); err != nil || !bytes.Equal(out, data) {
			t.Fatalf("untouched, but other bytes (%v)", err)
		}
		if d.AddArea("added", "") != nil {
			return
		}
		if _, err := d.Bytes(); err != nil {
			t.Fatal(err)
		}
	})
}
