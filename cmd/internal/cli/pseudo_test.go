package cli

import (
	"archive/zip"
	"bytes"
	"encoding/json"
	"html"
	"io"
	"maps"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"underfoot/assess/message"
)

// threeWords in a row are, or belong to, a sentence.
var threeWords = regexp.MustCompile(`\b[A-Z]?[a-z][a-z'’-]*(?: [A-Z]?[a-z][a-z'’-]*){2,}\b`)

// texts are the texts of a JSON document, those of a page between its tags, and
// those of a workbook's cells; of anything else the lines.
func texts(t *testing.T, name string, data []byte) []string {
	t.Helper()
	switch filepath.Ext(name) {
	case ".json":
		var v any
		if err := json.Unmarshal(data, &v); err != nil {
			t.Fatal(err)
		}
		return jsonTexts(v)
	case ".html":
		return []string{html.UnescapeString(between.ReplaceAllString(string(data), "\n"))}
	case ".xlsx":
		return cellTexts(t, data)
	}
	return []string{string(data)}
}

// between is what is no text of a page.
var between = regexp.MustCompile(`(?s)<style.*?</style>|<[^>]*>`)

func jsonTexts(v any) (list []string) {
	switch v := v.(type) {
	case string:
		return []string{v}
	case []any:
		for _, e := range v {
			list = append(list, jsonTexts(e)...)
		}
	case map[string]any:
		for _, e := range v {
			list = append(list, jsonTexts(e)...)
		}
	}
	return list
}

var cell = regexp.MustCompile(`(?s)<t[^>]*>(.*?)</t>`)

func cellTexts(t *testing.T, data []byte) (list []string) {
	t.Helper()
	z, err := zip.NewReader(bytes.NewReader(data), int64(len(data)))
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range z.File {
		r, err := f.Open()
		if err != nil {
			t.Fatal(err)
		}
		part, err := io.ReadAll(r)
		if err != nil {
			t.Fatal(err)
		}
		for _, m := range cell.FindAllSubmatch(part, -1) {
			list = append(list, html.UnescapeString(string(m[1])))
		}
	}
	return list
}

// A known leak is a place whose words still reach a reader in English, and why.
// A row that nothing leaks from any more fails the test: take it out.
type leak struct{ files, why string }

var known = []leak{
	{"cmd/internal/cli/demo.yaml", "a person's own words"},
	{"assess/figure/*.*", "published sources, and what figures are"},
	{"rules/pack/shipped/*.toml", "the names of cases, in what is printed of a rule"},
}

func TestEverySentenceComesFromTheHomeOfWords(t *testing.T) {
	if testing.Short() {
		t.Skip("writes every kind of report")
	}
	found := map[string]string{}
	for _, p := range printed(t) {
		for _, words := range threeWords.FindAllString(message.Unbracketed(p.text), -1) {
			found[strings.ToLower(words)] = p.name
		}
	}
	for _, k := range known {
		texts := corpus(t, k.files)
		before := len(found)
		maps.DeleteFunc(found, func(words, _ string) bool { return holds(texts, words) })
		if len(found) == before {
			t.Errorf("nothing leaks from %s any more (%s): take the row out", k.files, k.why)
		}
		t.Logf("%5d from %s: %s", before-len(found), k.files, k.why)
	}
	for words, name := range found {
		t.Errorf("%s: %q stands in no brackets", name, words)
	}
}

// holds reports whether words stand in a text, but for one at either end that a
// value may have brought.
func holds(text, words string) bool {
	_, behind, _ := strings.Cut(words, " ")
	before := words[:strings.LastIndexByte(words, ' ')]
	return strings.Contains(text, words) || strings.Contains(text, behind) || strings.Contains(text, before)
}

// corpus is the text of files, on one line.
func corpus(t *testing.T, pattern string) string {
	t.Helper()
	var all strings.Builder
	files, err := filepath.Glob(filepath.Join("../../..", pattern))
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range files {
		if strings.HasSuffix(f, "_test.go") {
			continue
		}
		data, err := os.ReadFile(f)
		if err != nil {
			t.Fatal(err)
		}
		all.WriteString(strings.ToLower(strings.Join(strings.Fields(string(data)), " ")) + "\n")
	}
	return all.String()
}

// A print is one text that a reader gets, and from which command.
type print struct{ name, text string }

// printed is what the commands print and write in the pseudo-language.
func printed(t *testing.T) (list []print) {
	t.Helper()
	dir := t.TempDir()
	record := filepath.Join(dir, "demo.yaml")
	if err := os.WriteFile(record, demoRecord, 0o600); err != nil {
		t.Fatal(err)
	}
	call := func(stdin string, args ...string) {
		_, out, errs := run(t, stdin, append(args, "--lang", message.Pseudo)...)
		list = append(list, print{strings.Join(args[:1], " "), out}, print{strings.Join(args[:1], " ") + ", errors", errs})
	}
	call("", "assess", "--all", record)
	call("", "assess", "--why", "asbestos-presumed-layer", record)
	for _, ending := range []string{".txt", ".html", ".json", ".xlsx"} {
		out := filepath.Join(dir, "out"+ending)
		call("", "report", record, "-o", out)
		data, err := os.ReadFile(out)
		if err != nil {
			t.Fatal(err)
		}
		for _, text := range texts(t, out, data) {
			list = append(list, print{"report " + ending, text})
		}
	}
	call("", "compare", record, record)
	call("", "joist", "--size", "2x10", "--species", "hem-fir", "--grade", "no2", "--spacing", "16in", "--span", "14ft")
	call("", "rules", "list")
	call("", "rules", "show", "asbestos-presumed-layer")
	call("", "rules", "book")
	call("", "rules", "test", "--region", "uk")
	call("?\n1\n?\nnone\n?\nnot sure\n9\nx\n", "walk", "--plain", filepath.Join(dir, "walk.yaml"))
	for _, pair := range []string{"joist.spacing=16' OC", "nope=1", "layer.l1.kind=xx", "zone.base=joist", "joist.span=-3ft", "joist.span=14",
		"joist.span.basis=bad", "area.x.name=1", "crack=none", "crack.c9=remove", "x"} {
		call("", "set", record, pair)
	}
	for _, command := range []string{"assess", "compare", "demo", "joist", "report", "rules", "schema", "set", "walk", "exit-codes", "frob"} {
		call("", "help", command)
	}
	return list
}
