package structure

import (
	"fmt"
	"strings"

	"underfoot/assess/figure"
	"underfoot/assess/message"
	"underfoot/assess/quantity"
	"underfoot/assess/result"
)

// remedies are those that fit the joists.
func remedies(j Joist, w wood) []remedy {
	var all []remedy
	same, shallower, deeper := sisterDepths(j.Depth)
	sister := func(id string, depth, width float64, needs ...message.Message) {
		if depth > 0 {
			all = append(all, sistered(j, w, id, depth, width, append(needs, need("bearing"), need("fast"), need("clear"), need("permit"))))
		}
	}
	sister("sister-shallower", shallower, 1.5)
	sister("sister-same", same, 1.5)
	sister("sister-both-sides", same, 3)
	sister("sister-deeper", deeper, 1.5, need("deeper"))
	all = append(all, between(j, w, same))
	if j.spans() == 1 {
		all = append(all, beamAtMidSpan(j))
	}
	return all
}

// sisterDepths are the dressed depths, in inches, of a sister that fits beside
// a joist of a depth, and of those one size less and one size more; zero
// where there is none.
func sisterDepths(depth quantity.Range) (same, shallower, deeper float64) {
	for _, name := range figure.Sizes() {
		if !strings.HasPrefix(name, "2x") {
			continue
		}
		if _, d, _ := figure.Dressed(name); d <= depth.Lo+1.0/16 {
			same, shallower = d, same
		} else if deeper == 0 && d > depth.Hi {
			deeper = d
		}
	}
	return same, shallower, deeper
}

// nominalDepth is the name of a dressed size of 2 in lumber.
func nominalDepth(depth float64) string {
	for _, name := range figure.Sizes() {
		if _, d, _ := figure.Dressed(name); d == depth && strings.HasPrefix(name, "2x") {
			return name
		}
	}
	return fmt.Sprintf("%g in", depth)
}

// sistered is a joist with a new piece beside it from support to support.
func sistered(j Joist, w wood, id string, depth, width float64, needs []message.Message) remedy {
	x := remedy{id: id, needs: needs}
	x.text = message.New("structure/option.sister", "size", nominalDepth(depth), "wood", w.name)
	if width > 1.5 {
		x.text = message.New("structure/option.sister_both", "size", nominalDepth(depth), "wood", w.name)
	}
	j.Sister = Piece{quantity.Point(width), quantity.Point(depth), w.modulus}
	x.added(j, width*depth, width/1.5)
	return x
}

// between is a new joist half way between every two.
func between(j Joist, w wood, depth float64) remedy {
	x := remedy{id: "joists-between", needs: []message.Message{need("hangers"), need("clear"), need("permit"), need("deck")}}
	if depth == 0 {
		depth = j.Depth.Lo
	}
	x.text = message.New("structure/option.between", "size", nominalDepth(depth), "wood", w.name)
	old := j.Spacing
	x.added(j, 1.5*depth, 1)
	x.joist.Spacing = old.Mul(quantity.Point(0.5))
	x.also = x.joist
	x.also.Width, x.also.Depth, x.also.Modulus, x.also.Softer = quantity.Point(1.5), quantity.Point(depth), w.modulus, nil
	return x
}

// beamAtMidSpan halves the span; live load on one half alone is the worst.
func beamAtMidSpan(j Joist) remedy {
	x := remedy{id: "beam-at-mid-span", needs: []message.Message{need("engineer"), need("footing"), need("one_piece"), need("permit")},
		text: message.New("structure/option.beam")}
	x.joist = j
	x.joist.Span, x.joist.Spans, x.joist.Point = j.Span.Mul(quantity.Point(0.5)), 2, j.Point
	line := j.Live.Add(j.Dead).Mul(j.Span).Mul(quantity.Point(1.25 / 2 / 12))
	x.quantities = []result.Quantity{{Text: message.New("structure/amount.beam"), Value: line, Unit: message.New("structure/amount.beam_unit"),
		Note: message.New("structure/amount.beam_note")}}
	return x
}

// added counts the weight and the length of new pieces; area is their cross
// section in square inches, pieces how many stand at each joist.
func (x *remedy) added(j Joist, area, pieces float64) {
	density := figure.LumberFactor("wood-density")
	x.weight = quantity.Point(area * density.Value / 144 * 12).Div(j.Spacing)
	j.Dead = j.Dead.Add(x.weight)
	x.joist = j
	per := quantity.Point(100 * 12 * pieces).Div(j.Spacing)
	x.quantities = []result.Quantity{
		{Text: message.New("structure/amount.piece"), Value: j.Span.Add(quantity.Point(3)).Mul(quantity.Point(1. / 12)), Unit: message.New("structure/amount.piece_unit")},
		{Text: message.New("structure/amount.lumber"), Value: per, Unit: message.New("structure/amount.lumber_unit"), Note: message.New("structure/amount.no_waste")},
	}
}
