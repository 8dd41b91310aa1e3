package workbook

import (
	"fmt"
	"math"

	"underfoot/assess/quantity"
	"underfoot/reports"
)

// The columns of a build-up after the layer's name.
const (
	thickLow = iota + 2
	thickHigh
	weightLow
	weightHigh
	readColumn
	layerSource
)

var buildWidths = []int{34, 15, 15, 15, 15, 34, 22}

// build writes a build-up layer by layer, with the sums as formulas over them
// and the sums that the report used below.
func (s *sheet) build(b *reports.Build) {
	s.heads(thickLow, s.say("report/column.layer"), s.say("report/workbook.thick_low"), s.say("report/workbook.thick_high"),
		s.say("report/workbook.weight_low"), s.say("report/workbook.weight_high"), s.say("report/workbook.read"), s.say("report/column.source"))
	first := s.row + 1
	sum := [4]float64{}
	for _, l := range b.Layers {
		s.row++
		s.text(1, l.Name, bodyLook)
		for k, end := range fourEnds(l.Thickness, l.Weight) {
			s.end(thickLow+k, end, decimals(k, inputLook))
			sum[k] += end
		}
		s.text(readColumn, l.Read, bodyLook)
		s.text(layerSource, l.Source, bodyLook)
		s.height(max(lines(l.Name, buildWidths[0]), lines(l.Source, buildWidths[layerSource-1])))
	}
	s.sums(b, first, sum)
}

func fourEnds(thickness, weight quantity.Range) [4]float64 {
	return [4]float64{thickness.Lo, thickness.Hi, weight.Lo, weight.Hi}
}

// decimals are the same for all thicknesses, and for all weights, so that they
// can be read down the column.
func decimals(k int, l cellStyle) cellStyle {
	l.format = [...]string{"0.0000", "0.0000", "0.00", "0.00"}[k]
	return l
}

// end writes one end, or that it is not known.
func (s *sheet) end(column int, v float64, l cellStyle) {
	if math.IsInf(v, 0) {
		s.text(column, s.say("report/view.not_known"), unknownLook)
		return
	}
	s.number(column, v, l)
}

// sums writes the sums of the layers and, below, those that the report used. A
// sum over an end that is not known is not known either.
func (s *sheet) sums(b *reports.Build, first int, sum [4]float64) {
	last := s.row
	s.row++
	s.text(1, s.say("report/heights.sum"), markLook)
	for k, total := range sum {
		if math.IsInf(total, 0) || last < first {
			s.text(thickLow+k, s.say("report/view.not_known"), unknownLook)
			continue
		}
		column := thickLow + k
		s.formula(column, fmt.Sprintf("SUM(%s:%s)", cellName(column, first), cellName(column, last)), total, decimals(k, cellStyle{right: true, bold: true, line: thin}))
		s.define(b.ID+"_"+[...]string{"height_low", "height_high", "weight_low", "weight_high"}[k], column)
	}
	s.row++
	s.text(1, s.say("report/workbook.exported"), bodyLook)
	for k, end := range fourEnds(b.Height, b.Weight) {
		s.end(thickLow+k, end, decimals(k, numberLook))
	}
}
