package record

import (
	"bytes"
	"encoding/json"
	"regexp"
	"strings"
	"sync"

	"go.yaml.in/yaml/v4"
)

// surrogates finds two escapes that JSON reads as one character, and passes over
// a backslash that is escaped itself.
var surrogates = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`\\\\|\\u[dD][89abAB][0-9a-fA-F]{2}\\u[dD][c-fC-F][0-9a-fA-F]{2}`)
})

// asYAML is a JSON text with the one thing in it that YAML reads otherwise put
// right: a character in two escapes stands there as itself. What is no JSON
// stays as it is.
func asYAML(data []byte) []byte {
	if !bytes.Contains(bytes.ToLower(data), []byte(`\ud`)) || !json.Valid(data) {
		return data
	}
	return surrogates().ReplaceAllFunc(data, func(escapes []byte) []byte {
		var text string
		if len(escapes) == 2 || json.Unmarshal([]byte(`"`+string(escapes)+`"`), &text) != nil {
			return escapes
		}
		return []byte(text)
	})
}

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
