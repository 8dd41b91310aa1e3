package record_test

import (
	"errors"
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"underfoot/assess"
	"underfoot/assess/message"
	"underfoot/assess/record"
)

var update = flag.Bool("update", false, "write the golden files anew")

// TestBroken: each broken record is refused with every problem at its place.
func TestBroken(t *testing.T) {
	files, err := filepath.Glob("testdata/broken/*.yaml")
	if err != nil || len(files) == 0 {
		t.Fatal(len(files), err)
	}
	for _, path := range files {
		t.Run(strings.TrimSuffix(filepath.Base(path), ".yaml"), func(t *testing.T) {
			golden := strings.TrimSuffix(path, ".yaml") + ".golden"
			got := reportOf(t, path)
			if *update {
				if err := os.WriteFile(golden, []byte(got), 0o644); err != nil {
					t.Fatal(err)
				}
			}
			want, err := os.ReadFile(golden)
			if err != nil || got != string(want) {
				t.Errorf("got:\n%s\nwant:\n%s", got, want)
			}
		})
	}
}

func reportOf(t *testing.T, path string) string {
	t.Helper()
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	_, err = record.Read(data, filepath.Base(path), values())
	var problems assess.Problems
	if !errors.As(err, &problems) {
		t.Fatalf("%v, want problems", err)
	}
	var out strings.Builder
	for _, p := range problems {
		if p.Kind != assess.Invalid {
			t.Errorf("%v is of the kind %d", p, p.Kind)
		}
		out.WriteString(p.Report(message.English()) + "\n\n")
	}
	return out.String()
}

// TestTooLarge: a file beyond the limit is refused before anything reads it.
func TestTooLarge(t *testing.T) {
	data := []byte("format: underfoot.assessment/1\n# " + strings.Repeat("x", 1<<20))
	if _, err := record.Read(data, "record.yaml", values()); err == nil || !strings.Contains(err.Error(), "larger than 1024 kB") {
		t.Error(err)
	}
}
