package figure

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"underfoot/assess/message"
	"underfoot/assess/quantity"
)

// Each broken fixture has one fault, which the error names.
func TestReadBookNamesFaults(t *testing.T) {
	cases := map[string]string{
		"bad-id":         "figure Stone-limit: an id is lower case words",
		"bad-dimension":  `"hardness" is no dimension`,
		"bad-stricter":   `stricter is higher, lower or neither, not "harder"`,
		"bad-region":     `region "moon": no such region`,
		"bad-value":      `"720 in" is not a stiffness ratio`,
		"range-value":    `"L/360 to L/720" is a range: a figure is one number`,
		"no-source":      "source is missing",
		"no-edition":     "edition and section are missing",
		"bad-known":      `known is one of lookup, memory, common-practice, computed, not "heard"`,
		"missing-region": "no value for ca, uk, ie, au, nz, de, eu, other",
		"twice-region":   "two values for region universal",
		"twice-id":       "figure stone_limit stands twice",
		"unknown-key":    "certain",
	}
	for name, want := range cases {
		_, err := readFixture(t, name)
		if err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%s: got %v, want %q", name, err, want)
		}
	}
	files, err := filepath.Glob("testdata/*.toml")
	if err != nil || len(files) != len(cases)+2 { // valid and several besides
		t.Errorf("%d fixtures for %d cases, %v", len(files), len(cases), err)
	}
}

func TestReadBookGivesEveryFault(t *testing.T) {
	_, err := readFixture(t, "several")
	for _, want := range []string{"no dimension", "source is missing", "known is one of"} {
		if err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("got %v, want %q in it", err, want)
		}
	}
}

func TestReadBookReadsAll(t *testing.T) {
	b, err := readFixture(t, "valid")
	if err != nil {
		t.Fatal(err)
	}
	got, ok := b.table("nz").Figure("stone_limit")
	want := Figure{ID: "stone_limit", Value: 720,
		Dimension: quantity.Ratio, Stricter: Higher, Region: universal,
		Source: Source{Title: "an invented manual", Edition: "2020, page 1", Known: "lookup"}}
	if !ok || got != want {
		t.Errorf("got %+v, want %+v", got, want)
	}
}

func readFixture(t *testing.T, name string) (*book, error) {
	t.Helper()
	data, err := os.ReadFile(filepath.Join("testdata", name+".toml"))
	if err != nil {
		t.Fatal(err)
	}
	return readBook(data)
}

// Every shipped figure says where it was read and how it is known, in every region.
func TestEveryFigureHasASource(t *testing.T) {
	for _, region := range Regions {
		table := For(region, quantity.US)
		for _, id := range table.IDs() {
			f, _ := table.Figure(id)
			if f.ID != id || f.What().String() == "" || f.Source.Title == "" || f.Source.Edition == "" || !slices.Contains(ways, f.Source.Known) {
				t.Errorf("%s in %s: %+v", id, region, f)
			}
			noSource := strings.Contains(f.Source.Title, "no published source")
			if noSource != (f.Source.Known == "common-practice") {
				t.Errorf("%s in %s is known by %s from %q", id, region, f.Source.Known, f.Source.Title)
			}
		}
	}
}

// TestEverySentenceOfAFigureIsSaid: a value has its sentences exactly where the
// figures say so.
func TestEverySentenceOfAFigureIsSaid(t *testing.T) {
	for _, r := range shipped().figures {
		for region, f := range r.byRegion {
			for kind, says := range map[string]bool{"note": f.noted, "differs": f.disputed} {
				if has := message.English().Has("figure/" + kind + "." + r.ID + "." + region); has != says {
					t.Errorf("%s in %s: a %s is said: %v, written: %v", r.ID, region, kind, says, has)
				}
			}
		}
	}
}

func BenchmarkReadBook(b *testing.B) {
	for b.Loop() {
		if _, err := readBook(figuresTOML); err != nil {
			b.Fatal(err)
		}
	}
}
