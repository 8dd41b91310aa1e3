package record

import (
	"fmt"
	"regexp"

	"go.yaml.in/yaml/v4"

	"underfoot/assess"
)

var kebab = regexp.MustCompile(`^[a-z0-9]+(-[a-z0-9]+)*$`)

const (
	maxID  = 64
	idHint = "lower case letters, digits and single hyphens, such as back-hall"
)

// checkID says what is wrong with the id of an area, a zone or an item, and
// what to do about it; empty where nothing is. An id stands in addresses beside
// topics, so it can be none.
func checkID(id string) (what, hint string) {
	if id == "" {
		return "an id is missing", "give it one: " + idHint
	}
	if len(id) > maxID || !kebab.MatchString(id) {
		return fmt.Sprintf("%q cannot be an id", id), idHint
	}
	if _, topic := assess.TopicScope(id); topic || id == "rest" {
		return fmt.Sprintf("%q cannot be an id: the program uses the word itself", id), "add a word to it: " + id + "-1"
	}
	return "", ""
}

// id is the id of an area, a zone or an item, which no other of its list has.
func (r *reader) id(n *yaml.Node, of string, seen map[string]bool) (string, bool) {
	if !r.mapping(n, of) {
		return "", false
	}
	where := n
	var id string
	if v := child(n, "id"); v != nil && !isNull(v) {
		where, id = v, r.text(v, "id")
	}
	what, hint := checkID(id)
	if what == "" && seen[id] {
		what, hint = fmt.Sprintf("there are two of the id %q", id), "give one of them another id"
	}
	if what != "" {
		r.note(at(where), of+": "+what, hint)
		return id, false
	}
	seen[id] = true
	return id, true
}
