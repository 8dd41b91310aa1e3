package record_test

import (
	"fmt"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"underfoot/assess"
	"underfoot/assess/record"
	"underfoot/assess/schema"
)

func merge(t testing.TB, base, mine, theirs *record.Document) (*record.Document, []record.Clash) {
	t.Helper()
	out, clashes, err := record.Merge(base, mine, theirs)
	if err != nil {
		t.Fatal(err)
	}
	return out, clashes
}

// TestMergeOneSide: where only one side changed, the merge is that side.
func TestMergeOneSide(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		base, side := parse(t, kitchen), changed(rt, parse(t, kitchen), 8)
		for name, sides := range map[string][2]*record.Document{"mine": {side, base}, "theirs": {base, side}, "both alike": {side, side}} {
			out, clashes := merge(t, base, sides[0], sides[1])
			if len(clashes) > 0 || jobText(out.Job()) != jobText(side.Job()) {
				rt.Fatalf("%s: %v\n%s\nwant\n%s", name, clashes, jobText(out.Job()), jobText(side.Job()))
			}
		}
	})
}

// TestMergeTakesEither: every answer of the merge is one that a side gave;
// what a side left alone is as the other has it; both orders clash at the
// same places.
func TestMergeTakesEither(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		base := parse(t, kitchen)
		mine, theirs := changed(rt, parse(t, kitchen), 6), changed(rt, parse(t, kitchen), 6)
		out, clashes := merge(t, base, mine, theirs)
		_, mirrored := merge(t, base, theirs, mine)
		if len(clashes) != len(mirrored) {
			rt.Fatalf("%v, the other way round %v", clashes, mirrored)
		}
		for _, name := range []string{"zone.base", "joist.span", "danger.gas", "layer.complete"} {
			if want, settled := between(base, mine, theirs, name); settled && at(out, name) != want {
				rt.Fatalf("%s is %q, want %q", name, at(out, name), want)
			}
		}
		if _, err := out.Bytes(); err != nil {
			rt.Fatal(err)
		}
	})
}

// between is what a zone's answer must be after a merge; not settled where the
// two sides clash or the zone is gone.
func between(base, mine, theirs *record.Document, name string) (want string, settled bool) {
	b, m, t := at(base, name), at(mine, name), at(theirs, name)
	switch {
	case m == t || t == b:
		return m, true
	case m == b:
		return t, true
	}
	return "", false
}

// at is a zone's answer with all that is known of it.
func at(d *record.Document, name string) string {
	ans, said := d.Job().Areas[0].Zones[0].Answers[name]
	return fmt.Sprintf("%v %+v", said, ans)
}

func TestMergeClashes(t *testing.T) {
	span := func(text string) func(*record.Document) error {
		return func(d *record.Document) error { return d.Put(address(t, "joist.span"), assess.Answer{Text: text}) }
	}
	l1 := schema.Address{Topic: "layer", Item: "l1"}
	kind := func(text string) func(*record.Document) error {
		return func(d *record.Document) error { return d.Put(address(t, "layer.l1.kind"), assess.Answer{Text: text}) }
	}
	dropped := func(d *record.Document) error { return d.DropItem(l1) }
	region := func(word string) func(*record.Document) error {
		return func(d *record.Document) error { return d.SetHeader(word, "", "") }
	}
	for _, c := range []struct {
		name         string
		mine, theirs func(*record.Document) error
		place        string // of the clash; empty: none
	}{
		{"two values", span("12 ft"), span("13 ft"), "kitchen.main.joist.span"},
		{"the same value", span("12 ft"), span("12 ft"), ""},
		{"different addresses", span("12 ft"), kind("cork"), ""},
		{"dropped here, changed there", dropped, kind("cork"), "kitchen.main.layer.l1"},
		{"changed here, dropped there", kind("cork"), dropped, "kitchen.main.layer.l1"},
		{"dropped by both", dropped, dropped, ""},
		{"two regions", region("uk"), region("ca"), "region"},
		{"one region", region("uk"), region("us"), ""},
	} {
		base, mine, theirs := parse(t, kitchen), parse(t, kitchen), parse(t, kitchen)
		if err := c.mine(mine); err != nil {
			t.Fatal(c.name, err)
		}
		if err := c.theirs(theirs); err != nil {
			t.Fatal(c.name, err)
		}
		_, clashes := merge(t, base, mine, theirs)
		switch {
		case c.place == "" && len(clashes) > 0:
			t.Errorf("%s: %+v", c.name, clashes)
		case c.place != "" && (len(clashes) != 1 || clashes[0].Place != c.place):
			t.Errorf("%s: %+v, want one at %s", c.name, clashes, c.place)
		}
	}
}

// TestMergeKeepsTheirFile: comments and unknown keys that the other side added
// in the meantime stay.
func TestMergeKeepsTheirFile(t *testing.T) {
	base, mine := parse(t, kitchen), parse(t, kitchen)
	theirs := parse(t, "# a new comment\nclient: Invented Person\n"+kitchen)
	if err := mine.Put(address(t, "joist.span"), assess.Answer{Text: "12 ft"}); err != nil {
		t.Fatal(err)
	}
	out, _ := merge(t, base, mine, theirs)
	got := bytesOf(t, out)
	for _, want := range []string{"# a new comment", "client: Invented Person", "joist.span: 12 ft"} {
		if !strings.Contains(got, want) {
			t.Errorf("%q is missing:\n%s", want, got)
		}
	}
}

// TestMergeCannotBeSo: a year from one side lies after the day from the other.
func TestMergeCannotBeSo(t *testing.T) {
	base, mine, theirs := parse(t, kitchen), parse(t, kitchen), parse(t, kitchen)
	if err := mine.Put(address(t, "layer.l1.year"), assess.Answer{Text: "2025"}); err != nil {
		t.Fatal(err)
	}
	if err := theirs.SetHeader("", "", "2020-01-01"); err != nil {
		t.Fatal(err)
	}
	_, _, err := record.Merge(base, mine, theirs)
	if p, ok := err.(*assess.Problem); !ok || p.Kind != assess.Conflict || p.Place != "kitchen.main.layer.l1.year" {
		t.Errorf("%v", err)
	}
}
