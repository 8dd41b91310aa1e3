package cli

import (
	"bytes"
	"errors"
	"testing"

	"underfoot/assess"
	"underfoot/assess/message"
	"underfoot/assess/result"
	"underfoot/cmd/internal/console"
)

func demoResult(t *testing.T) *result.Result {
	t.Helper()
	a := &app{Streams: console.Over(nil, nil, nil, func(string) string { return "" }), engines: engines{}, language: message.English(), today: "2026-05-04"}
	f, err := a.parse("demo.yaml", demoRecord)
	if err != nil {
		t.Fatal(err)
	}
	return a.assess(f)
}

// TestRenderByEnding: the ending of the name decides, in capitals too.
func TestRenderByEnding(t *testing.T) {
	r := demoResult(t)
	for name, begins := range map[string]string{
		"a.xlsx": "PK", "a.XLSX": "PK", "a.html": "<!doctype html>", "a.txt": "", "a.b.json": "{",
	} {
		got, err := render(r, name, "letter", "")
		if err != nil || len(got) < 1000 || !bytes.HasPrefix(bytes.ToLower(got), bytes.ToLower([]byte(begins))) {
			t.Errorf("%s: %d bytes, %v, begins %.20q", name, len(got), err, got)
		}
	}
	for _, name := range []string{"a", "a.pdf", "xlsx", "a.xlsx.bak"} {
		got, err := render(r, name, "letter", "")
		var p *assess.Problem
		if len(got) > 0 || !errors.As(err, &p) || p.Kind != assess.Usage {
			t.Errorf("%s: %d bytes, %v", name, len(got), err)
		}
	}
}
