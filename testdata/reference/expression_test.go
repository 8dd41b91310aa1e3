package reference

import (
	"strconv"
	"strings"
)

// An expression is a random condition or a part of one. It is written in two
// forms that differ in their literals alone: ours has quantities with units and
// numbers as they are, the reference has doubles in base units.
type expression struct {
	sign     string // operator, or empty for a name or literal
	strength int    // how tightly it binds, by the grammar of CEL
	kids     []expression
	ours     string
	theirs   string
	brackets bool // written in brackets that it may not need
}

// The strengths of CEL's operators (Common Expression Language specification,
// langdef.md, table of operator precedence).
const (
	bindsOr = iota + 1
	bindsAnd
	bindsRelation
	bindsSum
	bindsProduct
	bindsUnary
	bindsName
)

// leaf is a name or literal; theirs is empty where both forms are the same.
func leaf(ours, theirs string) expression {
	if theirs == "" {
		theirs = ours
	}
	return expression{strength: bindsName, ours: ours, theirs: theirs}
}

func literal(v float64) string {
	s := strconv.FormatFloat(v, 'g', -1, 64)
	if !strings.ContainsAny(s, ".e") {
		s += ".0"
	}
	return s
}

// texts are both forms of the expression, in brackets where it binds less than
// least.
func (e expression) texts(least int) (ours, theirs string) {
	switch {
	case e.sign == "":
		ours, theirs = e.ours, e.theirs
	case len(e.kids) == 1:
		a, b := e.kids[0].texts(e.strength)
		ours, theirs = e.sign+a, e.sign+b
	default:
		ours, theirs = e.joined()
	}
	if e.brackets && e.sign != "" || e.strength < least {
		return "(" + ours + ")", "(" + theirs + ")"
	}
	return ours, theirs
}

// joined binds to the left: a - (b - c) needs its brackets. Comparisons do not
// chain, so that both their sides bind tighter.
func (e expression) joined() (ours, theirs string) {
	a, b := make([]string, len(e.kids)), make([]string, len(e.kids))
	for i, k := range e.kids {
		least := e.strength
		if i > 0 || e.strength == bindsRelation {
			least++
		}
		a[i], b[i] = k.texts(least)
	}
	sign := " " + e.sign + " "
	return strings.Join(a, sign), strings.Join(b, sign)
}
