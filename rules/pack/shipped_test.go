package pack

import (
	"cmp"
	"errors"
	"regexp"
	"slices"
	"strings"
	"testing"

	"underfoot/assess"
	"underfoot/assess/message"
	"underfoot/assess/quantity"
)

func TestShippedRulesLoad(t *testing.T) {
	for region, c := range countries() {
		var problems assess.Problems
		switch {
		case errors.As(c.err, &problems):
			for _, p := range problems {
				t.Errorf("%s: %s", region, p.Report(message.English()))
			}
		case c.err != nil:
			t.Errorf("%s: %v", region, c.err)
		}
	}
}

func TestEveryCaseHolds(t *testing.T) {
	total := 0
	each(t, func(t *testing.T, c *country) {
		failures, run := c.pack.Test(c.names.Schema, c.read)
		total += run
		for _, f := range failures {
			t.Errorf("%s, %s: %s, want %s\n%s", f.Rule, f.Case, cmp.Or(f.Got, f.Fault.String()), f.Want, f.Explain(message.English()))
		}
	})
	rs, err := readFiles(shipped, "shipped", message.English())
	if err != nil {
		t.Fatal(err)
	}
	written := 0
	for _, r := range rs.rules {
		written += len(r.Cases)
	}
	if total != written {
		t.Errorf("%d cases are written and %d were run", written, total)
	}
}

// idForm is lower case words with hyphens.
var idForm = regexp.MustCompile(`^[a-z][a-z0-9]*(-[a-z0-9]+)*$`)

func TestIDsAreWords(t *testing.T) {
	each(t, func(t *testing.T, c *country) {
		for _, r := range c.pack.Rules {
			if !idForm.MatchString(r.ID) {
				t.Errorf("%q is not kebab-case", r.ID)
			}
			if r.Since == "" {
				t.Errorf("%s does not say since which edition it stands", r.ID)
			}
		}
	})
}

func TestRisksAreOfThreeWords(t *testing.T) {
	each(t, func(t *testing.T, c *country) {
		for _, r := range c.pack.Rules {
			risk := r.Risk
			if risk == (Risk{}) && r.IsPermit() {
				continue
			}
			for _, word := range []string{risk.Likelihood, risk.LikelihoodAfter} {
				if !slices.Contains(likelihoods, word) {
					t.Errorf("%s: likelihood %q is none of %v", r.ID, word, likelihoods)
				}
			}
			for _, word := range []string{risk.Consequence, risk.ConsequenceAfter} {
				if !slices.Contains(consequences, word) {
					t.Errorf("%s: consequence %q is none of %v", r.ID, word, consequences)
				}
			}
		}
	})
}

// What a step makes true must read as an answer, in the units that figures are
// written in.
func TestMadeValuesRead(t *testing.T) {
	each(t, func(t *testing.T, c *country) {
		made := func(who string, values map[string]string) {
			for name, text := range values {
				if strings.HasPrefix(text, "=") {
					continue
				}
				if _, err := c.catalogue.Read(c.names.Schema.Find(name), text, quantity.US); err != nil {
					t.Errorf("%s: %s: %v", who, name, err)
				}
			}
		}
		for _, r := range c.pack.Rules {
			made(r.ID, r.Makes)
		}
		for path, s := range c.pack.Steps {
			made(path.String(), s.Makes)
		}
	})
}

// Sentences promise nothing that no answer can promise.
var promise = regexp.MustCompile(`(?i)\b(safe|safely|compliant)\b`)

func TestSentencesPromiseNothing(t *testing.T) {
	each(t, func(t *testing.T, c *country) {
		for _, r := range c.pack.Rules {
			x := r.Text
			for _, sentence := range []string{x.Title, x.Fails, x.Presumed, x.Open, x.Holds, x.Why, x.Remedy} {
				if word := promise.FindString(sentence); word != "" {
					t.Errorf("%s says %q: %s", r.ID, word, sentence)
				}
			}
		}
		for _, caution := range c.pack.Cautions {
			if word := promise.FindString(caution.Text); word != "" {
				t.Errorf("caution %s says %q: %s", caution.ID, word, caution.Text)
			}
		}
	})
}

// A yes is bad news of a trouble and good news of a permit; no rule is both.
func TestNoRuleIsTroubleAndPermit(t *testing.T) {
	each(t, func(t *testing.T, c *country) {
		for _, r := range c.pack.Rules {
			if r.IsPermit() && r.IsTrouble() {
				t.Errorf("%s permits, and bars or calls too", r.ID)
			}
		}
	})
}
