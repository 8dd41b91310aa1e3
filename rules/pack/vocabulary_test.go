package pack

import (
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/pelletier/go-toml/v2"

	"underfoot/assess/condition"
)

const catalogueWords = "../../assess/question/vocabulary.toml"

// definitions are the names of the catalogue and those of the rules.
func definitions(t *testing.T) (catalogue, rules condition.Definitions) {
	t.Helper()
	for file, into := range map[string]*condition.Definitions{catalogueWords: &catalogue, "shipped/" + vocabularyFile: &rules} {
		data, err := os.ReadFile(file)
		if err == nil {
			err = toml.Unmarshal(data, into)
		}
		if err != nil {
			t.Fatal(err)
		}
	}
	return catalogue, rules
}

// No word of a family or a set can go lost: what divides the words asks for it.
// That a set which says of a word that it leaves it is told from one that has it
// is for the cases: TestCasesCatchMutants drops each word of each set in every
// rule that names it.
func TestAWordDroppedFromASetIsAFault(t *testing.T) {
	catalogue, rules := definitions(t)
	names := countries()["us"].catalogue.Names()
	names.Words = nil
	dropped := 0
	each := func(id string, words *[]string) {
		whole := *words
		for i, w := range whole {
			*words = slices.Delete(slices.Clone(whole), i, i+1)
			v, problems := names.Words.With(catalogue, "", names)
			_, more := v.With(rules, "", names)
			if len(problems)+len(more) == 0 {
				t.Errorf("%s without %s is no fault", id, w)
			}
			dropped++
		}
		*words = whole
	}
	for _, d := range []condition.Definitions{catalogue, rules} {
		for i := range d.Families {
			each(d.Families[i].ID, &d.Families[i].Words)
		}
		for i := range d.Sets {
			each(d.Sets[i].ID, &d.Sets[i].Words)
			each(d.Sets[i].ID, &d.Sets[i].Leaves)
		}
	}
	t.Logf("%d words, each dropped in turn", dropped)
}

// A condition is read by people: no line of one is long, and a list of many words
// has a name. Of a case, all facts stand on one line; its lists are short too.
func TestConditionsAreShort(t *testing.T) {
	const maxLine, maxWords = 200, 6
	list := regexp.MustCompile(`\[[^\[\]{]*\]`)
	seen := 0
	for _, pattern := range []string{"shipped/*.toml", "../../assess/question/tally.toml", "../../assess/question/vocabulary.toml", "../../assess/question/catalogue/*.toml"} {
		files, _ := filepath.Glob(pattern)
		for _, file := range files {
			if strings.HasSuffix(file, ".en.toml") {
				continue
			}
			for i, line := range conditionLines(t, file) {
				seen++
				if len(line) > maxLine && !strings.HasSuffix(file, ".cases.toml") {
					t.Errorf("%s:%d: a line of %d bytes, more than %d", file, i, len(line), maxLine)
				}
				for _, l := range list.FindAllString(line, -1) {
					if n := strings.Count(l, ",") + 1; n > maxWords {
						t.Errorf("%s:%d: a list of %d words, more than %d: give it a name", file, i, n, maxWords)
					}
				}
			}
		}
	}
	if seen < 1500 {
		t.Errorf("only %d lines of conditions and cases were found", seen)
	}
}

// starts is what stands before a condition or the facts of a case.
var starts = regexp.MustCompile(`^\s*(\{?when|applies|takes_up|unknown_when|where|relevant|facts) = `)

// conditionLines are the lines of conditions and of the facts of cases, by number.
func conditionLines(t *testing.T, file string) map[int]string {
	t.Helper()
	data, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	out, inside := map[int]string{}, false
	for i, line := range strings.Split(string(data), "\n") {
		quotes := strings.Count(line, "'''")
		if inside || starts.MatchString(line) {
			out[i+1] = line
		}
		inside = inside != (quotes%2 == 1)
	}
	return out
}
