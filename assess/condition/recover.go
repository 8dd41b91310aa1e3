package condition

import "fmt"

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

// startsOperand reports whether the token begins a name, a value or a bracket.
func (p *parser) startsOperand() bool {
	return p.tok.kind == tokName || p.tok.kind == tokNumber || p.tok.kind == tokString || p.tok.is("(", "!")
}

// unclosed refuses a bracket that stays open to the end.
func (p *parser) unclosed(at int, open, close string) {
	if !p.full {
		p.log.add(at, "the bracket "+open+" is not closed", "add "+close)
	}
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
