package question

import (
	"fmt"
	"regexp"
	"strings"
	"testing"
	"unicode/utf8"

	"underfoot/assess/message"
	"underfoot/assess/quantity"
	"underfoot/assess/schema"
)

// written is the catalogue's records, their declarations and the texts.
func written(t *testing.T) ([]factRecord, map[string]schema.Declaration, texts) {
	t.Helper()
	records, err := readFacts(shipped)
	if err != nil {
		t.Fatal(err)
	}
	all, err := readTexts(shipped, message.English())
	if err != nil {
		t.Fatal(err)
	}
	declared := map[string]schema.Declaration{}
	for i := range records {
		if declared[records[i].ID], err = records[i].declare(); err != nil {
			t.Fatal(err)
		}
	}
	return records, declared, all
}

// sentences are the parts of a text with the most runes that each may have: a
// label must fit a table column, a question two lines, the rest a phone screen.
func sentences(x Text) map[string]struct {
	text string
	most int
} {
	type part = struct {
		text string
		most int
	}
	return map[string]part{"label": {x.Label, 28}, "ask": {x.Ask, 160}, "why": {x.Why, 320},
		"how": {x.How, 320}, "limits": {x.Limits, 320}, "who": {x.Who, 28}}
}

func TestEveryQuestionHasItsText(t *testing.T) {
	_, declared, all := written(t)
	for id := range declared {
		for name, part := range sentences(all.facts[id]) {
			if n := utf8.RuneCountInString(part.text); n == 0 || n > part.most {
				t.Errorf("%s: %s has %d characters, want 1 to %d", id, name, n, part.most)
			}
		}
	}
	for id := range all.facts {
		if _, ok := declared[id]; !ok {
			t.Errorf("%s has a text and is no question", id)
		}
	}
	for _, group := range groups {
		if all.groups[group] == "" {
			t.Errorf("group %s has no title", group)
		}
	}
}

// A label stands alone in a table: two questions with one label would be one.
func TestLabelsAreUnique(t *testing.T) {
	_, _, all := written(t)
	seen := map[string]string{}
	for id, x := range all.facts {
		if other, twice := seen[x.Label]; twice {
			t.Errorf("%s and %s are both labelled %q", other, id, x.Label)
		}
		seen[x.Label] = id
	}
}

func TestEveryChoiceHasItsLabel(t *testing.T) {
	_, declared, all := written(t)
	for id, d := range declared {
		labels := all.facts[id].Choices
		if d.Kind != schema.KindChoice {
			if len(labels) > 0 {
				t.Errorf("%s is no choice and has choice labels", id)
			}
			continue
		}
		for _, word := range d.Choices {
			if n := utf8.RuneCountInString(labels[word]); n == 0 || n > 60 {
				t.Errorf("%s: label of %s has %d characters, want 1 to 60", id, word, n)
			}
		}
		if len(labels) != len(d.Choices) {
			t.Errorf("%s: %d labels for %d choices", id, len(labels), len(d.Choices))
		}
	}
}

// An example is what a person copies: it must read as an answer in both unit
// systems.
func TestExamplesRead(t *testing.T) {
	_, declared, all := written(t)
	c := &Catalogue{words: all.words}
	for id, d := range declared {
		example := all.facts[id].Example
		if asksForOne := d.Kind == schema.KindQuantity || d.Kind == schema.KindText; asksForOne != (example != "") {
			t.Errorf("%s: example %q", id, example)
			continue
		}
		if example == "" {
			continue
		}
		for _, sys := range []quantity.System{quantity.US, quantity.Metric} {
			if _, err := c.Read(&d, example, sys); err != nil {
				t.Errorf("%s: example %q in %s units: %v", id, example, sys, err)
			}
		}
	}
}

func TestSynonymsNameChoices(t *testing.T) {
	_, declared, all := written(t)
	for id, phrases := range all.words {
		d := declared[id]
		if d.Kind != schema.KindChoice {
			t.Errorf("%s has synonyms and is no choice", id)
		}
		for phrase, words := range phrases {
			if err := checkSynonym(&d, phrase, words); err != nil {
				t.Errorf("%s: %q: %v", id, phrase, err)
			}
		}
	}
}

// checkSynonym holds a phrase to what readWords can find: lower case, no comma,
// and no choice word itself, which would shadow it.
func checkSynonym(d *schema.Declaration, phrase string, words []string) error {
	if phrase != strings.ToLower(phrase) || strings.Contains(phrase, ",") {
		return fmt.Errorf("cannot be typed")
	}
	if _, shadowed := d.ChoiceBit(strings.ReplaceAll(phrase, " ", "-")); shadowed {
		return fmt.Errorf("is a choice already")
	}
	if len(words) == 0 {
		return fmt.Errorf("names nothing")
	}
	for _, word := range words {
		if _, ok := d.ChoiceBit(word); !ok {
			return fmt.Errorf("%q is no choice", word)
		}
	}
	return nil
}

// Trade phrases that mean one thing, and two that mean several.
func TestPhrasesPeopleType(t *testing.T) {
	_, declared, all := written(t)
	c := &Catalogue{words: all.words}
	for _, tt := range []struct{ id, phrase, want string }{
		{"layer.kind", "Lino", "sheet-vinyl, linoleum"},
		{"layer.kind", "stick tile", "vinyl-tile"},
		{"layer.kind", "VCT", "vinyl-composition-tile"},
		{"layer.kind", "cutback", "black-glue"},
		{"layer.kind", "mastic", "black-glue, brown-glue, other-glue"},
		{"layer.kind", "luan", "lauan"},
		{"layer.kind", "chipboard", "particleboard"},
		{"layer.kind", "mud set", "mortar-bed"},
		{"layer.kind", "CBU", "cement-board"},
		{"layer.kind", "sheet vinyl", "sheet-vinyl"},
		{"deck.kind", "chipboard", "particleboard"},
		{"zone.base", "concrete", "slab-on-ground, suspended-slab, precast-plank"},
		{"tile.kind", "marble", "natural-stone"},
	} {
		d := declared[tt.id]
		set, err := c.Read(&d, tt.phrase, quantity.US)
		if got := c.Write(&d, set, quantity.US); err != nil || got != tt.want {
			t.Errorf("%s %q reads as %q, %v; want %q", tt.id, tt.phrase, got, err, tt.want)
		}
	}
}

// Words that promise what no answer can, or talk down to the reader.
var promise = regexp.MustCompile(`(?i)\b(safe|safely|safer|approved|compliant|just|simply|obviously)\b`)

func TestTextsPromiseNothing(t *testing.T) {
	_, _, all := written(t)
	for id, x := range all.facts {
		for name, part := range sentences(x) {
			if word := promise.FindString(part.text); word != "" {
				t.Errorf("%s: %s says %q", id, name, word)
			}
		}
		for word, label := range x.Choices {
			if bad := promise.FindString(label); bad != "" {
				t.Errorf("%s: label of %s says %q", id, word, bad)
			}
		}
	}
}

// Every act that could disturb a suspect floor is either forbidden in its own
// sentence or waits for the asbestos question in it.
var (
	disturbs = regexp.MustCompile(`(?i)\b(pry|lift|scrape|scrub|sand|cut|drill into|tape down|probe|dent|thumbnail|screwdriver|rag|press|wipe|break)\b`)
	held     = regexp.MustCompile(`(?i)\b(do not|never|once|settled)\b`)
)

func TestHowDisturbsNothingUnasked(t *testing.T) {
	_, _, all := written(t)
	for id, x := range all.facts {
		for _, sentence := range strings.Split(x.How, ". ") {
			if act := disturbs.FindString(sentence); act != "" && !held.MatchString(sentence) {
				t.Errorf("%s: how says %q without a condition: %s", id, act, sentence)
			}
		}
	}
}
