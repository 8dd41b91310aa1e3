package figure

import (
	"math"
	"slices"
	"strings"
	"testing"
)

func TestLumberValue(t *testing.T) {
	for _, c := range []struct {
		species, grade, size string
		property             Property
		want                 float64
		source               string
	}{
		{"douglas-fir-larch", "no2", "2x10", Stiffness, 1.6e6, "NDS Supplement 2018 Table 4A"},
		{"douglas-fir-larch", "no2", "", Bending, 900, "NDS Supplement 2018 Table 4A; 875 in older tables"},
		{"douglas-fir-larch-before-2013", "no2", "", Bending, 875, "older span tables"},
		{"spruce-pine-fir", "select-structural", "", Bending, 1250, "IRC 2018 Table R502.3.1(2), whose spans refuse 1150"},
		{"spruce-pine-fir", "no1", "", Stiffness, 1.4e6, "NDS Supplement 2018 Table 4A, one grade No.1/No.2"},
		{"southern-pine", "no2", "2x10", Bending, 800, "NDS Supplement Table 4B, from June 2013"},
		{"southern-pine", "no2", "", Stiffness, 1.4e6, "NDS Supplement Table 4B, the same for every size"},
		{"western-woods", "no2", "", Stiffness, 1.0e6, "NDS Supplement 2018 Table 4A"},
		{"", "c24", "", Stiffness, 11 * 145037.7377, "EN 338 Table 1, 11 kN/mm2"},
	} {
		f, ok := LumberValue(c.species, c.grade, c.size, c.property)
		if !ok || math.Abs(f.Value-c.want) > 1 {
			t.Errorf("%s %s %s %s is %v, want %v (%s)", c.species, c.grade, c.size, c.property, f.Value, c.want, c.source)
		}
	}
	for _, none := range [][3]string{{"oak", "no2", ""}, {"hem-fir", "c24", ""}, {"southern-pine", "no2", "2x14"}} {
		if f, ok := LumberValue(none[0], none[1], none[2], Bending); ok {
			t.Errorf("%v gives %v", none, f)
		}
	}
}

func TestEveryLumberRowHasItsSource(t *testing.T) {
	for _, rows := range [][]row{lumberRows(), sizeRows(), factorRows(), panelRows()} {
		for _, r := range rows {
			s := r.source()
			if s.Title == "" || s.Edition == "" || !slices.Contains([]string{"lookup", "memory", "computed", "common-practice"}, s.Known) {
				t.Errorf("%v: source %+v", r.keys, s)
			}
		}
	}
}

func TestSpeciesAndGrades(t *testing.T) {
	want := []string{"select-structural", "no1", "no2", "no3"}
	if len(Species()) != 9 {
		t.Errorf("species %v", Species())
	}
	for _, s := range Species() {
		if got := Grades(s); !slices.Equal(got, want) {
			t.Errorf("%s has grades %v", s, got)
		}
		if strings.Contains(s, older) {
			t.Errorf("%s is for old tables only", s)
		}
	}
	if got := Grades(""); !slices.Equal(got, []string{"c14", "c16", "c18", "c22", "c24", "c27", "c30"}) {
		t.Errorf("strength classes %v", got)
	}
}

// TestBetterGradesAreNotSofter guards the table against swapped rows.
func TestBetterGradesAreNotSofter(t *testing.T) {
	for _, s := range append(Species(), "") {
		before := math.Inf(1)
		if s == "" {
			before = 0
		}
		for _, g := range Grades(s) {
			f, _ := LumberValue(s, g, "", Stiffness)
			if s != "" && f.Value > before || s == "" && f.Value < before {
				t.Errorf("%s %s: stiffness %v beside %v", s, g, f.Value, before)
			}
			before = f.Value
		}
	}
}

func TestDressedSizesAndFactors(t *testing.T) {
	// NDS Supplement 2018 Table 1A, surfaced dry.
	if w, d, ok := Dressed("2x10"); !ok || w != 1.5 || d != 9.25 {
		t.Errorf("2x10 is %v by %v", w, d)
	}
	if _, _, ok := Dressed("2x9"); ok {
		t.Error("2x9 is no size of the trade")
	}
	for _, c := range []struct {
		species, size string
		want          float64
	}{ // NDS Supplement 2018 Tables 4A and 4B, size factors
		{"hem-fir", "2x4", 1.5}, {"hem-fir", "2x8", 1.2}, {"hem-fir", "3x10", 1.1}, {"hem-fir", "4x8", 1.3}, {"hem-fir", "2x16", 0.9},
		{"southern-pine", "2x8", 1}, {"southern-pine", "2x12", 1}, {"southern-pine", "2x14", 0.9},
	} {
		if f, ok := SizeFactor(c.species, c.size); !ok || f.Value != c.want {
			t.Errorf("%s %s has factor %v, want %v", c.species, c.size, f.Value, c.want)
		}
	}
	if RepetitiveFactor().Value != 1.15 { // NDS 4.3.9
		t.Errorf("repetitive members: %v", RepetitiveFactor().Value)
	}
}
