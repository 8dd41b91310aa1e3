package reports

import (
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"underfoot/assess"
)

// literal is a call for a sentence by fixed table and key, in Go or in a template.
var literal = regexp.MustCompile(`\b[sS]ay[( ]"([a-z-]+)",? "([a-z_-]+)"[,)}]`)

// ownLiteral is the workbook's call for a sentence of its own table.
var ownLiteral = regexp.MustCompile(`\.say\("([a-z_]+)"\)`)

// Every sentence that the code asks for stands in the headings.
func TestEverySentenceIsThere(t *testing.T) {
	_, w := speak("en")
	var files []string
	for _, pattern := range []string{"*.go", "*/*.go", "*/*.tmpl"} {
		found, err := filepath.Glob(pattern)
		if err != nil {
			t.Fatal(err)
		}
		files = append(files, found...)
	}
	asked := 0
	for _, file := range files {
		if strings.HasSuffix(file, "_test.go") {
			continue
		}
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		asks := literal.FindAllStringSubmatch(string(text), -1)
		for _, m := range ownLiteral.FindAllStringSubmatch(string(text), -1) {
			asks = append(asks, []string{m[0], "workbook", m[1]})
		}
		asked += len(asks)
		for _, m := range asks {
			if _, ok := w[m[1]][m[2]]; !ok {
				t.Errorf("%s asks for %s.%s, which is not there", file, m[1], m[2])
			}
		}
	}
	if asked < 60 {
		t.Errorf("only %d sentences found in the code: the pattern no longer reads it", asked)
	}
}

// Words of a closed set are looked up by the word itself.
func TestEveryWordOfASetIsThere(t *testing.T) {
	_, w := speak("en")
	for _, p := range append(assess.Paths(), assess.NoPath) {
		w.say("path", p.String())
	}
	for v := assess.Ready; v <= assess.Hold; v++ {
		w.say("verdict", v.String())
		w.say("verdict", v.String()+"_means")
	}
	for o := assess.Fails; o <= assess.NotApplicable; o++ {
		w.say("outcome", o.String())
	}
	for o := assess.CheckHolds; o <= assess.CheckRefused; o++ {
		w.say("check", o.String())
	}
	for _, basis := range assess.BasisWords() {
		w.say("basis", basis)
	}
}

// A report never clears a floor in these words.
func TestNoSentencePromises(t *testing.T) {
	promise := regexp.MustCompile(`(?i)\b(safe|approved|compliant|guarantee[ds]?)\b`)
	_, w := speak("en")
	for table, sentences := range w {
		for key, text := range sentences {
			if promise.MatchString(text) {
				t.Errorf("%s.%s promises: %s", table, key, text)
			}
			if strings.Contains(text, "  ") || strings.TrimSpace(text) != text || text == "" {
				t.Errorf("%s.%s has stray spaces: %q", table, key, text)
			}
		}
	}
}

func TestUnknownLanguageReadsAsEnglish(t *testing.T) {
	if lang, w := speak("xx"); lang != "en" || w.say("verdict", "hold") != "hold" {
		t.Errorf("an unknown language gives %s", lang)
	}
}

func TestMissingSentencePanics(t *testing.T) {
	defer func() {
		if recover() == nil {
			t.Error("a missing sentence goes unnoticed")
		}
	}()
	_, w := speak("en")
	w.say("view", "no-such-key")
}
