package record

import (
	"bytes"
	"errors"
	"fmt"
	"unicode/utf8"

	"go.yaml.in/yaml/v4"

	"underfoot/assess/message"
	"underfoot/assess/plaintext"
)

// What a record may be at most. The record of a large house is some 20 kB, and
// no answer lies more than twelve levels deep.
const (
	maxBytes = 1 << 20
	maxDepth = 24
)

// screenBytes finds what no record may hold, before anything reads it.
func (l *ledger) screenBytes() {
	if len(l.data) > maxBytes {
		l.note(place{1, 1}, message.New("record/size.what", "most", maxBytes>>10), message.New("record/size.hint"))
		return
	}
	line, column := 1, 1
	for rest := bytes.TrimPrefix(l.data, []byte("\ufeff")); len(rest) > 0; {
		r, size := utf8.DecodeRune(rest)
		switch {
		case r == utf8.RuneError && size == 1:
			l.note(place{line, column}, message.New("record/encoding.what"), message.New("record/encoding.hint"))
			return
		case plaintext.Hidden(r) && !(r == '\r' && bytes.HasPrefix(rest[1:], []byte("\n"))):
			l.note(place{line, column}, message.New("record/hidden.here", "code", fmt.Sprintf("U+%04X", r)), message.New("record/hidden.hint"))
		}
		rest, column = rest[size:], column+1
		if r == '\n' {
			line, column = line+1, 1
		}
	}
}

// parse reads the document node of the tree; nil where that fails.
func (l *ledger) parse() *yaml.Node {
	var doc yaml.Node
	err := yaml.Load(asYAML(l.data), &doc)
	var bad *yaml.LoadError
	switch {
	case err == nil && doc.Kind == yaml.DocumentNode && len(doc.Content) == 1:
		return &doc
	case errors.As(err, &bad) && bad.Mark.Line > 0:
		l.note(place{bad.Mark.Line, max(bad.Mark.Column, 1)}, message.New("record/form.yaml", "why", bad.Message), message.New("record/form.check"))
	case bytes.Contains(l.data, []byte("\n---")):
		l.note(place{1, 1}, message.New("record/several.what"), message.New("record/several.hint"))
	default:
		l.note(place{1, 1}, message.New("record/none.what"), message.New("record/none.hint", "format", Format))
	}
	return nil
}

// screenTree finds what the layout of a record has no use for and what could
// mislead: references, tags, deep nesting, keys that stand twice.
func (l *ledger) screenTree(n *yaml.Node, depth int) (sound bool) {
	switch {
	case depth > maxDepth:
		l.note(at(n), message.New("record/deep.what", "most", maxDepth), message.New("record/deep.hint"))
		return false
	case n.Kind == yaml.AliasNode || n.Anchor != "":
		l.note(at(n), message.New("record/reference.what"), message.New("record/reference.hint"))
		return false
	case n.Style&yaml.TaggedStyle != 0:
		l.note(at(n), message.New("record/tag.what"), message.New("record/tag.hint"))
		return false
	case n.Kind == yaml.ScalarNode:
		l.screenText(n)
	}
	sound = true
	if n.Kind == yaml.MappingNode {
		sound = l.screenKeys(n)
	}
	for _, c := range n.Content {
		sound = l.screenTree(c, depth+1) && sound
	}
	return sound
}

func (l *ledger) screenText(n *yaml.Node) {
	for _, r := range n.Value {
		if plaintext.Hidden(r) {
			l.note(at(n), message.New("record/hidden.in_text", "code", fmt.Sprintf("U+%04X", r)), message.New("record/hidden.hint"))
			return
		}
	}
}

func (l *ledger) screenKeys(n *yaml.Node) (sound bool) {
	seen := make(map[string]int, len(n.Content)/2)
	sound = true
	for _, p := range pairs(n) {
		if p.key.Kind != yaml.ScalarNode {
			l.note(at(p.key), message.New("record/key.what"), message.New("record/key.hint"))
			sound = false
			continue
		}
		if line, twice := seen[p.key.Value]; twice {
			l.note(at(p.key), message.New("record/twice.what", "key", p.key.Value, "line", line), message.New("record/twice.hint"))
			continue
		}
		seen[p.key.Value] = p.key.Line
	}
	return sound
}
