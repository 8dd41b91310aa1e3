package record

import (
	"go.yaml.in/yaml/v4"

	"underfoot/assess"
	"underfoot/assess/message"
	"underfoot/assess/schema"
)

// list reads one list of a zone: the word none for a complete empty one, or
// what is known so far and whether that is all.
func (r *reader) list(n *yaml.Node, list schema.Scope, zone *assess.Zone) {
	switch {
	case n == nil:
	case n.Kind == yaml.ScalarNode && n.Value == "none":
		r.complete(n, list, zone)
	case n.Kind == yaml.ScalarNode:
		r.note(at(n), message.New("record/list.what", "list", list), message.New("record/list.hint", "list", list))
	default:
		f := r.fields(n, message.New("record/part.list", "list", list), listFields)
		if c := f["complete"]; c != nil {
			r.complete(c, list, zone)
		}
		r.items(f["items"], list, zone)
		r.contradicted(n, list, zone)
	}
}

// contradicted warns of a list that is said not to apply and names things all
// the same: the things count.
func (r *reader) contradicted(n *yaml.Node, list schema.Scope, zone *assess.Zone) {
	if len(zone.Lists[list]) > 0 && zone.Answers[assess.CompleteField(list)].Reply == assess.DoesNotApply {
		r.odd.note(at(n), message.New("record/list.contradicted", "list", list), message.New("record/list.close"))
	}
}

func (r *reader) items(n *yaml.Node, list schema.Scope, zone *assess.Zone) {
	seen := map[string]bool{}
	for _, item := range r.sequence(n, "items") {
		if id, ok := r.id(item, list.String(), seen); ok {
			zone.Lists[list] = append(zone.Lists[list], assess.Item{ID: id, Answers: r.answers(withoutID(item), list)})
		}
	}
}

// withoutID is the mapping of an item's answers alone.
func withoutID(n *yaml.Node) *yaml.Node {
	c := *n
	c.Content = nil
	for _, p := range pairs(n) {
		if p.key.Value != "id" {
			c.Content = append(c.Content, p.key, p.value)
		}
	}
	return &c
}

// complete stores whether a list is complete, as the zone's answer.
func (r *reader) complete(n *yaml.Node, list schema.Scope, zone *assess.Zone) {
	name := assess.CompleteField(list)
	ans, ok := closedEmpty(), true
	if n.Kind != yaml.ScalarNode || n.Value != "none" {
		ans, ok = r.answer(completeWords(r.values.Schema(), list), n)
	}
	if !ok {
		return
	}
	if zone.Answers == nil {
		zone.Answers = assess.Answers{}
	}
	zone.Answers[name] = ans
}

// closedEmpty is the answer that the word none stands for.
func closedEmpty() assess.Answer { return assess.Answer{Text: "yes", Set: schema.SetYes} }

// completeWords is the declaration of a list's completeness. A list whose
// completeness the catalogue never asks about can still be closed.
func completeWords(s *schema.Schema, list schema.Scope) *schema.Declaration {
	if d := s.Find(assess.CompleteField(list)); d != nil {
		return d
	}
	return &schema.Declaration{ID: assess.CompleteField(list), Kind: schema.KindYesNo, Choices: schema.YesNoChoices}
}
