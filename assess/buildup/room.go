package buildup

import (
	"underfoot/assess/logic"
	"underfoot/assess/quantity"
	"underfoot/assess/result"
	"underfoot/assess/schema"
)

// A room is how far the floor may rise at one edge, in inches.
type room struct {
	rise quantity.Range
	deps logic.Deps
}

// removal is what comes out before the new floor is laid.
type removal struct {
	thickness quantity.Range // in, of everything that does not stay
	all       bool           // there are layers, and for certain none of them stays
	deps      logic.Deps
}

// readRemoval adds up the layers that come out. Layers nobody has named stay
// below the others and may be there or not.
func readRemoval(path result.Thing) removal {
	layers := path.Items(schema.ScopeLayer)
	r := removal{all: len(layers) > 0}
	for _, item := range layers {
		stays, thick := item.Fact("layer.stays"), item.Fact("layer.thickness")
		out := stays.Among(schema.SetNo.Mask)
		r.all = r.all && out.Truth == logic.Yes
		if out.Truth == logic.No {
			continue
		}
		t := thick.Set.Range.Meet(quantity.AtLeast(0))
		if out.Truth == logic.Open {
			t.Lo = 0
		}
		r.thickness = r.thickness.Add(t)
		r.deps = r.deps.Union(out.Deps).Union(thick.Deps)
	}
	r.all = r.all && path.Rest(schema.ScopeLayer) == nil
	return r
}

// at is the room at an edge. The answer counts from the floor as it lies;
// what comes out is gained. Where nothing stays, the answer counted from the
// bared base narrows it; where the two contradict each other it is left aside.
func (r removal) at(edge result.Thing) room {
	allowed, bared := edge.Fact("edge.rise_allowed"), edge.Fact("edge.rise_with_removal")
	rise := room{allowed.Set.Range.Add(r.thickness), allowed.Deps.Union(r.deps)}
	if !r.all || bared.Set.Range == quantity.Everything {
		return rise
	}
	both := rise.rise.Meet(bared.Set.Range)
	if both.IsEmpty() {
		return rise
	}
	return room{both, rise.deps.Union(bared.Deps)}
}
