package record

import (
	"regexp"
	"strconv"

	"go.yaml.in/yaml/v4"

	"underfoot/assess/message"
	"underfoot/assess/schema"
)

var kebab = regexp.MustCompile(`^[a-z0-9]+(-[a-z0-9]+)*$`)

const maxID = 64

// checkID says what is wrong with the id of an area, a zone or an item, and
// what to do about it; what says nothing where all is well. An id stands in addresses beside
// topics, so it can be none.
func checkID(id string) (what, hint message.Message) {
	if id == "" {
		return message.New("record/id.missing"), message.New("record/id.give")
	}
	if len(id) > maxID || !kebab.MatchString(id) {
		return message.New("record/id.form", "id", strconv.Quote(id)), message.New("record/id.letters")
	}
	if _, topic := schema.TopicScope(id); topic || id == "rest" {
		return message.New("record/id.reserved", "id", strconv.Quote(id)), message.New("record/id.add", "id", id+"-1")
	}
	return message.Message{}, noHint
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
	if what.IsZero() && seen[id] {
		what, hint = message.New("record/id.twice", "id", strconv.Quote(id)), message.New("record/id.another")
	}
	if !what.IsZero() {
		r.note(at(where), message.New("record/id.of", "of", of, "what", what), hint)
		return id, false
	}
	seen[id] = true
	return id, true
}
