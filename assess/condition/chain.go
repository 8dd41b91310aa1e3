package condition

import "underfoot/assess/message"

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
		p.log.add(p.tok.at, message.New("condition/joins_nothing.what", "sign", p.tok.text), message.New("condition/joins_nothing.hint", "sign", o.String()))
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
	switch {
	case p.tok.isWord("in"):
		return opIn, true
	case p.tok.isWord("not") && p.ahead().isWord("in"):
		return opNotIn, true
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
		p.log.add(p.tok.at, message.New("condition/chained.what"), message.New("condition/chained.hint"))
		p.relate(o, p.bad())
		n.op = opBad
	}
}

func (p *parser) relate(o op, left *node) *node {
	n := p.node(o, left.at, left)
	n.sign = p.tok.at
	if p.tok.is("=") {
		p.log.add(p.tok.at, message.New("condition/single_equal.what"), message.New("condition/single_equal.hint"))
	}
	p.advance()
	if o == opNotIn {
		p.advance()
	}
	if o == opIn || o == opNotIn {
		n.kids = append(n.kids, p.among())
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
