package condition

import (
	"fmt"
	"slices"
)

// The bounds of one condition, so that a foreign pack cannot cost much.
const (
	maxBytes = 4096
	maxNodes = 400
	maxDepth = 40
)

// A parser reads the grammar
//
//	or         = and {"||" and}
//	and        = comparison {"&&" comparison}
//	comparison = sum [("==" | "!=" | "<" | "<=" | ">" | ">=") sum | "in" list]
//	sum        = product {("+" | "-") product}
//	product    = unary {("*" | "/") unary}
//	unary      = {"!" | "-"} primary
//	primary    = topic.field | figure.id | number | text | "(" or ")"
//	list       = "[" text {"," text} "]"
//
// After a mistake it goes on behind the next &&, || or closing bracket, so that
// one reading finds them all.
type parser struct {
	lex   lexer
	tok   token
	log   *problemLog
	nodes int
	depth int
	full  bool // a bound is passed: nothing more is read
}

func parse(src string, log *problemLog) *node {
	p := &parser{lex: lexer{src: src, log: log}, log: log}
	p.advance()
	if p.tok.kind == tokEnd {
		log.add(0, "the condition is empty", "say what must hold, such as layer.tight == \"no\"")
		return p.bad()
	}
	tree := p.or()
	for p.tok.kind != tokEnd {
		tree = p.resume(tree)
	}
	if p.full {
		return p.bad()
	}
	return tree
}

// resume refuses what follows a complete condition, and reads on behind it.
func (p *parser) resume(tree *node) *node {
	p.stray()
	p.skip()
	for p.tok.is(")", "&&", "||") {
		p.advance()
	}
	if p.tok.kind == tokEnd {
		return tree
	}
	return &node{op: opAnd, at: tree.at, kids: []*node{tree, p.or()}}
}

func (p *parser) advance() {
	p.tok = p.lex.next()
	if p.full {
		p.tok = token{kind: tokEnd, at: p.tok.at, end: p.tok.at}
	}
}

// node makes a node and counts it.
func (p *parser) node(o op, at int, kids ...*node) *node {
	if p.nodes++; p.nodes > maxNodes {
		p.overflow("the condition has more than 400 parts")
	}
	return &node{op: o, at: at, sign: at, kids: kids}
}

func (p *parser) bad() *node { return &node{op: opBad, at: p.tok.at, sign: p.tok.at} }

func (p *parser) overflow(what string) {
	if !p.full {
		p.log.add(p.tok.at, what, "make two rules of it, or a tally")
		p.full = true
		p.tok = token{kind: tokEnd, at: p.tok.at, end: p.tok.at}
	}
}

func (p *parser) or() *node  { return p.chain(opOr, "|", "or", p.and) }
func (p *parser) and() *node { return p.chain(opAnd, "&", "and", p.comparison) }

// chain reads operands joined by one sign into one flat node.
func (p *parser) chain(o op, half, word string, operand func() *node) *node {
	n := operand()
	for first := true; p.joins(o, half, word); first = false {
		if first {
			sign := p.tok.at
			n = p.node(o, n.at, n)
			n.sign = sign
		}
		p.advance()
		n.kids = append(n.kids, operand())
	}
	return flat(n, o)
}

// joins reports whether the token is the sign, or a slip for it.
func (p *parser) joins(o op, half, word string) bool {
	slip := p.tok.is(half) || p.tok.kind == tokName && p.tok.text == word
	if slip {
		p.log.add(p.tok.at, fmt.Sprintf("%s joins nothing here", p.tok.text), "write "+o.String())
	}
	return slip || p.tok.is(o.String())
}

// flat takes up the parts of nested chains of the same sign.
func flat(n *node, o op) *node {
	if n.op != o {
		return n
	}
	var kids []*node
	for _, k := range n.kids {
		if k.op == n.op {
			kids = append(kids, k.kids...)
		} else {
			kids = append(kids, k)
		}
	}
	n.kids = kids
	return n
}

var comparisons = map[string]op{"==": opEqual, "!=": opUnequal, "<": opLess, "<=": opAtMost, ">": opMore, ">=": opAtLeast, "=": opEqual}

// comparing is the comparison that the token stands for.
func (p *parser) comparing() (op, bool) {
	if p.tok.kind == tokName && p.tok.text == "in" {
		return opIn, true
	}
	if p.tok.kind != tokSign {
		return opBad, false
	}
	o, ok := comparisons[p.tok.text]
	return o, ok
}

func (p *parser) comparison() *node {
	left := p.sum()
	o, ok := p.comparing()
	if !ok {
		return left
	}
	n := p.relate(o, left)
	for {
		if o, ok = p.comparing(); !ok {
			return n
		}
		p.log.add(p.tok.at, "comparisons cannot be chained", "join two comparisons with &&")
		p.relate(o, p.bad())
		n.op = opBad
	}
}

func (p *parser) relate(o op, left *node) *node {
	n := p.node(o, left.at, left)
	n.sign = p.tok.at
	if p.tok.is("=") {
		p.log.add(p.tok.at, "= does not compare", "write ==")
	}
	p.advance()
	if o == opIn {
		n.kids = append(n.kids, p.list())
	} else {
		n.kids = append(n.kids, p.sum())
	}
	return n
}

func (p *parser) sum() *node     { return p.arithmetic(p.product, "+", opAdd, "-", opSub) }
func (p *parser) product() *node { return p.arithmetic(p.unary, "*", opMul, "/", opDiv) }

func (p *parser) arithmetic(operand func() *node, signA string, a op, signB string, b op) *node {
	left := operand()
	for p.tok.is(signA, signB) {
		o, sign := a, p.tok.at
		if p.tok.is(signB) {
			o = b
		}
		p.advance()
		right := operand()
		left = p.node(o, left.at, left, right)
		left.sign = sign
	}
	return left
}

func (p *parser) unary() *node {
	o := opNot
	switch {
	case p.tok.is("-"):
		o = opNeg
	case !p.tok.is("!"):
		return p.primary()
	}
	at := p.tok.at
	if !p.enter() {
		return p.bad()
	}
	defer p.leave()
	p.advance()
	return p.node(o, at, p.unary())
}

// enter counts one more level of brackets or signs.
func (p *parser) enter() bool {
	if p.depth++; p.depth > maxDepth {
		p.overflow("the condition is nested more than 40 deep")
	}
	return !p.full
}

func (p *parser) leave() { p.depth-- }

func (p *parser) primary() *node {
	t := p.tok
	switch {
	case t.kind == tokName:
		return p.name()
	case t.kind == tokNumber:
		return p.literal(opNumber)
	case t.kind == tokString:
		return p.literal(opText)
	case t.is("("):
		return p.group()
	}
	p.missing("a fact or a value is missing")
	return p.bad()
}

func (p *parser) literal(o op) *node {
	t := p.tok
	n := p.node(o, t.at)
	n.text = t.text
	p.advance()
	return n
}

func (p *parser) group() *node {
	if !p.enter() {
		return p.bad()
	}
	defer p.leave()
	open := p.tok.at
	p.advance()
	n := p.or()
	if !p.tok.is(")") {
		if p.tok.kind == tokEnd {
			if !p.full {
				p.log.add(open, "the bracket ( is not closed", "add )")
			}
			return n
		}
		p.stray()
		p.skip()
	}
	if p.tok.is(")") {
		p.advance()
	}
	return n
}

// list reads the words behind `in`.
func (p *parser) list() *node {
	n := p.node(opList, p.tok.at)
	if !p.tok.is("[") {
		p.missing("the list of words is missing")
		return p.bad()
	}
	p.advance()
	for !p.full {
		if p.tok.kind != tokString {
			p.listFault(n)
			return p.bad()
		}
		n.kids = append(n.kids, p.literal(opText))
		switch {
		case p.tok.is("]"):
			p.advance()
			return n
		case p.tok.is(","):
			p.advance()
		case p.tok.kind == tokString:
			p.log.add(p.tok.at, "a comma is missing before this word", "separate the words of a list with commas")
		}
	}
	return p.bad()
}

// listFault says what is wrong with a list and goes on behind it.
func (p *parser) listFault(n *node) {
	switch {
	case p.tok.is("]") && len(n.kids) == 0:
		p.log.add(n.at, "the list is empty", "name at least one word")
	case p.tok.kind == tokEnd:
		if !p.full {
			p.log.add(n.at, "the bracket [ is not closed", "add ]")
		}
	case p.tok.kind != tokBad:
		p.log.add(p.tok.at, "a list holds words in quotes, with commas between them", "such as [\"plywood\", \"osb\"]")
	}
	for p.tok.kind != tokEnd && !p.tok.is("]", "&&", "||") {
		p.advance()
	}
	if p.tok.is("]") {
		p.advance()
	}
}

// reserved are the words that CEL keeps for itself.
var reserved = []string{"true", "false", "null", "in", "as", "break", "const", "continue", "else", "for", "function", "if", "import", "let",
	"loop", "package", "namespace", "return", "var", "void", "while"}

// name reads topic.field or figure.id.
func (p *parser) name() *node {
	n := p.node(opFact, p.tok.at)
	if p.full {
		return p.bad()
	}
	words := []string{p.word()}
	for p.tok.is(".") {
		p.advance()
		if p.tok.kind != tokName {
			p.missing("a name is missing behind the dot")
			n.op = opBad
			return n
		}
		words = append(words, p.word())
	}
	p.nameFault(n, words)
	if p.tok.is("(") || p.tok.is("[") {
		p.trailing(n)
	}
	return n
}

func (p *parser) word() string {
	w := p.tok.text
	p.advance()
	return w
}

// nameFault fills in the name, or says why it is none.
func (p *parser) nameFault(n *node, words []string) {
	hint := "write topic.field, such as joist.span"
	for _, w := range words {
		if slices.Contains(reserved, w) {
			n.op = opBad
			if w == "true" || w == "false" {
				hint = "leave it out, or compare a fact with \"yes\" or \"no\""
			}
			p.log.add(n.at, w+" is a reserved word and names no fact", hint)
			return
		}
	}
	switch {
	case len(words) == 1:
		n.op = opBad
		if !p.tok.is("(") {
			p.log.add(n.at, words[0]+" is not a fact: a fact has a topic and a field", oneWordHint(words[0], hint))
		}
	case len(words) > 2:
		n.op = opBad
		p.log.add(n.at, "a condition uses the short name of a fact, without area, zone or item", "write "+words[len(words)-3]+"."+words[len(words)-1])
	case words[0] == "figure":
		n.op, n.text = opFigure, words[1]
	default:
		n.text = words[0] + "." + words[1]
	}
}

func oneWordHint(w, hint string) string {
	switch w {
	case "not":
		return "write !"
	case "yes", "no":
		return "write the word in quotes: \"" + w + "\""
	}
	return hint
}

// trailing refuses a call or an index and goes on behind its brackets.
func (p *parser) trailing(n *node) {
	n.op = opBad
	if p.tok.is("(") {
		p.log.add(n.at, "there are no functions in a condition", "compare a fact, or make a tally of what you need")
	} else {
		p.log.add(p.tok.at, "a fact has no parts to pick from", "make a rule of the item's scope, or a tally")
	}
	p.balance()
}

// balance skips one pair of brackets with all that it holds.
func (p *parser) balance() {
	for open := 0; p.tok.kind != tokEnd; {
		switch {
		case p.tok.is("(", "["):
			open++
		case p.tok.is(")", "]"):
			open--
		}
		p.advance()
		if open == 0 {
			return
		}
	}
}

// missing says that something should stand at the token, and goes on behind
// what stands there instead.
func (p *parser) missing(what string) {
	if p.full {
		return
	}
	switch {
	case p.tok.kind == tokBad:
	case p.tok.kind == tokEnd:
		p.log.add(p.tok.at, what+" at the end", "complete the comparison, or remove the last sign")
	case p.tok.is("["):
		p.log.add(p.tok.at, "a list stands only behind in", "write topic.field in [\"...\"]")
	default:
		p.log.add(p.tok.at, fmt.Sprintf("%s before %s", what, p.tok.text), "complete the comparison")
	}
	p.skip()
}

// stray refuses a token that follows a complete part.
func (p *parser) stray() {
	if p.full || p.tok.kind == tokBad {
		return
	}
	what, hint := fmt.Sprintf("%s is not expected here", p.tok.text), "join two comparisons with && or ||"
	switch {
	case p.tok.is("?", ":"):
		what, hint = "there is no choice of the form a ? b : c", "write two rules"
	case p.tok.is(")", "]"):
		hint = "remove it, or add the opening bracket"
	case p.tok.is("["):
		what, hint = "a list stands only behind in", "write topic.field in [\"...\"]"
	case p.tok.is(","):
		hint = "a comma stands only in a list"
	}
	p.log.add(p.tok.at, what, hint)
}

// skip goes on to the next sign that can follow a complete part.
func (p *parser) skip() {
	for p.tok.kind != tokEnd && !p.tok.is("&&", "||", ")") {
		p.advance()
	}
}
