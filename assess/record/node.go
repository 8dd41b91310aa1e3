package record

import (
	"slices"
	"strings"

	"go.yaml.in/yaml/v4"
)

func newMapping() *yaml.Node  { return &yaml.Node{Kind: yaml.MappingNode, Tag: "!!map"} }
func newSequence() *yaml.Node { return &yaml.Node{Kind: yaml.SequenceNode, Tag: "!!seq"} }

// newScalar is a text as a person would write it: plain where that reads back
// as the same text, quoted where plain would read as nothing.
func newScalar(text string) *yaml.Node {
	n := &yaml.Node{Kind: yaml.ScalarNode, Value: text}
	switch {
	case strings.Contains(text, "\n"):
		n.Style = yaml.LiteralStyle
	case text == "" || text == "~" || strings.EqualFold(text, "null"):
		n.Tag, n.Style = "!!str", yaml.DoubleQuotedStyle
	}
	return n
}

// newWords is several words in square brackets.
func newWords(words []string) *yaml.Node {
	n := newSequence()
	n.Style = yaml.FlowStyle
	for _, w := range words {
		n.Content = append(n.Content, newScalar(w))
	}
	return n
}

// A pair is one key of a mapping with its value.
type pair struct{ key, value *yaml.Node }

func pairs(n *yaml.Node) []pair {
	out := make([]pair, 0, len(n.Content)/2)
	for i := 0; i+1 < len(n.Content); i += 2 {
		out = append(out, pair{n.Content[i], n.Content[i+1]})
	}
	return out
}

// child is the value of a key, or nil.
func child(n *yaml.Node, key string) *yaml.Node {
	if n == nil || n.Kind != yaml.MappingNode {
		return nil
	}
	for i := 0; i+1 < len(n.Content); i += 2 {
		if n.Content[i].Value == key {
			return n.Content[i+1]
		}
	}
	return nil
}

// setChild gives a key a value; the comments beside the old value stay.
func setChild(n *yaml.Node, key string, value *yaml.Node) {
	if old := child(n, key); old != nil {
		comment := old.LineComment
		if value.LineComment == "" {
			value.LineComment = comment
		}
		*old = *value
		return
	}
	n.Content = append(n.Content, newScalar(key), value)
}

// dropChild takes a key out with its value.
func dropChild(n *yaml.Node, key string) {
	for i := 0; i+1 < len(n.Content); i += 2 {
		if n.Content[i].Value == key {
			n.Content = slices.Delete(n.Content, i, i+2)
			return
		}
	}
}

// sortKeys puts the keys of a mapping in order of their rank; keys of the same
// rank stay as they stood.
func sortKeys(n *yaml.Node, rank func(key string) int) {
	ps := pairs(n)
	slices.SortStableFunc(ps, func(a, b pair) int { return rank(a.key.Value) - rank(b.key.Value) })
	for i, p := range ps {
		n.Content[2*i], n.Content[2*i+1] = p.key, p.value
	}
}

// copyTree is a copy that shares no node.
func copyTree(n *yaml.Node) *yaml.Node {
	c := *n
	c.Content = make([]*yaml.Node, len(n.Content))
	for i, child := range n.Content {
		c.Content[i] = copyTree(child)
	}
	return &c
}

// isNull reports whether nothing was written behind a key.
func isNull(n *yaml.Node) bool {
	const quoted = yaml.SingleQuotedStyle | yaml.DoubleQuotedStyle
	return n.Kind == yaml.ScalarNode && n.Style&quoted == 0 && n.Tag == "!!null"
}
