package condition

import (
	"strconv"
	"strings"
	"unicode/utf8"

	"underfoot/assess/message"
	"underfoot/assess/plaintext"
)

// A kind is the kind of a token.
type kind uint8

const (
	tokEnd kind = iota
	tokName
	tokNumber
	tokString
	tokSign // an operator or a bracket
	tokBad  // reported already
)

// A token is one word of a condition. Text is the name, the number as written,
// the string without its quotes, or the sign.
type token struct {
	kind    kind
	at, end int
	text    string
}

// is reports whether the token is one of the signs.
func (t token) is(signs ...string) bool {
	if t.kind != tokSign {
		return false
	}
	for _, s := range signs {
		if t.text == s {
			return true
		}
	}
	return false
}

// isWord reports whether the token is the name.
func (t token) isWord(name string) bool { return t.kind == tokName && t.text == name }

// signs are tried in order, longer ones first.
var signs = [...]string{"||", "&&", "==", "!=", "<=", ">=", "<", ">", "!", "=", "(", ")", "[", "]", ",", "+", "-", "*", "/", ".", "?", ":", "&", "|"}

// A lexer cuts a condition into tokens.
type lexer struct {
	src string
	pos int
	log *problemLog
}

func (l *lexer) next() token {
	for l.pos < len(l.src) && strings.IndexByte(" \t\r\n\f", l.src[l.pos]) >= 0 {
		l.pos++
	}
	if l.pos == len(l.src) {
		return token{kind: tokEnd, at: l.pos, end: l.pos}
	}
	switch c := l.src[l.pos]; {
	case isLetter(c):
		return l.run(tokName, isWordByte)
	case isDigit(c), c == '.' && l.pos+1 < len(l.src) && isDigit(l.src[l.pos+1]):
		return l.number()
	case c == '"', c == '\'':
		return l.quoted(c)
	}
	for _, s := range signs {
		if strings.HasPrefix(l.src[l.pos:], s) {
			return l.take(tokSign, len(s))
		}
	}
	return l.strange()
}

// take is the token of the next n bytes.
func (l *lexer) take(k kind, n int) token {
	t := token{kind: k, at: l.pos, end: l.pos + n, text: l.src[l.pos : l.pos+n]}
	l.pos += n
	return t
}

func (l *lexer) run(k kind, in func(byte) bool) token {
	n := 0
	for l.pos+n < len(l.src) && in(l.src[l.pos+n]) {
		n++
	}
	return l.take(k, n)
}

// number reads digits, a fraction and an exponent. What runs on into letters
// is a unit without quotes or another notation, and is refused whole.
func (l *lexer) number() token {
	rest := l.src[l.pos:]
	n := digits(rest)
	if n < len(rest) && rest[n] == '.' && digits(rest[n+1:]) > 0 {
		n += 1 + digits(rest[n+1:])
	}
	if n < len(rest) && (rest[n] == 'e' || rest[n] == 'E') {
		m := n + 1
		if m < len(rest) && (rest[m] == '+' || rest[m] == '-') {
			m++
		}
		if d := digits(rest[m:]); d > 0 {
			n = m + d
		}
	}
	if n < len(rest) && isWordByte(rest[n]) {
		t := l.run(tokBad, func(c byte) bool { return isWordByte(c) || c == '.' })
		l.log.add(t.at, message.New("condition/not_a_number.what", "text", t.text), message.New("condition/not_a_number.hint"))
		return t
	}
	return l.take(tokNumber, n)
}

// quoted reads a text in quotes, which ends on its own line.
func (l *lexer) quoted(quote byte) token {
	start := l.pos
	line, _, _ := strings.Cut(l.src[start+1:], "\n")
	n := strings.IndexByte(line, quote)
	if n < 0 {
		l.pos = start + 1 + len(line)
		l.log.add(start, message.New("condition/open_quote.what"), message.New("condition/open_quote.hint", "quote", string(quote)))
		return token{kind: tokBad, at: start, end: l.pos}
	}
	text := line[:n]
	l.pos = start + n + 2
	t := token{kind: tokString, at: start, end: l.pos, text: text}
	if i := strings.IndexFunc(text, mayNotQuote); i >= 0 {
		l.log.add(start+1+i, message.New("condition/text_character.what"), message.New("condition/text_character.hint"))
		t.kind = tokBad
	}
	return t
}

// mayNotQuote reports whether a text in quotes may not hold the character.
func mayNotQuote(r rune) bool {
	return r == '\\' || r == '\t' || r == utf8.RuneError || plaintext.Hidden(r)
}

// strange refuses a character that means nothing here.
func (l *lexer) strange() token {
	r, n := utf8.DecodeRuneInString(l.src[l.pos:])
	hint := message.New("condition/strange.hint")
	if strings.ContainsRune("“”„‘’‚«»", r) {
		hint = message.New("condition/strange.quote")
	}
	l.log.add(l.pos, message.New("condition/strange.what", "character", strconv.QuoteRune(r)), hint)
	return l.take(tokBad, n)
}

func digits(s string) int {
	n := 0
	for n < len(s) && isDigit(s[n]) {
		n++
	}
	return n
}

func isDigit(c byte) bool    { return '0' <= c && c <= '9' }
func isLetter(c byte) bool   { return 'a' <= c && c <= 'z' || 'A' <= c && c <= 'Z' || c == '_' }
func isWordByte(c byte) bool { return isLetter(c) || isDigit(c) }
