package book

import (
	"bytes"
	"fmt"
	"os"
	"regexp"
	"strings"
	"sync"
	"testing"

	"golang.org/x/net/html"

	"underfoot/assess"
	"underfoot/assess/figure"
	"underfoot/assess/message"
	"underfoot/assess/quantity"
	"underfoot/rules"
	"underfoot/rules/pack"
)

var engines = sync.OnceValue(func() []*rules.Engine {
	var all []*rules.Engine
	for _, region := range figure.Regions {
		e, err := rules.Open(region, quantity.US, message.English())
		if err != nil {
			panic(err)
		}
		all = append(all, e)
	}
	return all
})

var whole = sync.OnceValue(func() *Book {
	b, err := New(engines())
	if err != nil {
		panic(err)
	}
	return b
})

func markdown(t *testing.T, b *Book) string {
	t.Helper()
	var out bytes.Buffer
	if err := b.Markdown(&out); err != nil {
		t.Fatal(err)
	}
	return out.String()
}

func page(t *testing.T, b *Book) string {
	t.Helper()
	var out bytes.Buffer
	if err := b.HTML(&out); err != nil {
		t.Fatal(err)
	}
	return out.String()
}

// The book is the same whenever it is made: two makings, nothing shared.
func TestBookIsStable(t *testing.T) {
	var fresh []*rules.Engine
	for _, region := range figure.Regions {
		e, err := rules.Open(region, quantity.US, message.English())
		if err != nil {
			t.Fatal(err)
		}
		fresh = append(fresh, e)
	}
	again, err := New(fresh)
	if err != nil {
		t.Fatal(err)
	}
	if markdown(t, whole()) != markdown(t, again) || page(t, whole()) != page(t, again) {
		t.Error("two books of the same rules differ")
	}
}

// Whatever the program works with stands in the book under a heading of its own.
func TestBookHoldsEverything(t *testing.T) {
	ids := map[string]bool{}
	for _, b := range whole().doc.blocks {
		if b.id != "" && ids[b.id] {
			t.Errorf("%s stands twice", b.id)
		}
		ids[b.id] = true
	}
	want := func(prefix string, list ...string) {
		for _, id := range list {
			if !ids[prefix+id] {
				t.Errorf("%s%s is left out", prefix, id)
			}
		}
	}
	want("", chapters...)
	want("source-", figure.CitationIDs()...)
	for _, e := range engines() {
		want("figure-", e.Figures.IDs()...)
		for _, r := range e.Pack.Rules {
			want("rule-", r.ID)
		}
		for id := range e.Pack.Cautions {
			want("caution-", id)
		}
	}
	for _, p := range assess.Paths() {
		want("path-", p.String())
	}
}

func TestLinksLeadSomewhere(t *testing.T) {
	for _, broken := range whole().doc.links() {
		t.Errorf("a link to %s leads nowhere", broken)
	}
}

// A pack that the program does not ship stands in the book and says what it is.
func TestLocalPackStandsInTheBook(t *testing.T) {
	const name = "../../testdata/packs/example-harbour.toml"
	data, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	local, err := pack.ReadLocal(name, data)
	if err != nil {
		t.Fatal(err)
	}
	e, err := rules.Open(local.Regions()[0], quantity.US, message.English(), local)
	if err != nil {
		t.Fatal(err)
	}
	b, err := New([]*rules.Engine{e})
	if err != nil {
		t.Fatal(err)
	}
	text := markdown(t, b)
	for _, want := range []string{"**Local pack:** " + local.ID, "**Of a local pack, not of the program.**"} {
		if !strings.Contains(text, want) {
			t.Errorf("the book does not say %q", want)
		}
	}
	if broken := b.doc.links(); len(broken) > 0 {
		t.Errorf("links lead nowhere: %v", broken)
	}
	if strings.Contains(text, "testdata") {
		t.Error("the book names a folder of this machine")
	}
}

// Every word that a record may use has its meaning in the book.
func TestWordsAreExplained(t *testing.T) {
	has := func(table string, words map[string]string, word string) {
		if words[word] == "" {
			t.Errorf("%s %q is not explained", table, word)
		}
	}
	s := say()
	for _, e := range engines() {
		for _, r := range e.Pack.Rules {
			has("likelihood", s.Likelihood, r.Risk.Likelihood)
			has("likelihood", s.Likelihood, r.Risk.LikelihoodAfter)
			has("consequence", s.Consequence, r.Risk.Consequence)
			has("consequence", s.Consequence, r.Risk.ConsequenceAfter)
			has("protects", s.Protects, r.Protects)
			has("policy", s.Policy, string(r.Unknown))
			has("topic", s.Topic, topicOf(r.File))
		}
	}
	for v := assess.Ready; v <= assess.Hold; v++ {
		has("verdict", s.Verdict, v.String())
	}
}

// No sentence shows a hole that nothing filled, and no line of a table has more
// or fewer cells than its heading.
func TestMarkdownIsWhole(t *testing.T) {
	if hole := regexp.MustCompile(`{[a-z_.]+}`).FindString(markdown(t, whole())); hole != "" {
		t.Errorf("%s is not filled in", hole)
	}
	for _, b := range whole().doc.blocks {
		for _, row := range b.table.rows {
			if len(row) != len(b.table.heads) {
				t.Errorf("%d cells under %d headings: %v", len(row), len(b.table.heads), row)
			}
		}
	}
}

// The page is one file that loads and runs nothing, and its headings nest.
func TestPageStandsAlone(t *testing.T) {
	doc, err := html.Parse(strings.NewReader(page(t, whole())))
	if err != nil {
		t.Fatal(err)
	}
	last := 0
	for n := range doc.Descendants() {
		if n.Type != html.ElementNode {
			continue
		}
		switch n.Data {
		case "script", "link", "img", "iframe", "object", "form":
			t.Errorf("the page has a %s", n.Data)
		case "h1", "h2", "h3", "h4":
			level := int(n.Data[1] - '0')
			if level > last+1 {
				t.Errorf("a heading of level %d follows one of level %d", level, last)
			}
			last = level
		case "a":
			if href := n.Attr[0].Val; !strings.HasPrefix(href, "#") {
				t.Errorf("a link to %s leaves the page", href)
			}
		}
	}
}

func TestMarkdownKeepsTextAsText(t *testing.T) {
	for _, tt := range []struct{ text, want string }{
		{"a_b and *c*", `a\_b and \*c\*`},
		{"RH < 75 & > 3", "RH &lt; 75 &amp; &gt; 3"},
		{"# no heading", `\# no heading`},
		{"- no item", `\- no item`},
		{"2. no number", `2\. no number`},
		{"1/8 in stays", "1/8 in stays"},
	} {
		if got := first(plain(tt.text).markdown()); got != tt.want {
			t.Errorf("%q is written %q, want %q", tt.text, got, tt.want)
		}
	}
	d := document{}
	d.grid(table{heads: []string{"a"}, rows: [][]line{{plain("x|y")}}})
	var out bytes.Buffer
	if err := d.markdown(&out); err != nil || !strings.Contains(out.String(), `x\|y`) {
		t.Errorf("a bar in a cell is written %q, %v", out.String(), err)
	}
}

type full struct{}

func (full) Write([]byte) (int, error) { return 0, fmt.Errorf("device full") }

func TestWritersErrorComesBack(t *testing.T) {
	if err := whole().Markdown(full{}); err == nil {
		t.Error("a full device goes unnoticed by Markdown")
	}
	if err := whole().HTML(full{}); err == nil {
		t.Error("a full device goes unnoticed by HTML")
	}
}
