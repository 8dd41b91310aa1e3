package record

import (
	"slices"
	"strings"

	"go.yaml.in/yaml/v4"

	"underfoot/assess"
	"underfoot/assess/message"
	"underfoot/assess/schema"
)

// answers reads the answers of one thing. A family answered as a whole gives
// each of its members an answer, unless the member has one of its own.
func (r *reader) answers(n *yaml.Node, scope schema.Scope) assess.Answers {
	if n == nil || !r.mapping(n, message.New("record/part.answers")) {
		return nil
	}
	out := assess.Answers{}
	for _, p := range pairs(n) {
		if d := r.declared(p.key, scope); d != nil {
			if a, ok := r.answer(d, p.value); ok {
				out[d.ID] = a
			}
		}
	}
	for _, p := range pairs(n) {
		for m, a := range r.family(p, scope) {
			if _, own := out[m]; !own {
				out[m] = a
			}
		}
	}
	return out
}

// declared is the declaration of an answer's key; nil for a family, and for a
// key that does not belong here, which is reported.
func (r *reader) declared(key *yaml.Node, scope schema.Scope) *schema.Declaration {
	all := r.values.Schema()
	d := all.Find(key.Value)
	switch {
	case d == nil:
		if len(members(all, key.Value, scope)) == 0 {
			r.unknown(key, answersOf(scope), answerNames(all, scope))
		}
	case closes(d):
		r.note(at(key), message.New("record/misplaced.complete", "fact", d.ID), message.New("record/misplaced.write_complete", "list", listOf(d)))
		return nil
	case d.Nature == schema.Derived:
		r.note(at(key), message.New("record/derived.what", "fact", d.ID), message.New("record/derived.hint"))
		return nil
	case d.Scope != scope:
		r.note(at(key), message.New("record/misplaced.what", "fact", d.ID, "home", oneOf(d.Scope), "here", oneOf(scope)), home(d.Scope))
		return nil
	}
	return d
}

// oneOf is a thing of a scope in a sentence, such as an area.
func oneOf(s schema.Scope) message.Message { return message.New("record/scope." + s.String()) }

// answersOf are its answers in a sentence.
func answersOf(s schema.Scope) message.Message { return message.New("record/answers." + s.String()) }

// home says where the answers of a scope stand.
func home(s schema.Scope) message.Message {
	switch {
	case s == schema.ScopeJob:
		return message.New("record/move.job")
	case s.Listed():
		return message.New("record/move.item", "list", s.String())
	}
	return message.New("record/move.thing", "answers", answersOf(s))
}

// closes reports whether a declaration says that a list is complete.
func closes(d *schema.Declaration) bool {
	topic, field, _ := strings.Cut(d.ID, ".")
	scope, ok := schema.TopicScope(topic)
	return ok && scope.Listed() && field == "complete"
}

func listOf(d *schema.Declaration) string {
	topic, _, _ := strings.Cut(d.ID, ".")
	return topic
}

// answerNames are the keys that the answers of a scope may have.
func answerNames(s *schema.Schema, scope schema.Scope) []string {
	var names []string
	for i := range s.All() {
		d := &s.All()[i]
		if d.Scope != scope || d.Nature == schema.Derived || closes(d) {
			continue
		}
		names = append(names, d.ID)
		if d.Family != "" && !slices.Contains(names, d.Family) {
			names = append(names, d.Family)
		}
	}
	return names
}

// answer reads one answer: a value, or a mapping of a value with what is known
// of it. A key with nothing behind it counts as not answered.
func (r *reader) answer(d *schema.Declaration, n *yaml.Node) (assess.Answer, bool) {
	if isNull(n) {
		r.odd.note(at(n), message.New("record/empty.answer", "fact", d.ID), noHint)
		return assess.Answer{}, false
	}
	if n.Kind != yaml.MappingNode {
		return r.value(d, n, assess.Answer{})
	}
	f := r.fields(n, message.New("record/part.answer"), answerKeys)
	ans := r.attributes(f)
	if f["value"] == nil {
		r.note(at(n), message.New("record/value.missing", "fact", d.ID), message.New("record/value.add"))
		return ans, false
	}
	return r.value(d, f["value"], ans)
}

func (r *reader) attributes(f map[string]*yaml.Node) (ans assess.Answer) {
	ans.Basis, _ = assess.ParseBasis(r.word(f["basis"], "basis", assess.BasisWords()))
	ans.With = r.text(f["with"], "with")
	ans.Note = r.text(f["note"], "note")
	ans.On = r.day(f["on"])
	if p := f["photos"]; p != nil && p.Kind == yaml.ScalarNode {
		ans.Photos = []string{p.Value}
		return ans
	}
	for _, p := range r.sequence(f["photos"], "photos") {
		ans.Photos = append(ans.Photos, r.text(p, message.New("record/part.photo")))
	}
	return ans
}

// value completes an answer with its reply or its set.
func (r *reader) value(d *schema.Declaration, n *yaml.Node, ans assess.Answer) (assess.Answer, bool) {
	text, ok := r.valueText(d, n)
	if !ok {
		return ans, false
	}
	if ans.Reply = assess.ParseReply(text); ans.Reply != assess.Given {
		return ans, true
	}
	set, err := read(r.values, d, text, r.sys, r.job.Visited)
	if err != nil {
		what, hint := explain(r.values, d, text, r.sys, err)
		r.note(at(n), what, hint)
		return ans, false
	}
	ans.Set, ans.Text = set, text
	return ans, true
}

// valueText is the text of a value, several choices joined by ", ".
func (r *reader) valueText(d *schema.Declaration, n *yaml.Node) (string, bool) {
	switch {
	case n.Kind == yaml.ScalarNode && d.Kind == schema.KindYesNo && n.Tag == "!!bool":
		if strings.EqualFold(n.Value, "true") {
			return "yes", true
		}
		return "no", true
	case n.Kind == yaml.ScalarNode && strings.TrimSpace(n.Value) != "":
		return n.Value, true
	case n.Kind == yaml.SequenceNode && len(n.Content) > 0 && len(d.Choices) > 0:
		words := make([]string, len(n.Content))
		for i, c := range n.Content {
			words[i] = r.text(c, message.New("record/part.choice"))
		}
		return strings.Join(words, ", "), true
	case n.Kind == yaml.SequenceNode && len(d.Choices) == 0:
		r.note(at(n), message.New("record/value.list", "fact", d.ID), message.New("record/value.range"))
	default:
		r.note(at(n), message.New("record/value.unreadable", "fact", d.ID), message.New("record/value.write"))
	}
	return "", false
}
