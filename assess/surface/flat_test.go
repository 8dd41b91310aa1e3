package surface

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"underfoot/assess"
	"underfoot/assess/figure"
	"underfoot/assess/logic"
	"underfoot/assess/quantity"
	"underfoot/assess/result"
	"underfoot/assess/schema"
)

// A zone is a thing with two edges of tile.
type zone struct{ long, short quantity.Range }

func (z zone) Visited() assess.Day { return "" }

func (z zone) Fact(name string) schema.Fact {
	r, ref := z.long, logic.Ref(1)
	if name == "tile.short_edge" {
		r, ref = z.short, 2
	}
	f := schema.Fact{Presence: logic.Proven, Set: schema.Set{Range: r}}
	if !r.IsPoint() {
		f.Deps = logic.DependOn(ref)
	}
	return f
}

func (zone) Items(schema.Scope) []result.Thing { return nil }
func (zone) Rest(schema.Scope) result.Thing    { return nil }
func (zone) ID() string                        { return "main" }
func (zone) Named(logic.Deps) []schema.Address { return nil }

func limit(t *figure.Table, z zone) schema.Fact {
	made, _ := FlatLimit(t).Make(z)
	return made[0]
}

func between(lo, hi float64) quantity.Range { return quantity.Range{Lo: lo, Hi: hi} }

func inches(v float64) quantity.Range { return quantity.Point(v) }

// TestFlatLimit: ANSI A108.02 section 4.2.2, as quoted in trade articles: 1/4 in
// in 10 ft, and 1/8 in where an edge of the tile is 15 in or more.
func TestFlatLimit(t *testing.T) {
	us := figure.For("us", quantity.US)
	for name, c := range map[string]struct {
		tile zone
		want quantity.Range
		deps logic.Deps
	}{
		"small":               {zone{inches(12), inches(6)}, inches(1. / 4), nil},
		"just under 15 in":    {zone{inches(14.99), inches(14.99)}, inches(1. / 4), nil},
		"15 in":               {zone{inches(15), inches(3)}, inches(1. / 8), nil},
		"plank":               {zone{inches(48), inches(8)}, inches(1. / 8), nil},
		"short edge is large": {zone{between(0, 40), inches(16)}, inches(1. / 8), nil},
		"not known":           {zone{quantity.Everything, quantity.Everything}, between(1./8, 1./4), logic.Deps{1}},
		"12 to 24 in":         {zone{between(12, 24), inches(12)}, between(1./8, 1./4), logic.Deps{1}},
	} {
		f := limit(us, c.tile)
		if f.Set.Range != c.want || !slices.Equal(f.Deps, c.deps) || f.Presence.Truth != logic.Yes {
			t.Errorf("%s: %v on %v, want %v on %v", name, f.Set.Range, f.Deps, c.want, c.deps)
		}
	}
}

// TestMissingFigureLeavesTheLimitUnknown: no number is made up.
func TestMissingFigureLeavesTheLimitUnknown(t *testing.T) {
	if f := limit(&figure.Table{}, zone{inches(12), inches(12)}); f.Set.Range != quantity.Everything || f.Deps != nil {
		t.Errorf("%+v", f)
	}
}

// TestEveryTileWithinKeepsItsLimit: what is said of a range of tiles holds for
// each tile in it, and a settled limit depends on nothing.
func TestEveryTileWithinKeepsItsLimit(t *testing.T) {
	us := figure.For("us", quantity.US)
	rapid.Check(t, func(rt *rapid.T) {
		open := zone{drawn(rt, "long"), drawn(rt, "short")}
		long := rapid.Float64Range(open.long.Lo, open.long.Hi).Draw(rt, "long edge")
		one := zone{inches(long), inches(math.Min(long, open.short.Hi))}
		if one.short.Lo < open.short.Lo {
			rt.Skip("the short edge is the longer one")
		}
		all, single := limit(us, open), limit(us, one)
		if !single.Set.Range.Within(all.Set.Range) {
			rt.Fatalf("%v has %v, and %v has %v", one, single.Set.Range, open, all.Set.Range)
		}
		if all.Set.Range.IsPoint() != (all.Deps == nil) {
			rt.Fatalf("%v depends on %v", all.Set.Range, all.Deps)
		}
	})
}

func drawn(t *rapid.T, name string) quantity.Range {
	lo := rapid.Float64Range(1, 40).Draw(t, name+" from")
	return between(lo, lo+rapid.Float64Range(0, 20).Draw(t, name+" width"))
}
