package rules

import (
	"testing"

	"underfoot/assess"
	"underfoot/assess/quantity"
	"underfoot/assess/schema"
)

// worse lists hazards and defects whose values have an order: words from
// harmless to worst, or for a quantity 1 where more is worse and -1 where less
// is.
var worse = map[string]any{
	"danger.sagging_now": yesIsWorse, "danger.support_lost": yesIsWorse, "danger.gas": yesIsWorse, "danger.burning": yesIsWorse,
	"danger.co_alarm": yesIsWorse, "danger.live_water": yesIsWorse, "danger.sewage": yesIsWorse,
	"zone.soft_underfoot": yesIsWorse, "zone.noise": yesIsWorse, "work.remove_support": yesIsWorse, "work.fasten_through": yesIsWorse,
	"water.leak": yesIsWorse, "water.leak_cured": []string{"yes", "no"}, "water.puddle": yesIsWorse, "water.efflorescence": yesIsWorse, "water.damp": yesIsWorse,
	"water.rot": yesIsWorse, "water.wet_sag": yesIsWorse, "water.after_sewage": yesIsWorse,
	"joist.cut": yesIsWorse, "joist.insects": yesIsWorse, "joist.short_bearing": yesIsWorse, "joist.loose_posts": yesIsWorse,
	"joist.support_removed": yesIsWorse, "joist.notched": []string{"none", "within-limits", "beyond-limits"},
	"joist.bounce":     []string{"none-felt", "slight", "strong"},
	"layer.lab_result": []string{"none-found", "not-tested", "asbestos"},
	"layer.tight":      []string{"yes", "no"}, "layer.cushioned": yesIsWorse, "layer.cracked": yesIsWorse,
	"layer.crumbling": yesIsWorse, "layer.wet": yesIsWorse, "layer.hollow_share": 1.0,
	"deck.loose": yesIsWorse, "deck.delaminated": yesIsWorse,
	"crack.width": 1.0, "crack.step": yesIsWorse, "crack.growing": yesIsWorse, "crack.into_walls": yesIsWorse,
	"slab.moved": yesIsWorse, "slab.rh": 1.0, "slab.mver": 1.0, "slab.film_test": []string{"clear", "wet"},
	"water.wood_moisture": 1.0, "water.framing_moisture": 1.0, "water.mould_area": 1.0,
	"zone.sag": 1.0, "flat.gap_10ft": 1.0, "joist.known_ratio": -1.0,
	"site.piers_firm": []string{"yes", "no"}, "beam.covered": []string{"yes", "no"}, "service.mapped": []string{"yes", "no"},
	"zone.earlier_tile": []string{"none", "fine", "broke-cause-known", "broke-cause-unknown"}, "zone.drop": 1.0,
	"zone.drop_cause_known": []string{"yes", "no"}, "work.penetrate": yesIsWorse,
}

var yesIsWorse = []string{"no", "yes"}

// TestWorseNeverLowers: a worse value of any hazard or defect never lowers
// either end of the span.
func TestWorseNeverLowers(t *testing.T) {
	e := openUS(t)
	trials(t, e, 6000, func(t *testing.T, g floorplan) {
		j := g.job(one(g, 30, 90, 100))
		var places []slot
		for _, s := range slots(e, j) {
			if worse[s.decl.ID] != nil {
				places = append(places, s)
			}
		}
		s := one(g, places...)
		better, bad := pair(g, s.decl)
		j.Put(s.addr, assess.Answer{Set: better, Basis: assess.Document})
		before := evaluate(e, j)
		j.Put(s.addr, assess.Answer{Set: bad, Basis: assess.Document})
		after := evaluate(e, j)
		if after.Span.Low < before.Span.Low || after.Span.High < before.Span.High {
			t.Fatalf("%s from %v to the worse %v lowered the span %v to %v", s.addr, better, bad, before.Span, after.Span)
		}
	})
}

func pair(g floorplan, d *schema.Declaration) (better, bad schema.Set) {
	switch order := worse[d.ID].(type) {
	case []string:
		i := g.Intn(len(order) - 1)
		k := i + 1 + g.Intn(len(order)-i-1)
		b, _ := d.ChoiceBit(order[i])
		w, _ := d.ChoiceBit(order[k])
		return schema.Set{Mask: b}, schema.Set{Mask: w}
	case float64:
		x, y := g.value(d).Range.Lo, g.value(d).Range.Lo
		if (x > y) == (order > 0) {
			x, y = y, x
		}
		return schema.Set{Range: quantity.Point(x)}, schema.Set{Range: quantity.Point(y)}
	}
	panic("a hazard without an order: " + d.ID)
}
