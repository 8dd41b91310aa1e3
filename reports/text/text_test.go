package text

import (
	"bytes"
	"errors"
	"flag"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"underfoot/assess/plaintext"
	"underfoot/assess/result"
	"underfoot/reports"
	"underfoot/reports/internal/sample"
)

var update = flag.Bool("update", false, "write the goldens anew")

func printed(t testing.TB, r *result.Result, o Options) string {
	t.Helper()
	var b bytes.Buffer
	if err := Write(&b, reports.NewView(r, reports.Options{}), o); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

// The goldens are the invented sample as a person would see it; -update writes
// them anew, and the difference is read before it is committed.
func TestGoldens(t *testing.T) {
	for name, o := range map[string]Options{
		"short-80": {}, "short-40": {Width: 40}, "all-80": {All: true}, "all-40": {All: true, Width: 40},
	} {
		file := filepath.Join("testdata", name+".txt")
		got := printed(t, sample.Result(), o)
		if *update {
			if err := os.WriteFile(file, []byte(got), 0o644); err != nil {
				t.Fatal(err)
			}
		}
		want, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		if got != string(want) {
			t.Errorf("%s differs; run with -update and read the difference", file)
		}
	}
}

func TestLinesKeepToTheWidth(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		r := sample.Result()
		r.Areas[0].Name = rapid.StringN(0, 60, -1).Draw(rt, "name")
		r.Areas[0].Findings[0].Text = rapid.String().Draw(rt, "text")
		width := rapid.IntRange(30, 130).Draw(rt, "width")
		for line := range strings.SplitSeq(printed(t, r, Options{Width: width, All: rapid.Bool().Draw(rt, "all")}), "\n") {
			if plaintext.Width(line) > width {
				rt.Fatalf("%d columns in a width of %d: %q", plaintext.Width(line), width, line)
			}
		}
	})
}

func TestNoSpaceAtTheEndAndNoDoubleGap(t *testing.T) {
	got := printed(t, sample.Result(), Options{All: true})
	if strings.Contains(got, " \n") || strings.Contains(got, "\n\n\n") || strings.HasPrefix(got, "\n") {
		t.Error("stray spaces or empty lines")
	}
}

var weight = regexp.MustCompile("\x1b\\[[0-9;]+m")

// Marks are words: taking the weight away loses nothing, and without it no
// escape is printed.
func TestColorAddsNothingButWeight(t *testing.T) {
	plain, bold := printed(t, sample.Result(), Options{All: true}), printed(t, sample.Result(), Options{All: true, Color: true})
	if strings.Contains(plain, "\x1b") {
		t.Error("an escape without being asked for")
	}
	if bold == plain || weight.ReplaceAllString(bold, "") != plain {
		t.Error("the words differ between plain and emphasised")
	}
}

func TestShortPrintSaysWhatItLeavesOut(t *testing.T) {
	short, all := printed(t, sample.Result(), Options{}), printed(t, sample.Result(), Options{All: true})
	for _, heading := range []string{"CALCULATIONS\n", "ANSWERS GIVEN\n", "SOURCES\n", "DECISIONS AND SIGNATURES\n"} {
		if strings.Contains(short, heading) || !strings.Contains(all, heading) {
			t.Errorf("%q belongs in the whole print only", heading)
		}
	}
	if !strings.Contains(short, "left out") || strings.Contains(all, "left out of") {
		t.Error("only the short print says that something is left out")
	}
	for _, mark := range []string{"in part from memory", "[taken as trouble]", "answers given point to: stop"} {
		if !strings.Contains(strings.Join(strings.Fields(short), " "), mark) {
			t.Errorf("the short print lacks %q", mark)
		}
	}
}

type full struct{}

func (full) Write([]byte) (int, error) { return 0, errors.New("device full") }

func TestWriteGivesTheWritersError(t *testing.T) {
	if err := Write(full{}, reports.NewView(sample.Result(), reports.Options{}), Options{}); err == nil {
		t.Error("a full device goes unnoticed")
	}
}
