package pack

import (
	"bufio"
	"bytes"
	"flag"
	"os"
	"strings"
	"testing"
)

var update = flag.Bool("update", false, "write the list of mutants that no case catches")

const survivorsFile = "testdata/survivors.txt"

// compare holds the survivors against the list, in which an argument may stand
// behind each.
func (n *census) compare(t *testing.T) {
	listed := survivors(t)
	if *update {
		writeSurvivors(t, n.survivors, listed)
		return
	}
	for _, s := range n.survivors {
		if _, ok := listed[s]; !ok {
			t.Errorf("no case catches this mutant: add one, or list it with -update and say why: %s", s)
		}
		delete(listed, s)
	}
	if n.sparse > 1 {
		return
	}
	for s := range listed {
		t.Errorf("listed as surviving, but caught or gone: %s", s)
	}
}

// argued stands between a survivor and why it is one.
const argued = "  # "

// survivors reads the list: each with its argument.
func survivors(t *testing.T) map[string]string {
	data, err := os.ReadFile(survivorsFile)
	if err != nil && !*update {
		t.Fatal(err)
	}
	listed := map[string]string{}
	for in := bufio.NewScanner(bytes.NewReader(data)); in.Scan(); {
		survivor, why, _ := strings.Cut(in.Text(), argued)
		listed[survivor] = why
	}
	return listed
}

func writeSurvivors(t *testing.T, names []string, arguments map[string]string) {
	var out bytes.Buffer
	for _, s := range names {
		out.WriteString(s)
		if why := arguments[s]; why != "" {
			out.WriteString(argued + why)
		}
		out.WriteString("\n")
	}
	if err := os.WriteFile(survivorsFile, out.Bytes(), 0o644); err != nil {
		t.Fatal(err)
	}
}
