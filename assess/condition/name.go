package condition

import (
	"slices"

	"underfoot/assess/message"
	"underfoot/assess/schema"
)

// reserved are the words that CEL keeps for itself.
var reserved = []string{"true", "false", "null", "in", "as", "break", "const", "continue", "else", "for", "function", "if", "import", "let",
	"loop", "package", "namespace", "return", "var", "void", "while"}

// name reads topic.field, figure.id or the name of a condition.
func (p *parser) name() *node {
	n := p.node(opFact, p.tok.at)
	if p.full {
		return p.bad()
	}
	words := []string{p.word()}
	for p.tok.is(".") {
		p.advance()
		if p.tok.kind != tokName {
			p.missing("name")
			n.op = opBad
			return n
		}
		words = append(words, p.word())
	}
	if !p.tok.is("(") {
		p.nameFault(n, words)
	}
	if p.tok.is("(", "[") {
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
	hint := message.New("condition/name.hint")
	for _, w := range words {
		if slices.Contains(reserved, w) {
			n.op = opBad
			if w == "true" || w == "false" {
				hint = message.New("condition/reserved.truth")
			}
			p.log.add(n.at, message.New("condition/reserved.what", "word", w), hint)
			return
		}
	}
	switch {
	case len(words) == 1:
		n.op, n.text = opPart, words[0]
	case len(words) > 2:
		n.op = opBad
		p.log.add(n.at, message.New("condition/name.long"), message.New("condition/name.short", "name", shortName(words)))
	case words[0] == "figure":
		n.op, n.text = opFigure, words[1]
	default:
		n.text = words[0] + "." + words[1]
	}
}

// shortName is topic and field of a longer address.
func shortName(words []string) string {
	n := len(words)
	if _, ok := schema.TopicScope(words[n-2]); ok {
		return words[n-2] + "." + words[n-1]
	}
	return words[n-3] + "." + words[n-1]
}

// among reads what stands behind `in`: the name of a set, or a list.
func (p *parser) among() *node {
	if p.isSet() {
		return p.node(opList, p.tok.at, p.literal(opSet))
	}
	return p.list()
}

// isSet reports whether the token is a name without a dot behind it.
func (p *parser) isSet() bool { return p.tok.kind == tokName && !p.ahead().is(".", "(") }

// list reads words and sets in brackets.
func (p *parser) list() *node {
	n := p.node(opList, p.tok.at)
	if !p.tok.is("[") {
		p.missing("list")
		return p.bad()
	}
	p.advance()
	for !p.full {
		switch {
		case p.tok.kind == tokString:
			n.kids = append(n.kids, p.literal(opText))
		case p.isSet():
			n.kids = append(n.kids, p.literal(opSet))
		default:
			p.listFault(n)
			return p.bad()
		}
		switch {
		case p.tok.is("]"):
			p.advance()
			return n
		case p.tok.is(","):
			p.advance()
		case p.tok.kind == tokString, p.isSet():
			p.log.add(p.tok.at, message.New("condition/no_comma.what"), message.New("condition/no_comma.hint"))
		}
	}
	return p.bad()
}

// listFault says what is wrong with a list and goes on behind it.
func (p *parser) listFault(n *node) {
	switch {
	case p.tok.is("]") && len(n.kids) == 0:
		p.log.add(n.at, message.New("condition/empty_list.what"), message.New("condition/empty_list.hint"))
	case p.tok.kind == tokEnd:
		p.unclosed(n.at, "[", "]")
	case p.tok.kind != tokBad:
		p.log.add(p.tok.at, message.New("condition/list_form.what"), message.New("condition/list_form.hint"))
	}
	for p.tok.kind != tokEnd && !p.tok.is("]", "&&", "||") {
		p.advance()
	}
	if p.tok.is("]") {
		p.advance()
	}
}
