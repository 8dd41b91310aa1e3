package record

import (
	"fmt"
	"slices"
	"strings"

	"go.yaml.in/yaml/v4"

	"underfoot/assess"
)

// answers reads the answers of one thing. A family answered as a whole gives
// each of its members an answer, unless the member has one of its own.
func (r *reader) answers(n *yaml.Node, scope assess.Scope) assess.Answers {
	if n == nil || !r.mapping(n, "answers") {
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
func (r *reader) declared(key *yaml.Node, scope assess.Scope) *assess.Declaration {
	schema := r.values.Schema()
	d := schema.Find(key.Value)
	switch {
	case d == nil:
		if len(members(schema, key.Value, scope)) == 0 {
			r.unknown(key, "the answers of "+withArticle(scope), answerNames(schema, scope))
		}
	case closes(d):
		r.note(at(key), d.ID+" stands in its list", "write it there: "+listOf(d)+": {complete: ...}")
		return nil
	case d.Nature == assess.Derived:
		r.note(at(key), d.ID+" is worked out by the program and cannot be answered", "take the line out")
		return nil
	case d.Scope != scope:
		r.note(at(key), fmt.Sprintf("%s belongs to %s, not to %s", d.ID, withArticle(d.Scope), withArticle(scope)), "move it to "+home(d.Scope))
		return nil
	}
	return d
}

// withArticle is a scope in a sentence.
func withArticle(s assess.Scope) string {
	switch s {
	case assess.ScopeJob:
		return "the job"
	case assess.ScopeArea, assess.ScopeEdge:
		return "an " + s.String()
	}
	return "a " + s.String()
}

// home is where the answers of a scope stand.
func home(s assess.Scope) string {
	switch {
	case s == assess.ScopeJob:
		return "the answers at the top of the file"
	case s.Listed():
		return "an item of the list " + s.String()
	}
	return "the answers of " + withArticle(s)
}

// closes reports whether a declaration says that a list is complete.
func closes(d *assess.Declaration) bool {
	topic, field, _ := strings.Cut(d.ID, ".")
	scope, ok := assess.TopicScope(topic)
	return ok && scope.Listed() && field == "complete"
}

func listOf(d *assess.Declaration) string {
	topic, _, _ := strings.Cut(d.ID, ".")
	return topic
}

// answerNames are the keys that the answers of a scope may have.
func answerNames(s *assess.Schema, scope assess.Scope) []string {
	var names []string
	for i := range s.All() {
		d := &s.All()[i]
		if d.Scope != scope || d.Nature == assess.Derived || closes(d) {
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
func (r *reader) answer(d *assess.Declaration, n *yaml.Node) (assess.Answer, bool) {
	if isNull(n) {
		r.odd.note(at(n), d.ID+" has nothing behind it and counts as not answered", "")
		return assess.Answer{}, false
	}
	if n.Kind != yaml.MappingNode {
		return r.value(d, n, assess.Answer{})
	}
	f := r.fields(n, "an answer", answerKeys)
	ans := r.attributes(f)
	if f["value"] == nil {
		r.note(at(n), d.ID+" has no value", "add value: ..., or value: not sure")
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
		ans.Photos = append(ans.Photos, r.text(p, "a photo"))
	}
	return ans
}

// value completes an answer with its reply or its set.
func (r *reader) value(d *assess.Declaration, n *yaml.Node, ans assess.Answer) (assess.Answer, bool) {
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
func (r *reader) valueText(d *assess.Declaration, n *yaml.Node) (string, bool) {
	switch {
	case n.Kind == yaml.ScalarNode && d.Kind == assess.KindYesNo && n.Tag == "!!bool":
		if strings.EqualFold(n.Value, "true") {
			return "yes", true
		}
		return "no", true
	case n.Kind == yaml.ScalarNode && strings.TrimSpace(n.Value) != "":
		return n.Value, true
	case n.Kind == yaml.SequenceNode && len(n.Content) > 0 && len(d.Choices) > 0:
		words := make([]string, len(n.Content))
		for i, c := range n.Content {
			words[i] = r.text(c, "a choice")
		}
		return strings.Join(words, ", "), true
	case n.Kind == yaml.SequenceNode && len(d.Choices) == 0:
		r.note(at(n), d.ID+" takes one value, not a list", "write a range where it may be several: low to high")
	default:
		r.note(at(n), d.ID+" has no value that can be read", "write a value, or: not sure")
	}
	return "", false
}
