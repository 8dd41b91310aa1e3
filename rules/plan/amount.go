package plan

import (
	"slices"
	"strings"

	"underfoot/assess/logic"
	"underfoot/assess/quantity"
	"underfoot/assess/result"
	"underfoot/assess/schema"
	"underfoot/assess/takeoff"
)

// amounts are the materials of a step. What may be suspect gets no list: that
// is for those who are called first.
func (p *Planner) amounts(s *stage, path result.PathID) []result.Quantity {
	if path == result.Remove && slices.Contains(s.paths(), result.TestOrAbate) {
		return nil
	}
	in := takeoff.Input{
		Area: s.zone.Number("room.size"), LongestRun: s.zone.Number("room.longest_run"),
		TileLong: s.zone.Number("tile.long_edge"), TileThickness: s.zone.Number("tile.thickness"),
		TileKinds: s.zone.Words("tile.kind"), CrackLength: quantity.Everything,
		Depth:     quantity.Range{Lo: 0, Hi: s.zone.Number("flat.gap_10ft").Hi},
		AddsPanel: s.addsPanel(), Removed: s.removed(),
	}
	if s.zone.HasChoice("tile.setting", "mortar-bed") {
		in.MortarBed = logic.Yes
	} else if s.zone.HasChoice("tile.setting", "thin-bed") {
		in.MortarBed = logic.No
	}
	if s.shared {
		in.Area.Lo = 0
	}
	return takeoff.For(path, in, p.Describer.Figures)
}

// addsPanel reports whether strengthening lays a panel: a rule calls for it
// that is about the deck.
func (s *stage) addsPanel() bool {
	for i := range s.evaluation.Rulings {
		r := &s.evaluation.Rulings[i]
		if r.Rule.Calls != result.Strengthen || !r.Proven() {
			continue
		}
		for name := range r.Rule.Makes {
			if strings.HasPrefix(name, "panel.") || name == "floor.plywood" {
				return true
			}
		}
	}
	return false
}

// removed are the layers that come up in this round.
func (s *stage) removed() []takeoff.Layer {
	var out []takeoff.Layer
	n := s.takenUp()
	for i, f := range s.zone.Things(schema.ScopeLayer) {
		if f.IsRest() || i >= n && f.Stays().Truth != logic.No {
			continue
		}
		out = append(out, takeoff.Layer{Kinds: f.Words("layer.kind"), Thickness: f.Number("layer.thickness")})
	}
	return out
}
