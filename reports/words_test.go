package reports

import (
	"os"
	"regexp"
	"strings"
	"testing"

	"github.com/pelletier/go-toml/v2"

	"underfoot/assess"
	"underfoot/assess/message"
	"underfoot/assess/result"
)

// Words of a closed set are looked up by the word itself.
func TestEveryWordOfASetIsThere(t *testing.T) {
	w := words{message.English()}
	for _, p := range append(result.Paths(), result.NoPath) {
		w.say("report/path." + p.String())
	}
	for v := result.Ready; v <= result.Hold; v++ {
		w.say("report/verdict." + v.String())
		w.say("report/verdict." + v.String() + "_means")
	}
	for o := result.Fails; o <= result.NotApplicable; o++ {
		w.say("report/outcome." + o.String())
	}
	for o := result.CheckHolds; o <= result.CheckRefused; o++ {
		w.say("report/check." + o.String())
	}
	for _, basis := range assess.BasisWords() {
		w.say("report/basis." + basis)
	}
}

// sentences are what reports say by themselves in English, by table and key.
func sentences(t *testing.T) map[string]map[string]string {
	t.Helper()
	data, err := os.ReadFile("../assess/message/en/report.toml")
	if err != nil {
		t.Fatal(err)
	}
	var all map[string]map[string]string
	if err := toml.Unmarshal(data, &all); err != nil {
		t.Fatal(err)
	}
	return all
}

// A report never clears a floor in these words.
func TestNoSentencePromises(t *testing.T) {
	promise := regexp.MustCompile(`(?i)\b(safe|approved|compliant|guarantee[ds]?)\b`)
	for table, list := range sentences(t) {
		for key, text := range list {
			if promise.MatchString(text) {
				t.Errorf("%s.%s promises: %s", table, key, text)
			}
			if strings.Contains(text, "  ") || strings.TrimSpace(text) != text || text == "" {
				t.Errorf("%s.%s has stray spaces: %q", table, key, text)
			}
		}
	}
}

// A tab has room for 31 characters, and two are left for a language's brackets.
func TestEverySectionHasAShortHeading(t *testing.T) {
	all := sentences(t)
	for id := range all["heading"] {
		if sheet := all["sheet"][id]; sheet == "" || len(sheet) > 29 {
			t.Errorf("the tab of %s is called %q", id, sheet)
		}
	}
}
