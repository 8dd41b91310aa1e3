package takeoff

import (
	"math"
	"slices"
	"strings"
	"testing"

	"underfoot/assess/figure"
	"underfoot/assess/logic"
	"underfoot/assess/quantity"
	"underfoot/assess/result"
)

var us = figure.For("us", quantity.US)

// find is the amount of a line, by the id of its text; ok is false where the
// line is not there.
func find(lines []result.Quantity, id string) (q result.Quantity, ok bool) {
	for _, q := range lines {
		if q.Text.Key == text(id).Key {
			return q, true
		}
	}
	return q, false
}

func between(lo, hi float64) quantity.Range { return quantity.Range{Lo: lo, Hi: hi} }

// A kitchen of 118 to 122 ft2, worked by hand. Each figure's source stands in
// its case; those without a document are the trade's practice or recalled, and
// the amount says so.
func TestAmountsByHand(t *testing.T) {
	kitchen := Input{Area: between(118, 122), LongestRun: quantity.Point(360), TileLong: quantity.Point(12),
		TileThickness: quantity.Point(0.375), TileKinds: []string{"porcelain"}, MortarBed: logic.No,
		CrackLength: quantity.Point(120), Depth: quantity.Point(0.25), AddsPanel: true,
		Removed: []Layer{{[]string{"sheet-vinyl"}, quantity.Everything}, {[]string{"hardwood-strip"}, quantity.Everything}}}
	for _, c := range []struct {
		path result.PathID
		id   string
		want quantity.Range
	}{
		// 118 x 1.1 / 15 = 8.65, 122 x 1.1 / 15 = 8.95: a sheet of 3 by 5 ft, recalled; 10 % waste, practice
		{result.BackerBoard, "board", quantity.Point(9)},
		// 129.8 x 3.6 = 467.3, 134.2 x 3.6 = 483.1: 54 fasteners on 15 ft2 at the 8 in of ANSI A108.11
		{result.BackerBoard, "board_fasteners", between(468, 484)},
		// 118 x 0.5 = 59, 122 x 0.5 = 61: half of the 16 ft around 15 ft2, less the walls
		{result.BackerBoard, "board_tape", between(59, 61)},
		// 118 / 90 = 1.31, 122 / 90 = 1.36: recalled
		{result.BackerBoard, "mortar_under_board", quantity.Point(2)},
		{result.Uncouple, "mortar_under_mat", quantity.Point(2)},
		// 118 x 1.1 = 129.8, 122 x 1.1 = 134.2
		{result.Uncouple, "mat", between(130, 135)},
		{result.IsolateFull, "membrane_sheet", between(130, 135)},
		// 118 / 50 = 2.36, 122 / 50 = 2.44: two coats, recalled
		{result.IsolateFull, "membrane_liquid", quantity.Point(3)},
		// 3 x 12 in: ceramic tile institute, field report 109 on method F125
		{result.IsolateStrip, "strip_width", quantity.Point(36)},
		// 10 ft x 1.1, and 3 ft of width
		{result.IsolateStrip, "strip_length", quantity.Point(11)},
		{result.IsolateStrip, "strip_area", quantity.Point(33)},
		{result.IsolateStrip, "soft_joint", quantity.Point(20)},
		{result.DirectBond, "tile", between(129.8, 134.2)},
		// 118 / 60 = 1.97, 122 / 60 = 2.03: recalled
		{result.DirectBond, "mortar_under_tile", between(2, 3)},
		// 129.8 x 3/8 x 12.3 = 598.7, 134.2 x 3/8 x 12.3 = 619.0: 147 pcf, recalled
		{result.DirectBond, "tile_weight", between(598.7, 619.0)},
		// 30 ft: 25 ft leaves one joint, 12 ft two; TileLetter, Aug 2018, p. 24, on EJ171
		{result.DirectBond, "joints", between(1, 2)},
		// 122 / 200: recalled
		{result.Level, "primer", quantity.Point(1)},
		// 118 x 0.25 / 12 / 0.42 = 5.85, 122 x 0.25 / 12 / 0.42 = 6.05: home-improvement page, 40 to 50 ft2 at 1/8 in
		{result.Level, "leveler", between(6, 7)},
		// 129.8 / 32 = 4.06, 134.2 / 32 = 4.19: a sheet of 4 by 8 ft, recalled
		{result.Strengthen, "panel", quantity.Point(5)},
		// 129.8 x 5.1 = 662.0, 134.2 x 5.1 = 684.4: 77 fasteners on 15 ft2
		{result.Strengthen, "panel_fasteners", between(662, 685)},
		{result.Remove, "removal", between(118, 122)},
		// 0.7 psf of vinyl, recalled, and 4 psf of hardwood, ASCE 7 table C3.1-1a: 4.7 x 118, 4.7 x 122
		{result.Remove, "removal_weight", between(554.6, 573.4)},
	} {
		q, ok := find(For(c.path, kitchen, us), c.id)
		if !ok || math.Abs(q.Value.Lo-c.want.Lo) > 0.05 || math.Abs(q.Value.Hi-c.want.Hi) > 0.05 {
			t.Errorf("%v, %s: %v, want %v", c.path, c.id, q.Value, c.want)
		}
	}
}

func TestTileSizeDecidesTheMortar(t *testing.T) {
	for _, c := range []struct {
		name string
		long quantity.Range
		want quantity.Range
	}{
		{"12 in", quantity.Point(12), quantity.Point(2)},                 // 120 / 60, recalled
		{"24 in", quantity.Point(24), quantity.Point(3)},                 // 120 / 40, recalled
		{"15 in counts as large", quantity.Point(15), quantity.Point(3)}, // edge of 15 in: ANSI A108.02, 4.2.2
		{"12 to 18 in", between(12, 18), between(2, 3)},
		{"not said", quantity.Everything, between(2, 3)},
	} {
		q, _ := find(For(result.DirectBond, Input{Area: quantity.Point(120), TileLong: c.long, MortarBed: logic.No}, us), "mortar_under_tile")
		if q.Value != c.want {
			t.Errorf("%s: %v bags, want %v", c.name, q.Value, c.want)
		}
	}
}

// The strip is three tiles wide and never under 6 in: ceramic tile institute,
// field report 109 on method F125.
func TestStripWidth(t *testing.T) {
	for _, c := range []struct{ long, want quantity.Range }{
		{quantity.Point(1), quantity.Point(6)},
		{quantity.Point(4), quantity.Point(12)},
		{between(1, 4), between(6, 12)},
		{quantity.Everything, quantity.AtLeast(6)},
	} {
		q, _ := find(For(result.IsolateStrip, Input{TileLong: c.long}, us), "strip_width")
		if q.Value != c.want {
			t.Errorf("tile of %v: strip of %v, want %v", c.long, q.Value, c.want)
		}
	}
}

func TestUnknownRoomGivesAmountsForAHundredFeet(t *testing.T) {
	for _, area := range []quantity.Range{quantity.Everything, quantity.AtLeast(80), {}} {
		lines := For(result.BackerBoard, Input{Area: area}, us)
		if lines[0].Text.Key != text("size").Key || lines[0].Value != quantity.Everything {
			t.Fatalf("area %v: first line %+v", area, lines[0])
		}
		board, _ := find(lines, "board")
		if want := 110.0 / 15; math.Abs(board.Value.Lo-want) > 1e-9 || board.Unit.String() != "sheets per 100 ft2" {
			t.Errorf("area %v: %v %s, want %v sheets per 100 ft2, not rounded", area, board.Value, board.Unit, want)
		}
	}
}

func TestUnknownCracksAndDepthGiveRates(t *testing.T) {
	run, _ := find(For(result.IsolateStrip, Input{Area: quantity.Point(100), TileLong: quantity.Point(12)}, us), "strip_length")
	if run.Value != quantity.Point(11) || run.Unit.String() != "ft per 10 ft of crack" {
		t.Errorf("strip of a crack of unknown length: %v %s", run.Value, run.Unit)
	}
	level := For(result.Level, Input{Area: quantity.Point(50.4), Depth: quantity.Everything}, us)
	inch, _ := find(level, "leveler_inch")
	if math.Abs(inch.Value.Lo-10) > 1e-9 { // 50.4 / 12 / 0.42
		t.Errorf("leveler for an inch: %v, want 10", inch.Value)
	}
	if _, twice := find(level, "leveler"); twice {
		t.Error("bags for a depth that nobody has measured")
	}
}

// 184.8 ft2 at 0.3 in are 4.62 ft3, which is eleven bags of 0.42 ft3 to the last
// crumb: the arithmetic of the machine adds no twelfth.
func TestWholeAmountIsNotRoundedUp(t *testing.T) {
	q, _ := find(For(result.Level, Input{Area: quantity.Point(184.8), Depth: quantity.Point(0.3)}, us), "leveler")
	if q.Value != quantity.Point(11) {
		t.Errorf("%v bags, want 11", q.Value)
	}
}

func TestPathsWithoutAmounts(t *testing.T) {
	full := Input{Area: quantity.Point(100), TileLong: quantity.Point(12), Depth: quantity.Point(1), AddsPanel: true,
		CrackLength: quantity.Point(100), Removed: []Layer{{[]string{"asphalt-tile"}, quantity.Everything}}}
	for _, p := range []result.PathID{result.NoPath, result.CallService, result.TestOrAbate, result.Engineer, result.DryOut, result.FindOut} {
		if lines := For(p, full, us); len(lines) > 0 {
			t.Errorf("%v lists %v", p, lines)
		}
	}
	if lines := For(result.Strengthen, Input{Area: quantity.Point(100)}, us); len(lines) > 0 {
		t.Errorf("strengthening without a new layer lists %v", lines)
	}
}

func TestMortarBedIsListedWhereItMayBe(t *testing.T) {
	for _, c := range []struct {
		bed         logic.Truth
		thin, thick bool
	}{{logic.No, true, false}, {logic.Yes, false, true}, {logic.Open, true, true}} {
		lines := For(result.DirectBond, Input{Area: quantity.Point(120), MortarBed: c.bed}, us)
		_, thin := find(lines, "mortar_under_tile")
		bed, thick := find(lines, "mortar_bed")
		if thin != c.thin || thick != c.thick {
			t.Errorf("mortar bed %v: thin %v, thick %v", c.bed, thin, thick)
		}
		if thick && bed.Value != between(7.5, 20) { // 120 ft2 at 3/4 to 2 in, recalled
			t.Errorf("mortar bed: %v, want 7.5 to 20 ft3", bed.Value)
		}
	}
}

func TestWeightOfWhatIsNotKnownIsOpen(t *testing.T) {
	for _, c := range []struct {
		name  string
		layer Layer
		want  quantity.Range
	}{
		{"no weight for rubber", Layer{[]string{"rubber"}, quantity.Point(0.25)}, quantity.AtLeast(0)},
		{"vinyl or rubber", Layer{[]string{"sheet-vinyl", "rubber"}, quantity.Everything}, quantity.AtLeast(0)},
		{"vinyl or linoleum", Layer{[]string{"sheet-vinyl", "linoleum"}, quantity.Everything}, between(0.7, 1)}, // recalled; ASCE 7 table C3.1-1a
		{"plywood of no thickness", Layer{[]string{"plywood-underlayment"}, quantity.Everything}, quantity.AtLeast(0)},
		{"half an inch of gypsum", Layer{[]string{"gypsum-poured"}, quantity.Point(0.5)}, quantity.Point(4.375)}, // 8.75 psf an inch
		{"no kind said", Layer{}, quantity.AtLeast(0)},
	} {
		if psf, _ := newList(Input{}, us).weight(c.layer); psf != c.want {
			t.Errorf("%s: %v psf, want %v", c.name, psf, c.want)
		}
	}
}

// Who reads an amount must see which figures nobody has looked up.
func TestNotesSayHowAFigureIsKnown(t *testing.T) {
	for _, c := range []struct {
		path result.PathID
		id   string
		says []string
	}{
		{result.BackerBoard, "mortar_under_board", []string{"90 ft2 (from memory)", "the label decides"}},
		{result.BackerBoard, "board", []string{"10% (common practice)"}},
		{result.Level, "leveler", []string{"home-improvement page", "but another page gives about half"}},
		{result.DirectBond, "tile", []string{"diagonal: 15%", "pattern: 20%"}},
		{result.IsolateStrip, "strip_width", []string{"field report 109", "1/16 in (from memory)", "1/8 in (from memory)"}},
		{result.Remove, "removal", []string{"asbestos question"}},
	} {
		q, _ := find(For(c.path, Input{Area: quantity.Point(100), Depth: quantity.Point(1)}, us), c.id)
		for _, words := range c.says {
			if !strings.Contains(q.Note.String(), words) {
				t.Errorf("%s does not say %q: %s", c.id, words, q.Note)
			}
		}
	}
}

// Every region has every figure that a line needs, so that none is left out.
func TestEveryRegionHasEveryLine(t *testing.T) {
	in := Input{Area: quantity.Point(100), LongestRun: quantity.Point(360), TileLong: quantity.Point(12), TileKinds: []string{"ceramic"},
		CrackLength: quantity.Point(100), Depth: quantity.Point(1), AddsPanel: true, Removed: []Layer{{[]string{"sheet-vinyl"}, quantity.Everything}}}
	lines := func(region string) (all []string) {
		for _, p := range result.Paths() {
			for _, q := range For(p, in, figure.For(region, quantity.US)) {
				all = append(all, p.String()+": "+q.Text.String())
			}
		}
		return all
	}
	want := lines("us")
	for _, region := range figure.Regions {
		if got := lines(region); !slices.Equal(got, want) {
			t.Errorf("%s: %v\nwant %v", region, got, want)
		}
	}
}

// A table without the figures gives no line rather than a zero.
func TestMissingFigureLeavesTheLineOut(t *testing.T) {
	for _, p := range result.Paths() {
		in := Input{Area: quantity.Point(100), TileLong: quantity.Point(12), Depth: quantity.Point(1), AddsPanel: true, LongestRun: quantity.Point(360)}
		for _, q := range For(p, in, &figure.Table{}) {
			if q.Text.Key != text("removal").Key {
				t.Errorf("%v: %s %v without a figure", p, q.Text, q.Value)
			}
		}
	}
}

// Every line has a name, a unit and, where it says so, a sentence of its own.
func TestEveryLineIsSaid(t *testing.T) {
	for id, l := range lines() {
		q := amount{id: id, per: "area"}.line()
		if !strings.HasSuffix(q.Unit.String(), " per 100 ft2") || q.Text.String() == "" || (q.Note.String() != "") != l.Note {
			t.Errorf("%s: %v", id, q)
		}
	}
}
