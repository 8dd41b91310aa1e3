package message

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
	"sync"

	"github.com/pelletier/go-toml/v2"
)

// A text is one sentence: what stands between its holes, and their names. There
// is one piece more than there are holes.
type text struct {
	pieces []string
	holes  []string
}

// hole matches a name in braces; other braces are part of the sentence.
var hole = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`\{([a-z][a-z0-9_]*)\}`) })

func parse(s string) text {
	var t text
	at := 0
	for _, m := range hole().FindAllStringSubmatchIndex(s, -1) {
		t.pieces = append(t.pieces, s[at:m[0]])
		t.holes = append(t.holes, s[m[2]:m[3]])
		at = m[1]
	}
	t.pieces = append(t.pieces, s[at:])
	return t
}

// fill puts the values into the holes; the fault names a hole without a value or
// a value without a hole.
func (t text) fill(values []Hole, show func(any) string) (filled, fault string) {
	for _, v := range values {
		if !slices.Contains(t.holes, v.Name) {
			return "", "it has no hole {" + v.Name + "}"
		}
	}
	var b strings.Builder
	for i, name := range t.holes {
		b.WriteString(t.pieces[i])
		n := slices.IndexFunc(values, func(v Hole) bool { return v.Name == name })
		if n < 0 {
			return "", "{" + name + "} has no value"
		}
		b.WriteString(show(values[n].Value))
	}
	b.WriteString(t.pieces[len(t.holes)])
	return b.String(), ""
}

// bracketed is the sentence of the pseudo-language.
func (t text) bracketed() text {
	pieces := slices.Clone(t.pieces)
	pieces[0] = "⟦" + pieces[0]
	pieces[len(pieces)-1] += "⟧"
	return text{pieces: pieces, holes: t.holes}
}

// names are the holes, each once, in order.
func (t text) names() []string {
	names := slices.Clone(t.holes)
	slices.Sort(names)
	return slices.Compact(names)
}

// readRoom reads a room's file: tables of sentences, flattened into table.name.
func readRoom(data []byte) (map[string]text, error) {
	var tree map[string]any
	if err := toml.Unmarshal(data, &tree); err != nil {
		return nil, err
	}
	texts := map[string]text{}
	return texts, flatten(tree, "", texts)
}

func flatten(tree map[string]any, prefix string, into map[string]text) error {
	for name, v := range tree {
		key := prefix + name
		switch v := v.(type) {
		case string:
			into[key] = parse(strings.TrimSpace(v))
		case map[string]any:
			if err := flatten(v, key+".", into); err != nil {
				return err
			}
		default:
			return fmt.Errorf("%s is no sentence", key)
		}
	}
	return nil
}
