package book

import (
	"os"
	"reflect"
	"regexp"
	"slices"
	"strings"
	"sync"
	"testing"

	"underfoot/assess/figure"
	"underfoot/assess/message"
	"underfoot/assess/quantity"
	"underfoot/assess/result"
	"underfoot/reports"
	"underfoot/rules"
	"underfoot/rules/pack"
)

func mustOpen(region string, packs ...*pack.Local) *rules.Engine {
	e, err := rules.Open(region, quantity.US, message.English(), packs...)
	if err != nil {
		panic(err)
	}
	return e
}

func opened() []*rules.Engine {
	var all []*rules.Engine
	for _, region := range figure.Regions {
		all = append(all, mustOpen(region))
	}
	return all
}

var engines = sync.OnceValue(opened)

func made(engines []*rules.Engine) *reports.View {
	v, err := New(engines)
	if err != nil {
		panic(err)
	}
	return v
}

var whole = sync.OnceValue(func() *reports.View { return made(engines()) })

// places are what links may point to, in order.
func places(v *reports.View) []string {
	var ids []string
	for _, s := range v.Sections {
		ids = append(ids, s.ID)
		for _, p := range s.Parts {
			ids = append(ids, p.ID)
			if p.Table == nil {
				continue
			}
			for _, g := range p.Table.Grouped() {
				ids = append(ids, g.ID)
			}
			group := p.Table.Find(reports.Group)
			for _, row := range p.Table.Rows {
				for i, c := range row.Cells {
					if i != group {
						ids = append(ids, c.ID)
					}
				}
			}
		}
	}
	return slices.DeleteFunc(ids, func(id string) bool { return id == "" })
}

// cells visits every cell of the view with the heading above it.
func cells(v *reports.View, visit func(heading string, c reports.Cell)) {
	for _, s := range v.Sections {
		for _, p := range s.Parts {
			if p.Table == nil {
				continue
			}
			for _, row := range p.Table.Rows {
				for i, c := range row.Cells {
					visit(p.Table.Columns[i].Heading, c)
				}
			}
		}
	}
}

// The book is the same whenever it is made: two makings, nothing shared.
func TestBookIsStable(t *testing.T) {
	if !reflect.DeepEqual(whole().Sections, made(opened()).Sections) {
		t.Error("two books of the same rules differ")
	}
}

// Whatever the program works with stands in the book at a place of its own.
func TestBookHoldsEverything(t *testing.T) {
	ids := map[string]bool{}
	for _, id := range places(whole()) {
		if ids[id] {
			t.Errorf("%s stands twice", id)
		}
		ids[id] = true
	}
	want := func(prefix string, list ...string) {
		for _, id := range list {
			if !ids[prefix+id] {
				t.Errorf("%s%s is left out", prefix, id)
			}
		}
	}
	want("", "verdicts", "paths", "unknown", "order", "risk", "rules", "matrix", "facts", "figures", "cautions", "citations")
	want("source-", figure.CitationIDs()...)
	for _, e := range engines() {
		want("figure-", e.Figures.IDs()...)
		for _, r := range e.Pack.Rules {
			want("rule-", r.ID)
			want("topic-", topicOf(r.File))
		}
		for id := range e.Pack.Cautions {
			want("caution-", id)
		}
	}
	for _, p := range result.Paths() {
		want("path-", p.String())
	}
}

// Every condition of every rule stands in the book as it is written.
func TestEveryConditionStandsAsWritten(t *testing.T) {
	written := map[string]bool{}
	cells(whole(), func(_ string, c reports.Cell) {
		for line := range strings.SplitSeq(c.Text, "\n") {
			written[line] = written[line] || c.Code
		}
	})
	for _, e := range engines() {
		for _, r := range e.Pack.Rules {
			want := []string{text(r.Applies), text(r.When), text(r.TakesUp)}
			for _, c := range r.UnknownWhen {
				want = append(want, string(c.Then)+": "+text(c.When))
			}
			for _, condition := range want {
				if condition != "" && !written[condition] {
					t.Errorf("%s: the book does not have %s", r.ID, condition)
				}
			}
		}
	}
}

// Every name that a condition uses stands in the book, with the rules that use it.
func TestNamesStandInTheBook(t *testing.T) {
	ids := places(whole())
	words := engines()[0].Pack.Words
	for _, s := range words.Sets() {
		if !slices.Contains(ids, "set-"+s.ID) {
			t.Errorf("the set %s is left out", s.ID)
		}
	}
	for _, p := range words.Parts() {
		if !slices.Contains(ids, "condition-"+p.ID) {
			t.Errorf("the condition %s is left out", p.ID)
		}
	}
	used := map[string]bool{}
	cells(whole(), func(heading string, c reports.Cell) {
		for _, l := range c.Links {
			used[heading] = used[heading] || strings.HasPrefix(l.To, "rule-")
		}
	})
	if !used["Used by"] {
		t.Error("no rule stands beside the names that it uses")
	}
}

// broken are the links that lead nowhere.
func broken(v *reports.View) []reports.Link {
	ids := map[string]bool{}
	for _, id := range places(v) {
		ids[id] = true
	}
	var links, lost []reports.Link
	cells(v, func(_ string, c reports.Cell) { links = append(links, c.Links...) })
	for _, s := range v.Sections {
		for _, p := range s.Lead {
			links = append(links, p.Links...)
		}
	}
	for _, l := range links {
		if !ids[l.To] {
			lost = append(lost, l)
		}
	}
	return lost
}

func TestLinksLeadSomewhere(t *testing.T) {
	if lost := broken(whole()); len(lost) > 0 {
		t.Errorf("links lead nowhere: %v", lost)
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
	v := made([]*rules.Engine{mustOpen(local.Regions()[0], local)})
	if !slices.ContainsFunc(v.Lead, func(p reports.Para) bool { return strings.HasPrefix(p.Text, "Local pack: "+local.ID) }) {
		t.Error("the book does not name the pack")
	}
	ofPack := false
	cells(v, func(_ string, c reports.Cell) {
		ofPack = ofPack || c.Text == "a local pack, not the program"
		if strings.Contains(c.Text, "testdata") {
			t.Errorf("the book names a folder of this machine: %s", c.Text)
		}
	})
	if !ofPack {
		t.Error("no rule says that it comes from the pack")
	}
	if lost := broken(v); len(lost) > 0 {
		t.Errorf("links lead nowhere: %v", lost)
	}
}

// Every word that a record may use has its meaning in the book.
func TestWordsAreExplained(t *testing.T) {
	has := func(key string) {
		if !message.English().Has(key) {
			t.Errorf("%s is not explained", key)
		}
	}
	for _, e := range engines() {
		for _, r := range e.Pack.Rules {
			has("book/likelihood." + r.Risk.Likelihood)
			has("book/likelihood." + r.Risk.LikelihoodAfter)
			has("book/consequence." + r.Risk.Consequence)
			has("book/consequence." + r.Risk.ConsequenceAfter)
			has("book/protects." + string(r.Protects))
			has("book/policy." + string(r.Unknown))
			has("book/topic." + topicOf(r.File))
			for _, c := range r.Cited {
				has("book/known." + c.Source.Known)
			}
		}
	}
}

// No sentence shows a hole that nothing filled.
func TestHolesAreFilled(t *testing.T) {
	hole := regexp.MustCompile(`{[a-z_.]+}`)
	cells(whole(), func(heading string, c reports.Cell) {
		if hole.MatchString(c.Text) {
			t.Errorf("%s: %s", heading, c.Text)
		}
	})
}

// What the book says by itself comes through the language of its reader.
func TestBookSpeaksTheReadersLanguage(t *testing.T) {
	pseudo, _ := message.Open(message.Pseudo)
	e, err := rules.Open("us", quantity.US, pseudo)
	if err != nil {
		t.Fatal(err)
	}
	v := made([]*rules.Engine{e})
	for _, s := range v.Sections {
		for _, text := range []string{v.Title, s.Heading, s.Sheet} {
			if !strings.HasPrefix(text, "⟦") {
				t.Errorf("%q does not come through the language", text)
			}
		}
		for _, p := range s.Lead {
			if p.Links == nil && !strings.HasPrefix(p.Text, "⟦") {
				t.Errorf("%s: %q does not come through the language", s.ID, p.Text)
			}
		}
	}
}
