package facts_test

import (
	"math/bits"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"underfoot/assess"
	"underfoot/assess/logic"
	"underfoot/assess/quantity"
	"underfoot/assess/schema"
)

// The cracks of the table: a slab, and which cracks there are.
var (
	closed = []string{"zone.base = slab-on-ground", "crack.complete = yes"}
	open   = []string{"zone.base = slab-on-ground"}
	thin   = []string{"crack.c1.kind = crack", "crack.c1.width = 1/16 in"}
	wide   = []string{"crack.c2.kind = crack", "crack.c2.width = 1/4 in"}
	dim    = []string{"crack.c3.kind = crack", "crack.c3.width = not sure"}
	vague  = []string{"crack.c4.kind = crack, saw-cut", "crack.c4.width = 3/4 in"}
	joint  = []string{"crack.c5.kind = saw-cut", "crack.c5.width = 1 in"}
)

// Every row of the fold table, with a closed list and with things that nobody
// has named.
func TestFolds(t *testing.T) {
	join := slices.Concat[[]string]
	for _, tt := range []struct {
		fact, name string
		lines      []string
		want       string
	}{
		{"floor.any_wide", "a proven yes", join(closed, thin, wide), "yes"},
		{"floor.any_wide", "a proven yes, whatever else there is", join(open, thin, wide, dim), "yes"},
		{"floor.any_wide", "all proven no", join(closed, thin), "no"},
		{"floor.any_wide", "none at all", closed, "no"},
		{"floor.any_wide", "one open", join(closed, thin, dim), "anything <- crack.c3.width"},
		{"floor.any_wide", "a rest", join(open, thin), "anything <- crack.complete"},
		{"floor.any_wide", "one open, and a rest", join(open, dim), "anything <- crack.complete, crack.c3.width"},
		{"floor.any_on_joists", "no of the rest too", join(open, thin), "no"},
		{"floor.any_on_slab", "yes of any item, but the rest may be none", open, "anything <- crack.complete"},
		{"floor.any_on_slab", "yes of an item that is there", join(open, thin), "yes"},
		{"floor.any_wide_crack", "one that takes no part", join(closed, joint), "no"},
		{"floor.any_wide_crack", "one that only may take part", join(closed, vague), "anything <- crack.c4.kind"},

		{"floor.all_thin", "a proven no", join(closed, thin, wide), "no"},
		{"floor.all_thin", "a proven no, whatever else there is", join(open, dim, wide), "no"},
		{"floor.all_thin", "all proven yes", join(closed, thin), "yes"},
		{"floor.all_thin", "none at all", closed, "yes"},
		{"floor.all_thin", "one open", join(closed, thin, dim), "anything <- crack.c3.width"},
		{"floor.all_thin", "a rest", join(open, thin), "anything <- crack.complete"},
		{"floor.all_on_slab", "yes of the rest too", join(open, wide), "yes"},

		{"floor.count_wide", "settled", join(closed, thin, wide), "1"},
		{"floor.count_wide", "none at all", closed, "0"},
		{"floor.count_wide", "one open", join(closed, wide, dim), "1 to 2 <- crack.c3.width"},
		{"floor.count_wide", "a rest", join(open, thin, wide), "at least 1 <- crack.complete"},
		{"floor.count_on_joists", "no of the rest too", join(open, wide), "0"},

		{"floor.sum", "as declared where nothing is said", join(closed, thin, wide), "2"},
		{"floor.sum", "more than one of a line", join(closed, thin, []string{"crack.c1.count = 3 to 5"}, wide), "4 to 6 <- crack.c1.count"},
		{"floor.sum", "one that only may take part", join(closed, thin, vague), "1 to 2 <- crack.c4.kind"},
		{"floor.sum", "one that takes no part", join(closed, thin, joint), "1"},
		{"floor.sum", "none at all", closed, "0"},
		{"floor.sum", "a rest", join(open, thin), "at least 1 <- crack.complete"},
		{"floor.sum_on_joists", "no of the rest too", join(open, thin), "0"},

		{"floor.most", "settled", join(closed, thin, wide), "1/4 in"},
		{"floor.most", "one that takes no part", join(closed, thin, joint), "1/16 in"},
		{"floor.most", "one that only may take part", join(closed, wide, vague), "1/4 to 3/4 in <- crack.c4.kind"},
		{"floor.most", "one not measured", join(closed, wide, dim), "at least 1/4 in <- crack.c3.width"},
		{"floor.most", "none at all", closed, "absent"},
		{"floor.most", "only one that may take part", join(closed, vague), "maybe anything <- crack.c4.kind"},
		{"floor.most", "a rest", join(open, wide), "at least 1/4 in <- crack.complete"},
		{"floor.most", "nothing but a rest", open, "maybe anything <- crack.complete"},
		{"floor.most_on_joists", "no of the rest too", join(open, wide), "absent"},

		{"floor.least", "settled", join(closed, thin, wide), "1/16 in"},
		{"floor.least", "one that only may take part", join(closed, join([]string{"crack.c4.kind = crack, saw-cut", "crack.c4.width = 1/32 in"}, thin)), "1/32 to 1/16 in <- crack.c4.kind"},
		{"floor.least", "none at all", closed, "absent"},
		{"floor.least", "a rest", join(open, wide), "0 to 1/4 in <- crack.complete"},
		{"floor.least_on_joists", "no of the rest too", join(open, wide), "absent"},
	} {
		t.Run(tt.fact+"/"+tt.name, func(t *testing.T) {
			_, zone := theWorld().floor(t, tt.lines...)
			if got := theWorld().show(zone, tt.fact); got != tt.want {
				t.Errorf("%q\nwant %q", got, tt.want)
			}
		})
	}
}

func TestFirst(t *testing.T) {
	for _, tt := range []struct {
		name  string
		lines []string
		want  string
	}{
		{"top item", []string{"layer.l1.kind = carpet", "layer.l2.kind = linoleum", "layer.complete = yes"}, "carpet"},
		{"a rest lies below the top", []string{"layer.l1.kind = carpet"}, "carpet"},
		{"top comes out", []string{"layer.l1.kind = carpet", "layer.l1.coming_out = yes", "layer.l2.kind = linoleum", "layer.complete = yes"}, "linoleum"},
		{"all come out", []string{"layer.l1.kind = carpet", "layer.l1.coming_out = yes", "layer.complete = yes"}, "bare"},
		{"closed and empty", []string{"layer.complete = yes"}, "bare"},
		{"nothing named", nil, "anything <- layer.complete"},
		{"top is one of two", []string{"layer.l1.kind = carpet, cork", "layer.complete = yes"}, "cork, carpet <- layer.l1.kind"},
		{"top may come out", []string{"layer.l1.kind = carpet", "layer.l1.coming_out = not sure", "layer.l2.kind = linoleum", "layer.complete = yes"},
			"linoleum, carpet <- layer.l1.coming_out"},
		{"the only one may come out", []string{"layer.l1.kind = carpet", "layer.l1.coming_out = not sure", "layer.complete = yes"},
			"carpet, bare <- layer.l1.coming_out"},
	} {
		t.Run(tt.name, func(t *testing.T) {
			_, zone := theWorld().floor(t, tt.lines...)
			if got := theWorld().show(zone, "floor.top_kind"); got != tt.want {
				t.Errorf("%q\nwant %q", got, tt.want)
			}
		})
	}
}

// The field of the top layer: absent where the layer has no such field, open
// where it is not said which layer is the top.
func TestFirstOfAFieldThatMayNotApply(t *testing.T) {
	for _, tt := range []struct {
		name  string
		lines []string
		want  string
	}{
		{"applies", []string{"layer.l1.kind = linoleum", "layer.l1.tight = yes", "layer.complete = yes"}, "yes"},
		{"not said", []string{"layer.l1.kind = linoleum", "layer.complete = yes"}, "anything <- layer.l1.tight"},
		{"does not apply", []string{"layer.l1.kind = laminate", "layer.complete = yes"}, "absent"},
		{"no layer", []string{"layer.complete = yes"}, "absent"},
		{"may apply", []string{"layer.l1.kind = linoleum, laminate", "layer.l1.tight = yes", "layer.complete = yes"}, "maybe yes <- layer.l1.kind"},
		{"no layer named", nil, "maybe anything <- layer.complete"},
	} {
		t.Run(tt.name, func(t *testing.T) {
			_, zone := theWorld().floor(t, tt.lines...)
			if got := theWorld().show(zone, "floor.top_tight"); got != tt.want {
				t.Errorf("%q\nwant %q", got, tt.want)
			}
		})
	}
}

// crack draws a crack: settled, or with one field blurred.
func crack(t *rapid.T, name string) assess.Item {
	kind := uint64(1) << rapid.IntRange(0, 2).Draw(t, name+" kind")
	width := float64(rapid.IntRange(0, 8).Draw(t, name+" width")) / 32
	return assess.Item{ID: name, Answers: assess.Answers{
		"crack.kind":  {Set: schema.Set{Mask: kind}},
		"crack.width": {Set: schema.Set{Range: quantity.Point(width)}},
		"crack.count": {Set: schema.Set{Range: quantity.Point(float64(rapid.IntRange(1, 4).Draw(t, name+" count")))}},
	}}
}

// blur forgets or widens answers of an item.
func blur(t *rapid.T, it assess.Item) assess.Item {
	out := assess.Item{ID: it.ID, Answers: assess.Answers{}}
	for _, name := range []string{"crack.count", "crack.kind", "crack.width"} {
		a := it.Answers[name]
		switch rapid.IntRange(0, 3).Draw(t, it.ID+" blur of "+name) {
		case 0:
			a = assess.Answer{Reply: assess.NotSure}
		case 1:
			a.Set.Mask |= a.Set.Mask << 1 & 7
			a.Set.Range.Hi += a.Set.Range.Lo
		}
		out.Answers[name] = a
	}
	return out
}

// What a tally says of a half-known list holds in every list that it may turn
// out to be, with up to two more items; what it says is settled stays as it is.
func TestTallyHoldsInEveryCompletion(t *testing.T) {
	w := theWorld()
	rapid.Check(t, func(t *rapid.T) {
		zone := assess.Zone{ID: "main", Answers: assess.Answers{"zone.base": {Set: schema.Set{Mask: 1 << rapid.SampledFrom([]int{2, 3}).Draw(t, "base")}}}}
		full := zone.Clone()
		for i := range rapid.IntRange(0, 3).Draw(t, "cracks") {
			it := crack(t, string(rune('a'+i)))
			full.Lists[schema.ScopeCrack] = append(full.Lists[schema.ScopeCrack], it)
			zone.Lists[schema.ScopeCrack] = append(zone.Lists[schema.ScopeCrack], blur(t, it))
		}
		full.Answers["crack.complete"] = assess.Answer{Set: schema.SetYes}
		if rapid.Bool().Draw(t, "open list") {
			for i := range rapid.IntRange(0, 2).Draw(t, "more cracks") {
				full.Lists[schema.ScopeCrack] = append(full.Lists[schema.ScopeCrack], crack(t, string(rune('x'+i))))
			}
		} else {
			zone.Answers["crack.complete"] = assess.Answer{Set: schema.SetYes}
		}
		some, all := w.zone(zone), w.zone(full)
		for _, x := range trials {
			id, _ := w.catalogue.Schema().Lookup(x.id)
			d, a, b := w.catalogue.Schema().Decl(id), some.Fact(id), all.Fact(id)
			if a.Presence.Truth != logic.Open && a.Presence.Truth != b.Presence.Truth {
				t.Fatalf("%s was there or not for certain: %+v, then %+v", x.id, a, b)
			}
			if b.Presence.Truth == logic.Yes && !b.Set.Within(a.Set, d.Kind) {
				t.Fatalf("%s: %+v does not hold %+v", x.id, a, b)
			}
			settled := a.Presence.Truth == logic.No || a.Presence.Truth == logic.Yes && a.Set.Settled(d.Kind)
			if settled != (len(a.Deps.Union(a.Presence.Deps)) == 0) {
				t.Fatalf("%s depends on answers if and only if it is not settled: %+v", x.id, a)
			}
			if d.Kind == schema.KindYesNo && bits.OnesCount64(b.Set.Mask) != 1 {
				t.Fatalf("%s is not settled in a floor of which all is known: %+v", x.id, b)
			}
		}
	})
}

// zone is one zone, filled.
func (w *world) zone(z assess.Zone) interface {
	Fact(schema.FactID) schema.Fact
} {
	job := &assess.Job{Visited: "2026-05-04", Areas: []assess.Area{{ID: "the-room", Zones: []assess.Zone{z}}}}
	return w.plan.Fill(job, "").Zones[0][0]
}
