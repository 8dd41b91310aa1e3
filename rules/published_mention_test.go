package rules

import (
	"slices"
	"strings"
	"testing"

	"underfoot/assess/result"
)

// checkMentions holds the findings, cautions and plan to the words that the
// answer has to have.
func (c *published) checkMentions(t *testing.T, r *result.Result) {
	t.Helper()
	text := strings.ToLower(everythingSaid(r))
	for _, wordings := range c.mention {
		if !slices.ContainsFunc(strings.Split(wordings, "|"), func(w string) bool { return strings.Contains(text, w) }) {
			t.Errorf("%s: nothing speaks of %q", c.id, wordings)
		}
	}
}

// everythingSaid is what a reader is told of a result, without the findings that are in
// order.
func everythingSaid(r *result.Result) string {
	var b strings.Builder
	for i := range r.Areas {
		for _, f := range r.Areas[i].Findings {
			if f.Outcome == result.Fails || f.Outcome == result.NotSettled {
				b.WriteString(f.Text + " " + f.Why + " " + f.Remedy + " ")
			}
		}
		for _, c := range r.Areas[i].Cautions {
			b.WriteString(c.Text + " ")
		}
		for _, z := range r.Areas[i].Zones {
			for _, s := range z.Plan {
				b.WriteString(s.Text + " " + s.Hold + " " + strings.Join(append(s.Verify, s.Needs...), " ") + " ")
			}
		}
	}
	return b.String()
}
