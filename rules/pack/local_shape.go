package pack

import (
	"reflect"
	"slices"
	"strings"

	"github.com/pelletier/go-toml/v2/unstable"

	"underfoot/assess"
	"underfoot/assess/message"
)

// A shaper compares a document with the type that it is read into and gives
// every key that the type does not have and every value of a wrong kind.
type shaper struct {
	doc      *document
	problems assess.Problems
	wrong    bool // some value is of a wrong kind
}

func (s *shaper) problem(at int, what, hint message.Message) {
	if len(s.problems) < maxProblems {
		s.problems = append(s.problems, place{doc: s.doc, node: &node{at: at}}.problem(what, hint))
	}
}

func (s *shaper) value(n *node, at int, name any, t reflect.Type) {
	fits := true
	switch t.Kind() {
	case reflect.String:
		fits = n.kind == unstable.String
	case reflect.Float64:
		fits = n.kind == unstable.Integer || n.kind == unstable.Float
	case reflect.Bool:
		fits = n.kind == unstable.Bool
	case reflect.Slice:
		fits = n.kind == unstable.Array
		for _, item := range n.items {
			s.value(item, item.at, message.New("pack/kind.item", "key", name), t.Elem())
		}
	case reflect.Map:
		fits = n.kind == unstable.InlineTable
		for _, key := range n.order {
			s.value(n.fields[key], n.keys[key], key, t.Elem())
		}
	case reflect.Struct:
		if fits = n.kind == unstable.InlineTable; fits {
			s.table(n, t)
		}
	}
	if !fits {
		s.wrong = true
		s.problem(at, message.New("pack/kind."+t.Kind().String(), "key", name), message.Message{})
	}
}

func (s *shaper) table(n *node, t reflect.Type) {
	keys := map[string]reflect.Type{}
	var words []string
	for _, f := range reflect.VisibleFields(t) {
		if key := f.Tag.Get("toml"); key != "" {
			keys[key] = f.Type
			words = append(words, key)
		}
	}
	for _, key := range n.order {
		if known := keys[key]; known != nil {
			s.value(n.fields[key], n.keys[key], key, known)
			continue
		}
		hint := assess.DidYouMean(key, words)
		if hint.IsZero() {
			hint = message.New("pack/no_such.keys", "words", strings.Join(slices.Sorted(slices.Values(words)), ", "))
		}
		s.problem(n.keys[key], message.New("pack/no_such.key", "key", key), hint)
	}
}
