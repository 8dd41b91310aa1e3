package question

import (
	"io/fs"
	"maps"
	"slices"
	"strings"

	"underfoot/assess"
	"underfoot/assess/message"
	"underfoot/assess/schema"
)

// A Text is what a person reads of one question.
type Text struct {
	Label   string            `toml:"label"`
	Ask     string            `toml:"ask"`
	Why     string            `toml:"why"`
	How     string            `toml:"how"`
	Limits  string            `toml:"limits"`
	Who     string            `toml:"who"`
	Example string            `toml:"example" message:"word"` // an answer as it is typed
	Choices map[string]string `toml:"choices"`
}

// synonyms are the words a person may type for choice words, by fact.
type synonyms map[string]map[string][]string

// texts are what a language says of the catalogue.
type texts struct {
	groups map[string]string
	words  synonyms
	facts  map[string]Text
}

// readTexts reads the texts of a language, which stand beside the records.
func readTexts(files fs.FS, l *message.Language) (texts, error) {
	var t texts
	var typed struct {
		Words synonyms `toml:"words" message:"word"`
	}
	for _, f := range []struct {
		name string
		into any
	}{{"text", &t.facts}, {"group", &t.groups}, {"word", &typed}} {
		if err := l.Read(files, f.name, f.into); err != nil {
			return t, err
		}
	}
	t.words = typed.Words
	return t, nil
}

// check finds questions, choices and groups without a text, texts of none of
// them, and words that people may type for no choice. Nothing fills a hole in
// these texts, so that one is a fault too.
func (t texts) check(c *Catalogue) assess.Problems {
	var problems assess.Problems
	fault := func(file, id string, what message.Message) {
		problems = append(problems, &assess.Problem{Kind: assess.Invalid, Place: file + " " + id, What: what})
	}
	for i := range c.Questions {
		q := &c.Questions[i]
		for _, missing := range q.Text.missing(q.Decl) {
			fault("text", q.Decl.ID, message.New("question/text.missing", "key", missing))
		}
		if t.groups[q.Group] == "" {
			fault("group", q.Group, message.New("question/text.missing", "key", q.Group))
		}
	}
	for _, id := range slices.Sorted(maps.Keys(t.facts)) {
		if c.Find(id) == nil {
			fault("text", id, message.New("question/text.no_question"))
		}
		for key, sentence := range t.facts[id].sentences() {
			if strings.ContainsAny(sentence, "{}") {
				fault("text", id, message.New("question/text.hole", "key", key))
			}
		}
	}
	for _, id := range slices.Sorted(maps.Keys(t.groups)) {
		if !slices.Contains(groups, id) {
			fault("group", id, message.New("question/text.no_group"))
		}
	}
	return append(problems, t.typed(c)...)
}

// sentences are all that the text says, by key.
func (x Text) sentences() map[string]string {
	all := map[string]string{"label": x.Label, "ask": x.Ask, "why": x.Why, "how": x.How, "limits": x.Limits, "who": x.Who, "example": x.Example}
	for word, label := range x.Choices {
		all["choices."+word] = label
	}
	return all
}

// missing are the keys that the text of a question needs and does not have, or
// has for a word that is no choice.
func (x Text) missing(d *schema.Declaration) []string {
	var out []string
	for _, key := range []string{"label", "ask", "why", "how", "limits", "who"} {
		if x.sentences()[key] == "" {
			out = append(out, key)
		}
	}
	if d.Kind != schema.KindChoice {
		return out
	}
	for _, w := range d.Choices {
		if x.Choices[w] == "" {
			out = append(out, "choices."+w)
		}
	}
	return out
}

// typed finds words that stand for nothing.
func (t texts) typed(c *Catalogue) assess.Problems {
	var problems assess.Problems
	for _, id := range slices.Sorted(maps.Keys(t.words)) {
		q := c.Find(id)
		if q == nil {
			problems = append(problems, &assess.Problem{Kind: assess.Invalid, Place: "word " + id, What: message.New("question/text.no_question")})
			continue
		}
		for _, typed := range slices.Sorted(maps.Keys(t.words[id])) {
			for _, w := range t.words[id][typed] {
				if !slices.Contains(q.Decl.Choices, w) {
					problems = append(problems, &assess.Problem{Kind: assess.Invalid, Place: "word " + id,
						What: message.New("question/text.no_choice", "typed", typed, "word", w), Hint: assess.DidYouMean(w, q.Decl.Choices)})
				}
			}
		}
	}
	return problems
}
