package cli

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

func TestCutDetail(t *testing.T) {
	for target, want := range map[string]string{
		"joist.span.basis":    "joist.span|basis",
		"layer.l1.year.with":  "layer.l1.year|with",
		"joist.span.note":     "joist.span|note",
		"joist.span.on":       "joist.span|on",
		"joist.span":          "joist.span|",
		"danger.on":           "danger.on|",
		"kitchen.main.x.note": "kitchen.main.x|note",
	} {
		address, detail := cutDetail(target)
		if got := address + "|" + detail; got != want {
			t.Errorf("%s: %s, want %s", target, got, want)
		}
	}
}

// TestSet: pairs that are taken, and what then stands in the record.
func TestSet(t *testing.T) {
	for _, c := range []struct{ pairs, want string }{
		{"zone.base=joists", "zone.base: {value: joists"},
		{"layer.l1.kind=sheet-vinyl", "id: l1"},
		{"joist.span=12ft|joist.span.basis=measured|joist.span.note=at the hatch", "note: at the hatch"},
		{"joist.span=not sure", "joist.span: {value: not sure"},
		{"danger=none", "danger: none"},
		{"crack=none", "crack: none"},
		{"area.bath=Bathroom|bath.zone.base=joists", "name: Bathroom"},
	} {
		name := filepath.Join(t.TempDir(), "record.yaml")
		code, _, errs := run(t, "", append([]string{"set", name}, strings.Split(c.pairs, "|")...)...)
		data, _ := os.ReadFile(name)
		if code != exitDone || !strings.Contains(string(data), c.want) {
			t.Errorf("%s: exit %d, %s\nlacks %q:\n%s", c.pairs, code, errs, c.want, data)
		}
	}
}

// TestSetRefuses: nothing is written, and the hint says what would be taken.
func TestSetRefuses(t *testing.T) {
	name := filepath.Join(t.TempDir(), "record.yaml")
	if code, _, errs := run(t, "", "set", name, "layer.l1.kind=sheet-vinyl"); code != exitDone {
		t.Fatal(errs)
	}
	before, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	for pair, want := range map[string]string{
		"zone.base":           "is not ADDRESS=VALUE",
		"zone.bse=joists":     "did you mean zone.base?",
		"joist.span.note=x":   "has no answer yet",
		"layer.kind=tile":     "for example layer.l1.kind",
		"layer=none":          "there are 1 in the record",
		"layer.l9=remove":     "l9",
		"joist.spacing=16":    "16",
		"zone.base=jojsts":    "joists",
		"nowhere.x.y.z=1":     "nowhere",
		"layer.l1.kind.basis": "is not ADDRESS=VALUE",
	} {
		code, _, errs := run(t, "", "set", name, "danger=none", pair)
		if code != exitUsage || !strings.Contains(errs, want) {
			t.Errorf("%s: exit %d, want 2 and %q:\n%s", pair, code, want, errs)
		}
	}
	if after, err := os.ReadFile(name); err != nil || !bytes.Equal(before, after) {
		t.Errorf("a refused call has written:\n%s", after)
	}
}
