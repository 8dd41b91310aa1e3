package formula

import (
	"fmt"
	"math"
	"strings"

	"underfoot/assess/quantity"
)

// An End is one end of a range.
type End bool

// The two ends.
const (
	Low  End = false
	High End = true
)

// Other is the opposite end.
func (e End) Other() End { return !e }

// Of is the value at that end of a range.
func (e End) Of(r quantity.Range) float64 {
	if e == High {
		return r.Hi
	}
	return r.Lo
}

// pick is the spreadsheet function that finds the end among candidates.
func (e End) pick(candidates ...string) string {
	if e == High {
		return "MAX(" + strings.Join(candidates, ",") + ")"
	}
	return "MIN(" + strings.Join(candidates, ",") + ")"
}

// A CellOf gives the cell that holds one end of a named line, such as D7.
type CellOf func(name string, end End) string

// Cells is a line as a spreadsheet formula, without the equals sign, that
// computes one end of its range from the cells of the lines above: the end of
// each operand that gives it, and MIN or MAX over both where the signs leave
// that open. It is empty for an input, for a line that the sheet does not
// have, and where the end, or a cell that it would need, is not known.
func (s *Sheet) Cells(name string, cell CellOf, end End) string {
	l, ok := s.Line(name)
	if !ok || l.Expr == "" || math.IsInf(end.Of(l.Value), 0) {
		return ""
	}
	known := true
	text := parsed(l.Expr).cells(s, func(name string, end End) string {
		known = known && !math.IsInf(end.Of(s.value(name)), 0)
		return cell(name, end)
	}, end)
	if !known {
		return ""
	}
	return text
}

func (n number) cells(*Sheet, CellOf, End) string { return n.text }

func (n name) cells(_ *Sheet, cell CellOf, end End) string { return cell(string(n), end) }

func (n group) cells(s *Sheet, cell CellOf, end End) string {
	return "(" + n.inner.cells(s, cell, end) + ")"
}

func (n binary) cells(s *Sheet, cell CellOf, end End) string {
	a, b := n.left.eval(s), n.right.eval(s)
	other := end.Other()
	switch {
	case n.op == '/' && b.Contains(0):
		return "NA()"
	case n.op == '+', n.op == '*' && a.Lo >= 0 && b.Lo >= 0:
		return n.join(s, cell, end, end)
	case n.op == '-', n.op == '/' && a.Lo >= 0 && b.Lo > 0:
		return n.join(s, cell, end, other)
	case a.IsPoint() && b.IsPoint():
		return n.join(s, cell, end, end)
	}
	return end.pick(n.join(s, cell, Low, Low), n.join(s, cell, Low, High), n.join(s, cell, High, Low), n.join(s, cell, High, High))
}

func (n binary) join(s *Sheet, cell CellOf, left, right End) string {
	return n.left.cells(s, cell, left) + string(n.op) + n.right.cells(s, cell, right)
}

func (n power) cells(s *Sheet, cell CellOf, end End) string {
	x, e := n.base.eval(s), n.exponent
	raised := func(of End) string {
		base := n.base.cells(s, cell, of)
		if !whole(e) && x.Lo < 0 {
			base = "MAX(0," + base + ")"
		}
		return fmt.Sprintf("(%s)^%s", base, n.text.numbers(s))
	}
	switch even := whole(e) && math.Mod(e, 2) == 0; {
	case e < 0 && x.Lo <= 0:
		return "NA()"
	case e < 0:
		return raised(end.Other())
	case x.Lo >= 0 || !even:
		return raised(end)
	case x.Contains(0) && end == Low:
		return "0"
	}
	return end.pick(raised(Low), raised(High))
}

func (n call) cells(s *Sheet, cell CellOf, end End) string {
	args := make([]string, len(n.args))
	for i, a := range n.args {
		args[i] = a.cells(s, cell, end)
	}
	if n.fn == "sqrt" && n.args[0].eval(s).Lo < 0 {
		args[0] = "MAX(0," + args[0] + ")"
	}
	return inSpreadsheet[n.fn] + "(" + strings.Join(args, ",") + ")"
}

// inSpreadsheet are the functions by the names that every spreadsheet knows.
var inSpreadsheet = map[string]string{"min": "MIN", "max": "MAX", "sqrt": "SQRT", "normal": "NORMSDIST"}
