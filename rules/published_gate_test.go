package rules

import (
	"os"
	"slices"
	"strings"
	"testing"

	"underfoot/assess"
	"underfoot/assess/result"
	"underfoot/assess/schema"
)

// readGate reads the lines of the gate beside a record. A case may have none.
func readGate(t *testing.T, name string) []string {
	t.Helper()
	data, err := os.ReadFile(strings.TrimSuffix(name, ".yaml") + ".gate")
	if err != nil && !os.IsNotExist(err) {
		t.Fatal(err)
	}
	var out []string
	for line := range strings.Lines(string(data)) {
		if line = strings.TrimSpace(line); line != "" && !strings.HasPrefix(line, "#") {
			out = append(out, line)
		}
	}
	return out
}

// openGate answers what the gate asks for, each answer from a paper.
func (c *published) openGate(t *testing.T) {
	t.Helper()
	for _, line := range c.gate {
		target, value, ok := strings.Cut(line, "=")
		if !ok {
			t.Fatalf("%s: %q is not address=value", c.id, line)
		}
		if err := c.answer(target, value); err != nil {
			t.Fatalf("%s: %s: %v", c.id, line, err)
		}
	}
}

// answer takes one answer, a whole family or an empty list.
func (c *published) answer(target, value string) error {
	words := strings.Split(target, ".")
	last := words[len(words)-1]
	scope, isScope := schema.ParseScope(last)
	switch {
	case value == "none" && isScope && scope.Listed():
		target, value = target+".complete", "yes"
	case value == "none" && slices.Contains([]string{"danger", "water", "trouble"}, last):
		return c.family(target)
	}
	addr, err := schema.ParseAddress(target)
	if err != nil {
		return err
	}
	return c.doc.Put(addr, assess.Answer{Text: value, Basis: assess.Document})
}

// family answers every member of a family with no, in the zone before its name
// or in the first.
func (c *published) family(target string) error {
	area := c.doc.Job().Areas[0]
	zone := area.Zones[0].ID
	if before, after, ok := strings.Cut(target, "."); ok && before != "joist" {
		zone, target = before, after
	}
	return c.doc.PutFamily(area.ID, zone, target, assess.Answer{Basis: assess.Document})
}

// checkNarrows refuses a gate that contradicts what was told: it may settle
// which of several, and never another.
func (c *published) checkNarrows(t *testing.T, before, after *result.Result) {
	t.Helper()
	for _, told := range before.Answers {
		now, ok := after.Job.Answer(told.Address)
		kind := c.engine.Catalogue.Find(told.Address.Short()).Decl.Kind
		if !ok || told.Answer.Reply == assess.Given && !now.Set.Within(told.Answer.Set, kind) {
			t.Errorf("%s: its gate contradicts what was told of %s", c.id, told.Address)
		}
	}
}
