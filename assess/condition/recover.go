package condition

import "underfoot/assess/message"

// trailing refuses a call or an index and goes on behind its brackets.
func (p *parser) trailing(n *node) {
	n.op = opBad
	if p.tok.is("(") {
		p.log.add(n.at, message.New("condition/function.what"), message.New("condition/function.hint"))
	} else {
		p.log.add(p.tok.at, message.New("condition/index.what"), message.New("condition/index.hint"))
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

// missing says that something should stand at the token, a name, a list or an
// operand, and goes on behind what stands there instead.
func (p *parser) missing(part string) {
	if p.full {
		return
	}
	switch {
	case p.tok.kind == tokBad:
	case p.tok.kind == tokEnd:
		p.log.add(p.tok.at, message.New("condition/missing_at_end."+part), message.New("condition/missing.at_end"))
	case p.tok.is("["):
		p.log.add(p.tok.at, message.New("condition/misplaced_list.what"), message.New("condition/misplaced_list.hint"))
	default:
		p.log.add(p.tok.at, message.New("condition/missing_before."+part, "sign", p.tok.text), message.New("condition/missing.before"))
	}
	p.skip()
}

// startsOperand reports whether the token begins a name, a value or a bracket.
func (p *parser) startsOperand() bool {
	return p.tok.kind == tokName || p.tok.kind == tokNumber || p.tok.kind == tokString || p.tok.is("(", "!")
}

// unclosed refuses a bracket that stays open to the end.
func (p *parser) unclosed(at int, open, close string) {
	if !p.full {
		p.log.add(at, message.New("condition/open_bracket.what", "bracket", open), message.New("condition/open_bracket.hint", "bracket", close))
	}
}

// stray refuses a token that follows a complete part.
func (p *parser) stray() {
	if p.full || p.tok.kind == tokBad {
		return
	}
	what, hint := message.New("condition/stray.what", "sign", p.tok.text), message.New("condition/stray.hint")
	switch {
	case p.tok.is("?", ":"):
		what, hint = message.New("condition/ternary.what"), message.New("condition/ternary.hint")
	case p.tok.is(")", "]"):
		hint = message.New("condition/stray.bracket")
	case p.tok.is("["):
		what, hint = message.New("condition/misplaced_list.what"), message.New("condition/misplaced_list.hint")
	case p.tok.is(","):
		hint = message.New("condition/stray.comma")
	}
	p.log.add(p.tok.at, what, hint)
}

// skip goes on to the next sign that can follow a complete part.
func (p *parser) skip() {
	for p.tok.kind != tokEnd && !p.tok.is("&&", "||", ")") {
		p.advance()
	}
}
