package check

import (
	"math"
	"testing"

	"underfoot/assess/figure"
	"underfoot/assess/logic"
	"underfoot/assess/quantity"
	"underfoot/assess/result"
	"underfoot/assess/schema"
)

// tiled is a floor for 5/16 in ceramic tile whose layers all stay.
func tiled(t testing.TB, path string) *floor {
	f := newFloor(t, "us")
	f.words("zone.base", "joists").words("tile.kind", "ceramic").set("tile.thickness", quantity.Point(5.0/16))
	f.path.id = path
	return f
}

// leastBuild is tile, thin bed of 3/32 in (ANSI A108.5 2.2.2) and the base:
// board 1/4 in on 1/8 in of mortar (trade practice), mat 1/8 in (memory),
// membrane 1/32 in (TileLetter, Jul 2019).
var leastBuild = map[string]float64{
	"direct-bond":  5.0/16 + 3.0/32,
	"backer-board": 5.0/16 + 3.0/32 + 1.0/4 + 1.0/8,
	"uncouple":     5.0/16 + 3.0/32 + 1.0/8,
	"isolate-full": 5.0/16 + 3.0/32 + 1.0/32,
}

func TestHeightOfEachBase(t *testing.T) {
	for path, build := range leastBuild {
		for _, c := range []struct {
			rise  float64
			short string
		}{{build, "no"}, {build - 1.0/64, "yes"}} {
			f := tiled(t, path)
			f.item(schema.ScopeEdge, "door").set("edge.rise_allowed", quantity.Point(c.rise))
			f.item(schema.ScopeEdge, "stair").set("edge.rise_allowed", quantity.Point(3))
			p := f.run()
			left, short := p.facts["path.height_left"], p.facts["path.height_short"]
			if math.Abs(left.Set.Range.Lo-(c.rise-build)) > 1e-12 || !left.Set.Range.IsPoint() || left.Deps != nil || words(short) != c.short {
				t.Errorf("%s with %v in: left %v, short %s", path, c.rise, left.Set.Range, words(short))
			}
			if check := f.checks["path.height_left"]; check == nil || check.Work.Result() != left.Set.Range {
				t.Errorf("%s: check %+v", path, check)
			}
		}
	}
}

func TestEdgesCheckedByHand(t *testing.T) {
	f := tiled(t, "backer-board")
	f.item(schema.ScopeEdge, "door").words("edge.enough", "yes")
	p := f.run()
	if left := p.facts["path.height_left"]; left.Set.Range != quantity.AtLeast(0) || words(p.facts["path.height_short"]) != "no" {
		t.Errorf("enough: left %+v, short %s", left, words(p.facts["path.height_short"]))
	}
	f = tiled(t, "backer-board")
	f.item(schema.ScopeEdge, "door").words("edge.enough", "no")
	if p = f.run(); words(p.facts["path.height_short"]) != "yes" || p.facts["path.height_left"].Set.Range.Hi > 0 {
		t.Errorf("not enough: %+v", p.facts["path.height_left"])
	}
}

func TestEdgeListNotFinished(t *testing.T) {
	f := tiled(t, "uncouple").open(schema.ScopeEdge)
	f.item(schema.ScopeEdge, "door").set("edge.rise_allowed", quantity.Point(2))
	p := f.run()
	short, left := p.facts["path.height_short"], p.facts["path.height_left"]
	if got := p.Named(short.Deps); words(short) != "open" || len(got) != 1 || got[0].Field != "complete" {
		t.Errorf("short %s on %v", words(short), got)
	}
	if !math.IsInf(left.Set.Range.Lo, -1) || left.Set.Range.Hi != 2-leastBuild["uncouple"] {
		t.Errorf("left %v", left.Set.Range)
	}
	f.zone.lists[schema.ScopeEdge][0].set("edge.rise_allowed", quantity.Point(0.25))
	if p = f.run(); words(p.facts["path.height_short"]) != "yes" {
		t.Error("a place that is too low is so whatever else there is")
	}
}

func TestNoPlacesNoLimit(t *testing.T) {
	p := tiled(t, "uncouple").run()
	if p.facts["path.height_left"].Set.Range != quantity.AtLeast(0) || words(p.facts["path.height_short"]) != "no" {
		t.Errorf("%+v", p.facts)
	}
}

func TestTileThicknessNotSaid(t *testing.T) {
	f := tiled(t, "backer-board")
	delete(f.zone.facts, "tile.thickness")
	f.item(schema.ScopeEdge, "door").set("edge.rise_allowed", quantity.Point(0.75))
	p := f.run()
	short := p.facts["path.height_short"]
	if got := p.Named(short.Deps); words(short) != "open" || len(got) == 0 || got[0].Field != "tile.thickness" {
		t.Errorf("short %s on %v", words(short), got)
	}
	f.zone.lists[schema.ScopeEdge][0].set("edge.rise_allowed", quantity.Point(0.25))
	if p = f.run(); words(p.facts["path.height_short"]) != "yes" {
		t.Error("no tile is thin enough for that")
	}
}

// TestRoomGainedByRemoval: what comes out gives its thickness to the build.
func TestRoomGainedByRemoval(t *testing.T) {
	f := tiled(t, "backer-board")
	f.item(schema.ScopeLayer, "l1").words("layer.stays", "no").set("layer.thickness", quantity.Point(0.75))
	edge := f.item(schema.ScopeEdge, "door").set("edge.rise_allowed", quantity.Point(0.25))
	p := f.run()
	if left := p.facts["path.height_left"].Set.Range; math.Abs(left.Lo-(1-leastBuild["backer-board"])) > 1e-12 {
		t.Errorf("left %v", left)
	}
	edge.set("edge.rise_with_removal", quantity.Point(1.5))
	if p = f.run(); math.Abs(p.facts["path.height_left"].Set.Range.Lo-(1-leastBuild["backer-board"])) > 1e-12 {
		t.Errorf("a contradiction is left aside: %v", p.facts["path.height_left"].Set.Range)
	}
	edge.set("edge.rise_allowed", quantity.Everything)
	if p = f.run(); math.Abs(p.facts["path.height_left"].Set.Range.Lo-(1.5-leastBuild["backer-board"])) > 1e-12 {
		t.Errorf("counted from the bared base: %v", p.facts["path.height_left"].Set.Range)
	}
	layers := f.zone.lists[schema.ScopeLayer]
	f.zone.lists[schema.ScopeLayer] = nil
	if p = f.run(); words(p.facts["path.height_short"]) == "no" {
		t.Error("where no layer lies none is bared, and the room is as open as it was answered")
	}
	f.zone.lists[schema.ScopeLayer] = layers
	edge.set("edge.rise_allowed", quantity.Point(0.25))
	f.open(schema.ScopeLayer)
	if p = f.run(); math.Abs(p.facts["path.height_left"].Set.Range.Lo-(1-leastBuild["backer-board"])) > 1e-12 {
		t.Error("a layer nobody has named may stay: the base is not bare")
	}
	f.zone.lists[schema.ScopeLayer][0].words("layer.stays", "yes")
	if p = f.run(); words(p.facts["path.height_short"]) != "yes" {
		t.Error("a layer that stays gives nothing")
	}
}

// TestAddedWeight: ceramic 11.2 psf per inch, thin bed 2 psf, board 1/2 in
// 3 psf on 2 psf of mortar, mat 1.2 psf (all from memory).
func TestAddedWeight(t *testing.T) {
	for path, want := range map[string]float64{"direct-bond": 3.5 + 2, "backer-board": 3.5 + 2 + 3 + 2, "uncouple": 3.5 + 2 + 1.2} {
		f := tiled(t, path)
		p := f.run()
		if got := p.facts["path.added_weight"]; math.Abs(got.Set.Range.Lo-want) > 1e-9 || !got.Set.Range.IsPoint() || got.Deps != nil {
			t.Errorf("%s: %+v, want %v", path, got, want)
		}
		if c := f.checks["path.added_weight"]; c == nil || c.Outcome != result.CheckOpen || c.Margin.Hi >= 0 {
			t.Errorf("%s: over 5 psf is to be added up: %+v", path, c)
		}
	}
}

func TestStepsAreNoBases(t *testing.T) {
	f := tiled(t, "remove")
	p := f.run()
	if words(p.facts["path.is_base"]) != "no" || p.facts["path.added_weight"].Presence.Truth != logic.No || len(f.checks) != 0 && f.checks["path.height_left"] != nil {
		t.Errorf("%+v", p.facts)
	}
}

// TestBuildUpForAReader: every layer with the range of its products, and the
// usual tile where its thickness is not said.
func TestBuildUpForAReader(t *testing.T) {
	f := tiled(t, "backer-board")
	delete(f.zone.facts, "tile.thickness")
	b := BuildUp(figure.For("us", quantity.US), f.path)
	if b.Path != result.BackerBoard || len(b.Layers) != 4 || b.Layers[0].Thickness != quantity.Point(5.0/16) {
		t.Fatalf("%+v", b)
	}
	want := quantity.Range{Lo: leastBuild["backer-board"], Hi: 5.0/16 + 3.0/16 + 1.0/2 + 1.0/8}
	if math.Abs(b.Height.Lo-want.Lo) > 1e-12 || math.Abs(b.Height.Hi-want.Hi) > 1e-12 || !b.Weight.Bounded() {
		t.Errorf("height %v, want %v; weight %v", b.Height, want, b.Weight)
	}
	for _, l := range b.Layers {
		if l.Source.Title == "" || l.Source.Known == "" {
			t.Errorf("%s has no source", l.Name)
		}
	}
}
