package formula

import (
	"fmt"
	"strconv"
	"strings"
	"sync"
)

// The language: numbers, names, + - * / ^, parentheses, min(), max(), sqrt()
// and normal(), the share of a standard normal distribution below x. The operators bind as in a spreadsheet: ^ before * and / before + and
// -, each from left to right; a leading minus is written 0 - x.

// maxDepth bounds nesting, so that no text can exhaust the stack.
const maxDepth = 50

var known sync.Map // expression text to node

// parsed reads an expression, once for the life of the program.
func parsed(expr string) node {
	if n, ok := known.Load(expr); ok {
		return n.(node)
	}
	n, err := parse(expr)
	if err != nil {
		panic("formula: " + err.Error())
	}
	known.Store(expr, n)
	return n
}

// parse reads an expression; the error names the column, counted from 1.
func parse(expr string) (node, error) {
	p := &parser{text: expr}
	n, err := p.sum(0)
	if err != nil {
		return nil, err
	}
	if p.skip(); p.at < len(p.text) {
		return nil, p.fail("an operator")
	}
	return n, nil
}

type parser struct {
	text string
	at   int
}

func (p *parser) fail(want string) error {
	return fmt.Errorf("%q: %s wanted at column %d", p.text, want, p.at+1)
}

func (p *parser) skip() {
	for p.at < len(p.text) && p.text[p.at] == ' ' {
		p.at++
	}
}

// next takes the next character if it is one of those given.
func (p *parser) next(of string) (c byte, ok bool) {
	p.skip()
	if p.at < len(p.text) && strings.IndexByte(of, p.text[p.at]) >= 0 {
		p.at++
		return p.text[p.at-1], true
	}
	return 0, false
}

func (p *parser) sum(depth int) (node, error) {
	return p.chain("+-", depth, p.product)
}

func (p *parser) product(depth int) (node, error) {
	return p.chain("*/", depth, p.power)
}

// chain reads operands of one strength, joined from left to right.
func (p *parser) chain(ops string, depth int, operand func(int) (node, error)) (node, error) {
	left, err := operand(depth)
	if err != nil {
		return nil, err
	}
	for {
		op, ok := p.next(ops)
		if !ok {
			return left, nil
		}
		right, err := operand(depth)
		if err != nil {
			return nil, err
		}
		left = binary{op, left, right}
	}
}

// power reads an operand raised to a constant; a power of a power needs parentheses.
func (p *parser) power(depth int) (node, error) {
	base, err := p.operand(depth)
	if err != nil {
		return nil, err
	}
	if _, ok := p.next("^"); !ok {
		return base, nil
	}
	exponent, err := p.operand(depth)
	if err != nil {
		return nil, err
	}
	n, ok := constant(exponent)
	if !ok {
		return nil, p.fail("a constant exponent")
	}
	return power{base, n, exponent}, nil
}

func (p *parser) operand(depth int) (node, error) {
	if depth >= maxDepth {
		return nil, p.fail("a flatter expression")
	}
	if _, ok := p.next("("); ok {
		inner, err := p.sum(depth + 1)
		if err != nil {
			return nil, err
		}
		return group{inner}, p.expect(")")
	}
	p.skip()
	switch word := p.word(); {
	case word == "":
		return nil, p.fail("number, name, parenthesis")
	case word[0] == '.' || '0' <= word[0] && word[0] <= '9':
		v, err := strconv.ParseFloat(word, 64)
		if err != nil {
			return nil, p.fail("a number, not " + word)
		}
		return number{v, word}, nil
	case strings.Contains(word, "."):
		return nil, p.fail("name without point")
	default:
		if _, ok := p.next("("); ok {
			return p.call(word, depth)
		}
		return name(word), nil
	}
}

func (p *parser) call(fn string, depth int) (node, error) {
	var args []node
	for {
		arg, err := p.sum(depth + 1)
		if err != nil {
			return nil, err
		}
		args = append(args, arg)
		if _, more := p.next(","); !more {
			break
		}
	}
	if fn != "min" && fn != "max" && fn != "sqrt" && fn != "normal" || (fn == "sqrt" || fn == "normal") && len(args) != 1 {
		return nil, p.fail("min(...), max(...), sqrt(x) or normal(x)")
	}
	return call{fn, args}, p.expect(")")
}

func (p *parser) expect(c string) error {
	if _, ok := p.next(c); !ok {
		return p.fail(c)
	}
	return nil
}

// word takes letters, digits, underscores and points.
func (p *parser) word() string {
	start := p.at
	for p.at < len(p.text) {
		c := p.text[p.at]
		if c != '_' && c != '.' && (c < '0' || c > '9') && (c < 'a' || c > 'z') && (c < 'A' || c > 'Z') {
			break
		}
		p.at++
	}
	return p.text[start:p.at]
}

// constant is the value of an operand made of numbers alone.
func constant(n node) (v float64, ok bool) {
	switch n := n.(type) {
	case number:
		return n.value, true
	case group:
		return constant(n.inner)
	case binary:
		a, aok := constant(n.left)
		b, bok := constant(n.right)
		switch n.op {
		case '+':
			return a + b, aok && bok
		case '-':
			return a - b, aok && bok
		case '*':
			return a * b, aok && bok
		}
		return a / b, aok && bok && b != 0
	}
	return 0, false
}
