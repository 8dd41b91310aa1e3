package rules

import (
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"underfoot/assess/record"
	"underfoot/assess/result"
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
		if _, ok := result.ParsePath(word); !ok && word != anotherFinish && word != onPaper {
			t.Fatalf("%s: %q is no path", name, word)
		}
	}
	return out
}

func (c *published) assess() *result.Result {
	job := c.doc.Job()
	return c.engine.Assess(job, job.Visited)
}

// tileOnly reports whether the answer was ways to lay tile and nothing else.
func (c *published) tileOnly() bool {
	return !slices.ContainsFunc(c.expected, func(word string) bool { return !lays(word) })
}

// noTile reports whether the answer was to stop, refer, dry, strengthen or
// take up, with no way to lay tile beside it and nothing left to find out.
func (c *published) noTile() bool {
	return !slices.ContainsFunc(c.expected, func(word string) bool { return lays(word) || word == result.FindOut.String() })
}

func lays(word string) bool {
	p, ok := result.ParsePath(word)
	return ok && (p.IsAssembly() || p == result.Level)
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
