package condition

import (
	"strings"

	"underfoot/assess/quantity"
)

// An op is what a node of the syntax tree, or of the compiled condition, does.
type op uint8

const (
	opBad op = iota // reported already
	opOr
	opAnd
	opNot
	opEqual
	opUnequal
	opLess
	opAtMost
	opMore
	opAtLeast
	opIn
	opNotIn
	opAdd
	opSub
	opMul
	opDiv
	opNeg
	opFact
	opFigure
	opNumber
	opText
	opList
	opSet  // the name of a set of words
	opPart // the name of a condition
)

var opSigns = [...]string{opOr: "||", opAnd: "&&", opNot: "!", opEqual: "==", opUnequal: "!=", opLess: "<", opAtMost: "<=", opMore: ">",
	opAtLeast: ">=", opIn: "in", opNotIn: "not in", opAdd: "+", opSub: "-", opMul: "*", opDiv: "/", opNeg: "-", opList: ""}

// String is the sign of an operator.
func (o op) String() string { return opSigns[o] }

func (o op) isComparison() bool { return o >= opEqual && o <= opNotIn }
func (o op) isLogic() bool      { return o >= opOr && o <= opNot }

// mirrored is the comparison with its sides exchanged.
func (o op) mirrored() op {
	switch o {
	case opLess:
		return opMore
	case opAtMost:
		return opAtLeast
	case opMore:
		return opLess
	case opAtLeast:
		return opAtMost
	}
	return o
}

// A node is a part of a condition as it was written. A chain of one of && and
// || is one node.
type node struct {
	op   op
	at   int // first byte
	sign int // byte of the operator, where there is one
	kids []*node
	text string // of opFact topic.field, of opFigure, opSet and opPart the id, of opNumber and opText as written

	value float64            // of opFigure, and of opText beside a number: in base units
	dim   quantity.Dimension // of the value
}

// strength is how tightly an operator binds; names and literals bind tightest.
func (o op) strength() int {
	switch {
	case o == opOr:
		return 1
	case o == opAnd:
		return 2
	case o.isComparison():
		return 3
	case o == opAdd, o == opSub:
		return 4
	case o == opMul, o == opDiv:
		return 5
	case o == opNot, o == opNeg:
		return 6
	}
	return 7
}

// canonical is the node's text, in parentheses where it binds less than least.
func (n *node) canonical(least int) string {
	text := n.bare()
	if n.op.strength() < least {
		return "(" + text + ")"
	}
	return text
}

func (n *node) bare() string {
	s := n.op.strength()
	switch n.op {
	case opFact, opNumber, opSet, opPart:
		return n.text
	case opFigure:
		return "figure." + n.text
	case opText:
		return quote(n.text)
	case opList:
		return "[" + join(n.kids, 0, ", ") + "]"
	case opNot, opNeg:
		return n.op.String() + n.kids[0].canonical(s+1)
	case opOr, opAnd:
		return join(n.kids, s+1, " "+n.op.String()+" ")
	}
	return n.kids[0].canonical(s) + " " + n.op.String() + " " + n.kids[1].canonical(s+1)
}

func join(nodes []*node, least int, between string) string {
	parts := make([]string, len(nodes))
	for i, k := range nodes {
		parts[i] = k.canonical(least)
	}
	return strings.Join(parts, between)
}

// quote puts a text in the quotes that it does not hold itself.
func quote(text string) string {
	if strings.Contains(text, `"`) {
		return "'" + text + "'"
	}
	return `"` + text + `"`
}
