package record

import (
	"bytes"
	"errors"
	"fmt"
	"unicode/utf8"

	"go.yaml.in/yaml/v4"

	"underfoot/assess/plaintext"
)

// What a record may be at most. The record of a large house is some 20 kB, and
// no answer lies more than twelve levels deep.
const (
	maxBytes = 1 << 20
	maxDepth = 24
)

const hiddenHint = "delete the character; a record holds plain text"

// screenBytes finds what no record may hold, before anything reads it.
func (l *ledger) screenBytes() {
	if len(l.data) > maxBytes {
		l.note(place{1, 1}, fmt.Sprintf("the file is larger than %d kB", maxBytes>>10),
			"a record holds answers; keep photos and papers in files of their own")
		return
	}
	line, column := 1, 1
	for rest := bytes.TrimPrefix(l.data, []byte("\ufeff")); len(rest) > 0; {
		r, size := utf8.DecodeRune(rest)
		switch {
		case r == utf8.RuneError && size == 1:
			l.note(place{line, column}, "the file is not UTF-8 text", "save it as UTF-8")
			return
		case plaintext.Hidden(r) && !(r == '\r' && bytes.HasPrefix(rest[1:], []byte("\n"))):
			l.note(place{line, column}, fmt.Sprintf("a control character (U+%04X) stands here", r), hiddenHint)
		}
		rest, column = rest[size:], column+1
		if r == '\n' {
			line, column = line+1, 1
		}
	}
}

// parse reads the document node of the tree; nil where that fails.
func (l *ledger) parse() *yaml.Node {
	if tree := scanJSON(l.data); tree != nil {
		return tree
	}
	var doc yaml.Node
	err := yaml.Load(l.data, &doc)
	var bad *yaml.LoadError
	switch {
	case err == nil && doc.Kind == yaml.DocumentNode && len(doc.Content) == 1:
		return &doc
	case errors.As(err, &bad) && bad.Mark.Line > 0:
		l.note(place{bad.Mark.Line, max(bad.Mark.Column, 1)}, "this is not YAML: "+bad.Message,
			"check indentation, brackets and quotes on this line and the one above")
	case bytes.Contains(l.data, []byte("\n---")):
		l.note(place{1, 1}, "the file holds several documents", "keep each record in a file of its own")
	default:
		l.note(place{1, 1}, "the file holds no record", "its first line is: format: "+Format)
	}
	return nil
}

// screenTree finds what the layout of a record has no use for and what could
// mislead: references, tags, deep nesting, keys that stand twice.
func (l *ledger) screenTree(n *yaml.Node, depth int) (sound bool) {
	switch {
	case depth > maxDepth:
		l.note(at(n), fmt.Sprintf("nested more than %d levels deep", maxDepth), "no answer of a record lies deeper than twelve levels")
		return false
	case n.Kind == yaml.AliasNode || n.Anchor != "":
		l.note(at(n), "a record has no references (& and *)", "write the value out, or put it in quotes")
		return false
	case n.Style&yaml.TaggedStyle != 0:
		l.note(at(n), "a record has no tags (!)", "put the value in quotes")
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
			l.note(at(n), fmt.Sprintf("the text holds a control character (U+%04X)", r), hiddenHint)
			return
		}
	}
}

func (l *ledger) screenKeys(n *yaml.Node) (sound bool) {
	seen := make(map[string]int, len(n.Content)/2)
	sound = true
	for _, p := range pairs(n) {
		if p.key.Kind != yaml.ScalarNode {
			l.note(at(p.key), "a key is a single word", "put quotes around a value that starts with { or [")
			sound = false
			continue
		}
		if line, twice := seen[p.key.Value]; twice {
			l.note(at(p.key), fmt.Sprintf("%s stands twice, first in line %d", p.key.Value, line), "keep one of the two")
			continue
		}
		seen[p.key.Value] = p.key.Line
	}
	return sound
}
