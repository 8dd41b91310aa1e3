package record

import (
	"bytes"
	"encoding/json"
	"strings"

	"go.yaml.in/yaml/v4"
)

// dumpJSON writes a tree as indented JSON, for a record that was read as JSON.
// Numbers and truths that stood there stay such; all else is text.
func dumpJSON(root *yaml.Node) []byte {
	var out bytes.Buffer
	writeJSON(&out, root, "\n")
	out.WriteByte('\n')
	return out.Bytes()
}

func writeJSON(out *bytes.Buffer, n *yaml.Node, indent string) {
	open, shut := "{", "}"
	switch n.Kind {
	case yaml.ScalarNode:
		out.WriteString(scalarJSON(n))
		return
	case yaml.SequenceNode:
		open, shut = "[", "]"
	}
	out.WriteString(open)
	deeper := indent + "  "
	for i, c := range n.Content {
		if key := n.Kind == yaml.MappingNode && i%2 == 1; key {
			out.WriteString(": ")
		} else {
			out.WriteString(strings.TrimPrefix(","+deeper, map[bool]string{true: ","}[i == 0]))
		}
		writeJSON(out, c, deeper)
	}
	if len(n.Content) > 0 {
		out.WriteString(indent)
	}
	out.WriteString(shut)
}

// scalarJSON is a scalar as JSON. A plain number keeps its digits; a text that
// only looks like one was quoted in the file and stays quoted.
func scalarJSON(n *yaml.Node) string {
	if n.Style == 0 && n.Tag != "" && n.Tag != "!!str" && json.Valid([]byte(n.Value)) {
		return n.Value
	}
	var text bytes.Buffer
	e := json.NewEncoder(&text)
	e.SetEscapeHTML(false)
	if err := e.Encode(n.Value); err != nil {
		return `""`
	}
	return strings.TrimSuffix(text.String(), "\n")
}
