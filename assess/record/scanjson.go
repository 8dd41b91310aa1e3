package record

import (
	"bytes"
	"encoding/json"
	"unicode/utf8"

	"go.yaml.in/yaml/v4"
)

// scanJSON is the tree of a JSON text, the same that the YAML parser would
// give, but sooner: whole batches of records come as JSON. It is nil
// for all that is not plainly JSON, which the YAML parser then reads or
// refuses with better words.
func scanJSON(data []byte) *yaml.Node {
	s := &jsonScanner{data: data, line: 1}
	s.space()
	if s.peek() != '{' {
		return nil
	}
	root := s.value(0)
	if s.space(); root == nil || s.pos != len(s.data) {
		return nil
	}
	return &yaml.Node{Kind: yaml.DocumentNode, Line: root.Line, Column: root.Column, Content: []*yaml.Node{root}}
}

type jsonScanner struct {
	data  []byte
	pos   int
	line  int
	start int // of the line
}

// peek is the next byte, or 0 at the end.
func (s *jsonScanner) peek() byte {
	if s.pos < len(s.data) {
		return s.data[s.pos]
	}
	return 0
}

func (s *jsonScanner) space() {
	for ; s.pos < len(s.data); s.pos++ {
		switch s.data[s.pos] {
		case '\n':
			s.line, s.start = s.line+1, s.pos+1
		case ' ', '\t', '\r':
		default:
			return
		}
	}
}

// take passes a byte, where it is the next one, and the space after it.
func (s *jsonScanner) take(b byte) bool {
	if s.peek() != b {
		return false
	}
	s.pos++
	s.space()
	return true
}

func (s *jsonScanner) node(kind yaml.Kind, tag string, style yaml.Style) *yaml.Node {
	return &yaml.Node{Kind: kind, Tag: tag, Style: style, Line: s.line, Column: utf8.RuneCount(s.data[s.start:s.pos]) + 1}
}

// value reads one value and the space after it; nil where there is none.
func (s *jsonScanner) value(depth int) *yaml.Node {
	if depth > maxDepth+1 {
		return nil
	}
	switch s.peek() {
	case '{':
		return s.collection(s.node(yaml.MappingNode, "!!map", yaml.FlowStyle), '}', depth)
	case '[':
		return s.collection(s.node(yaml.SequenceNode, "!!seq", yaml.FlowStyle), ']', depth)
	case '"':
		return s.text()
	}
	return s.literal()
}

// collection reads what stands between brackets.
func (s *jsonScanner) collection(n *yaml.Node, end byte, depth int) *yaml.Node {
	s.take(s.peek())
	if s.take(end) {
		return n
	}
	for {
		if n.Kind == yaml.MappingNode {
			key := s.text()
			if key == nil || !s.take(':') {
				return nil
			}
			n.Content = append(n.Content, key)
		}
		v := s.value(depth + 1)
		if v == nil {
			return nil
		}
		n.Content = append(n.Content, v)
		if s.take(end) {
			return n
		}
		if !s.take(',') {
			return nil
		}
	}
}

// text reads a string in quotes.
func (s *jsonScanner) text() *yaml.Node {
	if s.peek() != '"' {
		return nil
	}
	n := s.node(yaml.ScalarNode, "!!str", yaml.DoubleQuotedStyle)
	from := s.pos
	for s.pos++; s.peek() != '"'; s.pos++ {
		switch s.peek() {
		case 0, '\n':
			return nil
		case '\\':
			s.pos++
		}
	}
	s.pos++
	quoted := s.data[from:s.pos]
	s.space()
	if bytes.IndexByte(quoted, '\\') < 0 {
		n.Value = string(quoted[1 : len(quoted)-1])
		return n
	}
	if json.Unmarshal(quoted, &n.Value) != nil {
		return nil
	}
	return n
}

// literal reads a number, true, false or null.
func (s *jsonScanner) literal() *yaml.Node {
	n := s.node(yaml.ScalarNode, "!!int", 0)
	from := s.pos
	for s.pos < len(s.data) && bytes.IndexByte([]byte("{}[],: \t\r\n\""), s.data[s.pos]) < 0 {
		s.pos++
	}
	word := s.data[from:s.pos]
	if !json.Valid(word) {
		return nil
	}
	switch n.Value = string(word); {
	case n.Value == "null":
		n.Tag = "!!null"
	case n.Value == "true" || n.Value == "false":
		n.Tag = "!!bool"
	case bytes.ContainsAny(word, ".eE"):
		n.Tag = "!!float"
	}
	s.space()
	return n
}
