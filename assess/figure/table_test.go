package figure

import (
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"underfoot/assess/quantity"
)

// The last presumed year and the last year of the test band, country by
// country: OSHA letter of 1 Aug 1997 (US), Health Canada, the British ban of 24
// Nov 1999, Directive 1999/77/EC (ban from 1 Jan 2005), NSW Government page and
// the Australian ban of 31 Dec 2003, houses before 2000 (New Zealand), the
// German ban of 31 Oct 1993; the test bands of us, nz, de and other are choices.
func TestYearsByRegion(t *testing.T) {
	cases := []struct {
		region         string
		sys            quantity.System
		presumed, test float64
	}{
		{"us", quantity.US, 1980, 1989},
		{"ca", quantity.US, 1989, 1989},
		{"uk", quantity.Metric, 1999, 1999},
		{"ie", quantity.Metric, 2004, 2004},
		{"eu", quantity.Metric, 2004, 2004},
		{"au", quantity.Metric, 1989, 2003},
		{"nz", quantity.Metric, 1999, 2003},
		{"de", quantity.Metric, 1993, 1995},
		{"other", quantity.US, 1999, 2004},
		{"", quantity.US, 1980, 1989},
		{"", quantity.Metric, 1999, 2004},
		{"atlantis", quantity.US, 1980, 1989},
	}
	for _, c := range cases {
		table := For(c.region, c.sys)
		presumed, _ := table.Figure("presumed_to")
		test, _ := table.Figure("test_to")
		if presumed.Value != c.presumed || test.Value != c.test {
			t.Errorf("%q in %v: presumed to %v, test to %v; want %v, %v", c.region, c.sys, presumed.Value, test.Value, c.presumed, c.test)
		}
	}
}

// Figures that decide outcomes, beside the document that states them.
func TestFiguresAsPublished(t *testing.T) {
	cases := []struct {
		id, region, want string
	}{
		{"lead_paint_to", "us", "1977"},            // 40 CFR 745.82: housing built before 1978
		{"lead_paint_to", "au", "1997"},            // WorkSafe Tasmania: 0.1 percent from 1997
		{"lead_paint_to", "uk", "1992"},            // sale to the public ended about 1992
		{"lead_paint_to", "ca", "1990"},            // possible to 1990
		{"asbestos_share", "us", "1 %"},            // 40 CFR 61 Subpart M
		{"asbestos_share", "ca", "0.5 %"},          // Ontario Regulation 278/05
		{"silica_limit", "us", "0.05"},             // 29 CFR 1926.1153: 50 micrograms
		{"silica_limit", "ca", "0.025"},            // list of Canadian limits: federal, British Columbia
		{"silica_limit", "uk", "0.1"},              // EH40/2005 addendum
		{"silica_limit", "de", "0.1"},              // Directive 2004/37/EC, Annex III
		{"silica_limit", "au", "0.05"},             // Safe Work Australia, from Jul 2020
		{"mould_area", "us", "10 ft2"},             // EPA, Mold clean-up
		{"mould_area", "de", "10.76 ft2"},          // about 1 m2
		{"crack_width_engineer", "us", "1/8 in"},   // reach of crack isolation membranes
		{"ceramic_limit", "us", "L/360"},           // IRC Table R301.7
		{"stone_limit", "us", "L/720"},             // NTCA Reference Manual 2024-25, page image 55
		{"engineered_limit", "us", "L/480"},        // the same, bullet 3
		{"beam_spacing_table", "us", "54 in"},      // IRC 2018 Table R503.1
		{"framing_moisture", "us", "19%"},          // ANSI A108.11 4.1
		{"wood_moisture", "us", "12%"},             // NWFA, by installation sheets
		{"moisture_gap", "us", "4 points"},         // NWFA
		{"slab_rh", "us", "75%"},                   // ASTM F710 summary
		{"slab_mver", "us", "3 lb/1000 ft2"},       // ASTM F710 summary
		{"gypsum_strength", "us", "2000 psi"},      // NTCA Reference Manual 2024-25, page image 81
		{"gypsum_thickness", "us", "1/2 in"},       // the same
		{"large_tile_edge", "us", "15 in"},         // ANSI A108.02 4.2.2
		{"flat_small", "us", "1/4 in"},             // ANSI A108.02
		{"flat_large", "us", "1/8 in"},             // ANSI A108.02 4.2.2
		{"panel_board_16", "us", "19/32 in"},       // ANSI A108.11, by FCI magazine
		{"strip_width_min", "us", "6 in"},          // field report 109 on F125
		{"joint_inside", "us", "25 ft"},            // EJ171
		{"joint_outside", "uk", "9 ft 10.11 in"},   // BS 5385-3:2024, 3 to 5 m: 3 m
		{"weight_quarry_half_bed", "us", "16 psf"}, // ASCE 7 Table C3.1-1a
		{"weight_leveler_inch", "us", "10 psf"},    // 120 pcf over 12 in
		{"weight_gypsum_inch", "us", "8.75 psf"},   // 105 pcf over 12 in
		{"wait_gypsum_inch", "us", "7 days"},       // NTCA Reference Manual, drying list
	}
	for _, c := range cases {
		f, ok := For(c.region, quantity.US).Figure(c.id)
		want, err := quantity.Read(f.Dimension, c.want, quantity.US)
		if !ok || err != nil || math.Abs(f.Value-want.Lo) > 0.005*math.Abs(want.Lo) || f.Source.Known == "common-practice" {
			t.Errorf("%s in %s = %v (%s), want %s", c.id, c.region, f.Value, f.Source.Known, c.want)
		}
	}
}

// Figures without a published source say so.
func TestChoicesAreCalledChoices(t *testing.T) {
	table := For("us", quantity.US)
	for _, id := range []string{"hollow_share", "floor_drop", "sag_limit", "engineered_sag", "strip_cracks_max", "wood_level_gap",
		"underlayment_plywood", "thick_stone", "beam_crack_watch", "test_to"} {
		if f, ok := table.Figure(id); !ok || f.Source.Known != "common-practice" {
			t.Errorf("%s is known by %q", id, f.Source.Known)
		}
	}
	for _, id := range []string{"panel_mat_16", "coating_pull_off", "new_concrete_days", "weight_unquestioned", "membrane_high"} {
		if f, ok := table.Figure(id); !ok || f.Source.Known != "memory" {
			t.Errorf("%s is known by %q", id, f.Source.Known)
		}
	}
}

func TestTighten(t *testing.T) {
	src := Source{Title: "an invented company rule", Edition: "2026", Known: "common-practice"}
	table := For("us", quantity.US)
	cases := []struct {
		id    string
		value float64
		src   Source
		want  string // in the error; empty where it is allowed
	}{
		{"stone_limit", 800, src, ""},
		{"stone_limit", 720, src, ""},
		{"stone_limit", 700, src, "may only get higher than L/720"},
		{"hollow_share", 5, src, ""},
		{"hollow_share", 11, src, "may only get lower than 10%"},
		{"panel_gap", 0.1, src, "plain property"},
		{"no_such_figure", 1, src, "there is no figure"},
		{"stone_limit", math.NaN(), src, "no number"},
		{"stone_limit", math.Inf(1), src, "no number"},
		{"stone_limit", 800, Source{Title: "a rule", Known: "lookup"}, "edition and section are missing"},
		{"stone_limit", 800, Source{Edition: "2026", Known: "lookup"}, "source is missing"},
		{"stone_limit", 800, Source{Title: "a rule", Edition: "2026", Known: "heard"}, "known is one of"},
	}
	for _, c := range cases {
		got, err := table.Tighten(c.id, c.value, c.src)
		if c.want != "" {
			if got != nil || err == nil || !strings.Contains(err.Error(), c.want) {
				t.Errorf("Tighten(%s, %v) gave %v, want %q", c.id, c.value, err, c.want)
			}
			continue
		}
		if err != nil {
			t.Errorf("Tighten(%s, %v): %v", c.id, c.value, err)
			continue
		}
		if f, _ := got.Figure(c.id); f.Value != c.value || f.Source != c.src {
			t.Errorf("Tighten(%s, %v) made %+v", c.id, c.value, f)
		}
	}
	if f, _ := table.Figure("stone_limit"); f.Value != 720 {
		t.Errorf("the table itself has changed: %v", f.Value)
	}
}

// Whatever is tightened, no figure ever asks less of a floor.
func TestTightenNeverRelaxes(t *testing.T) {
	start := For("us", quantity.US)
	rapid.Check(t, func(t *rapid.T) {
		id := rapid.SampledFrom(start.IDs()).Draw(t, "id")
		was, _ := start.Figure(id)
		value := rapid.OneOf(rapid.Float64(), rapid.Map(rapid.Float64Range(0.5, 2), func(x float64) float64 { return x * was.Value })).Draw(t, "value")
		table, err := start.Tighten(id, value, Source{Title: "a rule", Edition: "2026", Known: "memory"})
		if err != nil {
			return
		}
		is, _ := table.Figure(id)
		if was.Stricter == Neither || was.Stricter == Higher && is.Value < was.Value || was.Stricter == Lower && is.Value > was.Value {
			t.Fatalf("%s went from %v to %v", id, was.Value, is.Value)
		}
		if !slices.Equal(table.IDs(), start.IDs()) {
			t.Fatal("a figure is lost")
		}
	})
}
