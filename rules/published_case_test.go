package rules

import (
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"underfoot/assess"
	"underfoot/assess/record"
)

// A published case is a question that a real asker put in public, retold in
// our own words as a record of the facts that were told. Its first line says
// which paths the answer of practitioners comes to, and what must never lead.
// The gate beside it, Q-ID.gate, answers in the mildest way what the asker did
// not say: lines of address=value, as the command set takes them.
type published struct {
	id       string
	expected []string
	never    []string
	mention  []string // each one or more accepted wordings with | between them
	doc      *record.Document
	engine   *Engine
	gate     []string
}

var mentionLine = regexp.MustCompile(`(?m)^# must mention: (.+)$`)

// Words of the first line that are no path: not to tile at all, and to put the
// findings on paper.
const (
	anotherFinish = "another-finish"
	onPaper       = "document"
)

var publishedLine = regexp.MustCompile(`^# Q-(\w+): expected paths ([a-z, -]+); answer seen: (?:yes|partly|no)(?:; must not lead: ([a-z, -]+))?\n`)

func readPublished(t *testing.T) []published {
	t.Helper()
	names, err := filepath.Glob("../testdata/cases/Q-*.yaml")
	if err != nil {
		t.Fatal(err)
	}
	base, engines := openUS(t), map[opened]*Engine{}
	var out []published
	for _, name := range names {
		data, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		m := publishedLine.FindStringSubmatch(string(data))
		if m == nil || filepath.Base(name) != "Q-"+m[1]+".yaml" {
			t.Fatalf("%s does not say what it expects", name)
		}
		c := published{id: m[1], expected: words(t, name, m[2]), never: words(t, name, m[3]), gate: readGate(t, name)}
		if c.doc, err = record.Read(data, name, base.Catalogue); err != nil {
			t.Fatal(err)
		}
		if m := mentionLine.FindStringSubmatch(string(data)); m != nil {
			c.mention = strings.Split(m[1], "; ")
		}
		c.engine = engineOf(t, engines, c.doc.Job())
		out = append(out, c)
	}
	return out
}

// words are the paths of a list, each of which there must be.
func words(t *testing.T, name, list string) []string {
	t.Helper()
	if list == "" {
		return nil
	}
	out := strings.Split(list, ", ")
	for _, word := range out {
		if _, ok := assess.ParsePath(word); !ok && word != anotherFinish && word != onPaper {
			t.Fatalf("%s: %q is no path", name, word)
		}
	}
	return out
}

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

func (c *published) assess() *assess.Result {
	job := c.doc.Job()
	return c.engine.Assess(job, job.Visited)
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
	scope, isScope := assess.ParseScope(last)
	switch {
	case value == "none" && isScope && scope.Listed():
		target, value = target+".complete", "yes"
	case value == "none" && slices.Contains([]string{"danger", "water", "trouble"}, last):
		return c.family(target)
	}
	addr, err := assess.ParseAddress(target)
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
func (c *published) checkNarrows(t *testing.T, before, after *assess.Result) {
	t.Helper()
	for _, told := range before.Said {
		now, ok := after.Job.Answer(told.Address)
		kind := c.engine.Catalogue.Find(told.Address.Short()).Decl.Kind
		if !ok || told.Answer.Reply == assess.Given && !now.Set.Within(told.Answer.Set, kind) {
			t.Errorf("%s: its gate contradicts what was told of %s", c.id, told.Address)
		}
	}
}

// checkMentions holds the findings, cautions and plan to the words that the
// answer has to have.
func (c *published) checkMentions(t *testing.T, r *assess.Result) {
	t.Helper()
	text := strings.ToLower(told(r))
	for _, wordings := range c.mention {
		if !slices.ContainsFunc(strings.Split(wordings, "|"), func(w string) bool { return strings.Contains(text, w) }) {
			t.Errorf("%s: nothing speaks of %q", c.id, wordings)
		}
	}
}

// told is what a reader is told of a result, without the findings that are in
// order.
func told(r *assess.Result) string {
	var b strings.Builder
	for i := range r.Areas {
		for _, f := range r.Areas[i].Findings {
			if f.Outcome == assess.Fails || f.Outcome == assess.NotSettled {
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

// tileOnly reports whether the answer was ways to lay tile and nothing else.
func (c *published) tileOnly() bool {
	return !slices.ContainsFunc(c.expected, func(word string) bool { return !lays(word) })
}

// noTile reports whether the answer was to stop, refer, dry, strengthen or
// take up, with no way to lay tile beside it and nothing left to find out.
func (c *published) noTile() bool {
	return !slices.ContainsFunc(c.expected, func(word string) bool { return lays(word) || word == assess.FindOut.String() })
}

func lays(word string) bool {
	p, ok := assess.ParsePath(word)
	return ok && (p.IsBase() || p == assess.Level)
}

var arguedRow = regexp.MustCompile(`(?m)^\| Q-(\w+) \|`)

// readArgued are the cases of the table of disagreements.
func readArgued(t *testing.T) map[string]bool {
	t.Helper()
	data, err := os.ReadFile("../testdata/cases/README.md")
	if err != nil {
		t.Fatal(err)
	}
	out := map[string]bool{}
	for _, m := range arguedRow.FindAllStringSubmatch(string(data), -1) {
		out[m[1]] = true
	}
	return out
}
