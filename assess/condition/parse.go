package condition

import "underfoot/assess/message"

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
//	comparison = sum [("==" | "!=" | "<" | "<=" | ">" | ">=") sum | ["not"] "in" (set | list)]
//	sum        = product {("+" | "-") product}
//	product    = unary {("*" | "/") unary}
//	unary      = {"!" | "-"} primary
//	primary    = topic.field | figure.id | number | text | condition | "(" or ")"
//	list       = "[" (text | set) {"," (text | set)} "]"
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
		log.add(0, message.New("condition/empty.what"), message.New("condition/empty.hint"))
		return p.bad()
	}
	tree := p.or()
	for p.tok.kind != tokEnd {
		tree = p.resume(tree, "&&", "||", ")")
	}
	if p.full {
		return p.bad()
	}
	return tree
}

// resume refuses what follows a complete part, and reads on behind it and
// behind the signs that could join what comes next.
func (p *parser) resume(tree *node, joints ...string) *node {
	if p.startsOperand() {
		p.log.add(p.tok.at, message.New("condition/no_sign.what"), message.New("condition/no_sign.hint"))
	} else {
		p.stray()
		p.skip()
	}
	for p.tok.is(joints...) {
		p.advance()
	}
	if p.tok.kind == tokEnd || p.tok.is(")") {
		return tree
	}
	return &node{op: opAnd, at: tree.at, kids: []*node{tree, p.or()}}
}

// ahead is the token behind this one.
func (p *parser) ahead() token {
	l := p.lex
	l.log = &problemLog{src: l.log.src, at: l.log.at} // what is wrong there is told when it is read
	return l.next()
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
		p.overflow(message.New("condition/bound.parts", "most", maxNodes))
	}
	return &node{op: o, at: at, sign: at, kids: kids}
}

func (p *parser) bad() *node { return &node{op: opBad, at: p.tok.at, sign: p.tok.at} }

func (p *parser) overflow(what message.Message) {
	if !p.full {
		p.log.add(p.tok.at, what, message.New("condition/bound.hint"))
		p.full = true
		p.tok = token{kind: tokEnd, at: p.tok.at, end: p.tok.at}
	}
}

func (p *parser) unary() *node {
	o := opNot
	switch {
	case p.tok.is("-"):
		o = opNeg
	case p.tok.kind == tokName && p.tok.text == "not":
		p.log.add(p.tok.at, message.New("condition/word_not.what"), message.New("condition/word_not.hint"))
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
		p.overflow(message.New("condition/bound.depth", "most", maxDepth))
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
	p.missing("operand")
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
	for !p.tok.is(")") {
		if p.tok.kind == tokEnd {
			p.unclosed(open, "(", ")")
			return n
		}
		n = p.resume(n, "&&", "||")
	}
	p.advance()
	return n
}
