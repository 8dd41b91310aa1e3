package workbook

import (
	"fmt"
	"math"

	"underfoot/assess/formula"
	"underfoot/assess/quantity"
	"underfoot/reports"
)

// The columns of a calculation.
const (
	whatColumn = iota + 1
	nameColumn
	unitColumn
	lowColumn
	highColumn
	exportedLow
	exportedHigh
	compareColumn
	sourceColumn
)

var sumWidths = []int{32, 16, 9, 14, 14, 14, 14, 20, 18}

// calculation writes a sum line by line: inputs as numbers to change, results as
// formulas over them, what the report said beside them, and whether both agree.
// A last row holds the result against its limit.
func (s *sheet) calculation(c *reports.Calculation) {
	s.heads(lowColumn, s.say("report/column.what"), s.say("report/column.name"), s.say("report/column.unit"), s.say("report/workbook.low"), s.say("report/workbook.high"),
		s.say("report/workbook.exported_low"), s.say("report/workbook.exported_high"), s.say("report/workbook.compare"), s.say("report/column.source"))
	for i := range c.Sheet.Lines {
		l := &c.Sheet.Lines[i]
		s.row++
		what, source := c.Lines[i].What, c.Lines[i].Source
		s.text(whatColumn, what, bodyLook)
		s.text(nameColumn, l.Name, bodyLook)
		s.text(unitColumn, l.Unit, bodyLook)
		s.ends(c, l)
		s.compare(l.Value)
		s.text(sourceColumn, source, bodyLook)
		s.height(max(lines(what, sumWidths[whatColumn-1]), lines(source, sumWidths[sourceColumn-1])))
	}
	s.limit(c)
}

// heads writes the headings; the four columns from the given one hold numbers.
func (s *sheet) heads(from int, texts ...string) {
	s.row++
	for i, text := range texts {
		s.text(i+1, text, headLook)
	}
	for i := range 4 {
		s.dress(s.at(from+i), numberHead)
	}
	s.height(2)
}

// ends writes the two ends of a line. The high end of an input with one value
// follows the low one, so that a single cell is changed.
func (s *sheet) ends(c *reports.Calculation, l *formula.Line) {
	cell := func(name string, end formula.End) string { return endName(c.ID, name, end) }
	for _, end := range []formula.End{formula.Low, formula.High} {
		column, value := lowColumn, end.Of(l.Value)
		if end == formula.High {
			column = highColumn
		}
		text := c.Sheet.Cells(l.Name, cell, end)
		switch {
		case math.IsInf(value, 0) || l.Expr != "" && text == "":
			s.text(column, s.say("report/view.not_known"), unknownLook)
			continue
		case l.Expr != "":
			s.formula(column, text, value, numberLook)
		case end == formula.High && l.Value.IsPoint():
			s.formula(column, endName(c.ID, l.Name, formula.Low), value, numberLook)
		default:
			s.number(column, value, inputLook)
		}
		s.define(endName(c.ID, l.Name, end), column)
	}
}

// endName is the defined name of one end of a line, such as sum_2_span_high.
func endName(calculation, line string, end formula.End) string {
	if end == formula.High {
		return calculation + "_" + line + "_high"
	}
	return calculation + "_" + line + "_low"
}

// compare writes the exported ends and says whether the sheet still gives them.
func (s *sheet) compare(v quantity.Range) {
	test := ""
	for i, end := range []float64{v.Lo, v.Hi} {
		if math.IsInf(end, 0) {
			s.text(exportedLow+i, s.say("report/view.not_known"), unknownLook)
			continue
		}
		s.number(exportedLow+i, end, numberLook)
		now, then := s.at(lowColumn+i), s.at(exportedLow+i)
		if test != "" {
			test += ","
		}
		test += fmt.Sprintf("ABS(%s-%s)<=0.000000001*MAX(1,ABS(%s))", now, then, then)
	}
	if test == "" {
		s.text(compareColumn, "", bodyLook)
		return
	}
	agrees := s.say("report/workbook.agrees")
	s.formula(compareColumn, fmt.Sprintf(`IF(AND(%s),"%s","%s")`, test, agrees, s.say("report/workbook.differs")), agrees, bodyLook)
}

// limit writes the limit and how the result of the last line stands to it.
func (s *sheet) limit(c *reports.Calculation) {
	last := c.Sheet.Lines[len(c.Sheet.Lines)-1]
	s.row++
	s.text(whatColumn, s.say("report/workbook.limit"), markLook)
	s.text(nameColumn, "", bodyLook)
	s.text(unitColumn, last.Unit, bodyLook)
	for i, end := range []float64{c.Limit.Lo, c.Limit.Hi} {
		if math.IsInf(end, 0) {
			s.text(lowColumn+i, s.say("report/view.not_known"), unknownLook)
			continue
		}
		s.number(lowColumn+i, end, numberLook)
	}
	if last.Value.Bounded() && c.Limit.Bounded() {
		s.standing(c, last)
	}
}

// standing is within where every value of the result keeps every value of the
// limit, beyond where none does.
func (s *sheet) standing(c *reports.Calculation, last formula.Line) {
	low, high := endName(c.ID, last.Name, formula.Low), endName(c.ID, last.Name, formula.High)
	within, beyond, open := s.say("report/workbook.within"), s.say("report/workbook.beyond"), s.say("report/workbook.unsettled")
	good, bad := fmt.Sprintf("%s<=%s", high, s.at(lowColumn)), fmt.Sprintf("%s>%s", low, s.at(highColumn))
	keeps, breaks := last.Value.Hi <= c.Limit.Lo, last.Value.Lo > c.Limit.Hi
	if c.AtLeast {
		good, bad = fmt.Sprintf("%s>=%s", low, s.at(highColumn)), fmt.Sprintf("%s<%s", high, s.at(lowColumn))
		keeps, breaks = last.Value.Lo >= c.Limit.Hi, last.Value.Hi < c.Limit.Lo
	}
	result := open
	if keeps {
		result = within
	} else if breaks {
		result = beyond
	}
	s.formula(compareColumn, fmt.Sprintf(`IF(%s,"%s",IF(%s,"%s","%s"))`, good, within, bad, beyond, open), result, markLook)
}
