package pack

import (
	"strings"
	"testing"
	"testing/fstest"

	"underfoot/assess/message"
)

// Cases may stand in a file beside the rules; names in a file of their own.
func TestFilesBesideTheRules(t *testing.T) {
	for _, tt := range []struct{ name, file, text, want string }{
		{"another case", "rule.cases.toml", "[[gas-smell]]\nname = \"a further one\"\nfacts = { \"danger.gas\" = \"yes\" }\nexpect = \"yes\"\n", ""},
		{"case of no rule", "rule.cases.toml", "[[gas-smel]]\nname = \"a further one\"\nexpect = \"open\"\n", "cases gas-smel: there is no rule of that id"},
		{"case with a key that no case has", "rule.cases.toml", "[[gas-smell]]\nnam = \"a further one\"\nexpect = \"open\"\n", "a key that no record has"},
		{"name that nothing uses", "vocabulary.toml", "[[condition]]\nid = \"gas\"\nwhen = 'danger.gas == \"yes\"'\n", "vocabulary.toml gas: nothing uses the name"},
		{"name with a fault", "vocabulary.toml", "[[condition]]\nid = \"gas\"\nwhen = 'danger.gass == \"yes\"'\n", "there is no fact danger.gass"},
		{"key that no name has", "vocabulary.toml", "[[condition]]\nid = \"gas\"\nwhat = 'danger.gas == \"yes\"'\n", "a key that no record has"},
	} {
		t.Run(tt.name, func(t *testing.T) {
			files := valid(t)
			files["valid/"+tt.file] = &fstest.MapFile{Data: []byte(tt.text)}
			p, err := load(files, "valid", fewNames("us"), "us", message.English())
			switch {
			case tt.want == "" && err != nil:
				t.Error(err)
			case tt.want == "":
				if cases := p.Rule("gas-smell").Cases; cases[len(cases)-1].Name != "a further one" {
					t.Errorf("the rule has the cases %v", cases)
				}
			case err == nil || !strings.Contains(err.Error(), tt.want):
				t.Errorf("error %v\nwant %q in it", err, tt.want)
			}
		})
	}
}

// The facts of a case may name a set, and what is none of some words.
func TestFactsOfACaseMayNameSets(t *testing.T) {
	c := countries()["us"]
	d := c.names.Schema.Find("zone.base")
	for _, tt := range []struct {
		value any
		words string
	}{
		{"slabs", "slab-on-ground suspended-slab precast-plank"},
		{[]any{"slabs", "joists"}, "joists slab-on-ground suspended-slab precast-plank"},
		{map[string]any{"not": "slabs"}, "joists beam-and-deck sleepers-on-slab brick-or-flagstone"},
		{map[string]any{"not": []any{"slabs", "joists"}}, "beam-and-deck sleepers-on-slab brick-or-flagstone"},
		{map[string]any{"nor": "slabs"}, "error"},
		{map[string]any{"not": "slabbs"}, "error"},
		{"old_tile", "error"}, // a set of another fact
	} {
		f, err := c.stage().fact(d, tt.value)
		got := strings.Join(f.Set.Words(d), " ")
		if err != nil {
			got = "error"
		}
		if got != tt.words {
			t.Errorf("%v is %s, want %s", tt.value, got, tt.words)
		}
	}
}

// Each text is read once in the language, whatever else is read before it.
func TestTextsAreReadInTheLanguage(t *testing.T) {
	pseudo, _ := message.Open(message.Pseudo)
	rs, err := readFiles(shipped, "shipped", pseudo)
	if err != nil {
		t.Fatal(err)
	}
	for id, text := range rs.texts {
		if n := strings.Count(text.Why, "⟦"); n != 1 {
			t.Errorf("the reason of %s has %d brackets: %s", id, n, text.Why)
		}
	}
	for id, c := range rs.warnings {
		if strings.Count(c.Text, "⟦") != 1 {
			t.Errorf("caution %s: %s", id, c.Text)
		}
	}
}
