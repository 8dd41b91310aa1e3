package page

import (
	"bytes"
	"errors"
	"reflect"
	"slices"
	"strings"
	"testing"

	"golang.org/x/net/html"

	"underfoot/reports"
	"underfoot/reports/internal/sample"
)

func written(t *testing.T, o Options) string {
	t.Helper()
	var b bytes.Buffer
	if err := Write(&b, reports.NewView(sample.Result(), reports.Options{}), o); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

func elements(t *testing.T, page string) []*html.Node {
	t.Helper()
	doc, err := html.Parse(strings.NewReader(page))
	if err != nil {
		t.Fatal(err)
	}
	var out []*html.Node
	for n := range doc.Descendants() {
		if n.Type == html.ElementNode {
			out = append(out, n)
		}
	}
	return out
}

func attribute(n *html.Node, key string) string {
	for _, a := range n.Attr {
		if a.Key == key {
			return a.Val
		}
	}
	return ""
}

// The page is one file: it loads nothing and runs nothing.
func TestPageStandsAlone(t *testing.T) {
	page := written(t, Options{})
	for _, n := range elements(t, page) {
		if slices.Contains([]string{"script", "link", "img", "iframe", "object", "form"}, n.Data) {
			t.Errorf("the page has a %s", n.Data)
		}
		if href := attribute(n, "href"); href != "" && href[0] != '#' {
			t.Errorf("the page points to %s", href)
		}
	}
	for _, bad := range []string{"url(", "@import", "http://", "https://", "ZgotmplZ"} {
		if strings.Contains(page, bad) {
			t.Errorf("the page has %q", bad)
		}
	}
}

// Readers that jump from heading to heading find one title and no level left out.
func TestHeadingsNest(t *testing.T) {
	last, titles := 0, 0
	for _, n := range elements(t, written(t, Options{})) {
		if len(n.Data) != 2 || n.Data[0] != 'h' || n.Data[1] < '1' || n.Data[1] > '6' {
			continue
		}
		level := int(n.Data[1] - '0')
		if level > last+1 {
			t.Errorf("heading of level %d after %d", level, last)
		}
		if level == 1 {
			titles++
		}
		last = level
	}
	if titles != 1 {
		t.Errorf("%d titles", titles)
	}
}

func TestContentsLeadToEverySection(t *testing.T) {
	ids, links := map[string]bool{}, map[string]bool{}
	for _, n := range elements(t, written(t, Options{})) {
		if id := attribute(n, "id"); id != "" {
			if ids[id] {
				t.Errorf("two things are called %s", id)
			}
			ids[id] = true
		}
		if href := attribute(n, "href"); href != "" {
			links[strings.TrimPrefix(href, "#")] = true
		}
	}
	for link := range links {
		if !ids[link] {
			t.Errorf("a link to %s leads nowhere", link)
		}
	}
	for _, s := range reports.NewView(sample.Result(), reports.Options{}).Sections {
		if !links[s.ID] {
			t.Errorf("no link to %s", s.ID)
		}
	}
}

func TestTablesHaveHeadings(t *testing.T) {
	tables, scopes := 0, 0
	for _, n := range elements(t, written(t, Options{})) {
		switch n.Data {
		case "table":
			tables++
		case "th":
			if s := attribute(n, "scope"); s == "col" || s == "row" {
				scopes++
			} else {
				t.Error("a heading without a direction")
			}
		}
	}
	if tables < 5 || scopes < 3*tables {
		t.Errorf("%d tables with %d headings", tables, scopes)
	}
}

func TestMarksAreWords(t *testing.T) {
	page := written(t, Options{})
	for _, want := range []string{`<span class="mark">taken as trouble</span>`, `<span class="mark">not known</span>`, "This record is invented", "from memory"} {
		if !strings.Contains(page, want) {
			t.Errorf("the page lacks %s", want)
		}
	}
}

// What decided a finding stands behind a line that opens it, and nowhere else.
func TestDecidedIsFolded(t *testing.T) {
	folds := 0
	for _, n := range elements(t, written(t, Options{})) {
		if n.Data == "details" {
			folds++
			if text := n.FirstChild.FirstChild.Data; n.FirstChild.Data != "summary" || text != "What decided it" {
				t.Errorf("a fold opens with %s %q", n.FirstChild.Data, text)
			}
		}
	}
	if page := written(t, Options{}); folds != 1 || strings.Count(page, "Year it was laid (1958 to 2026)") != 1 {
		t.Errorf("%d folds in %q", folds, page)
	}
}

func TestForeignTextStaysText(t *testing.T) {
	r := sample.Result()
	r.Areas[0].Name = `<script>alert(1)</script>"'&`
	var b bytes.Buffer
	if err := Write(&b, reports.NewView(r, reports.Options{}), Options{}); err != nil {
		t.Fatal(err)
	}
	if strings.Contains(b.String(), "<script") {
		t.Error("a name became markup")
	}
}

func TestPaper(t *testing.T) {
	for paper, want := range map[string]string{"": "size: letter", "letter": "size: letter", "a4": "size: A4"} {
		if !strings.Contains(written(t, Options{Paper: paper}), want) {
			t.Errorf("paper %q does not give %q", paper, want)
		}
	}
	if err := Write(&bytes.Buffer{}, &reports.View{}, Options{Paper: "a5"}); err == nil {
		t.Error("an unknown paper is taken")
	}
}

func TestSameViewSameBytes(t *testing.T) {
	if first, second := written(t, Options{}), written(t, Options{}); first != second {
		t.Error("two pages of one view differ")
	}
}

type full struct{}

func (full) Write([]byte) (int, error) { return 0, errors.New("device full") }

func TestWriteGivesTheWritersError(t *testing.T) {
	if err := Write(full{}, reports.NewView(sample.Result(), reports.Options{}), Options{}); err == nil {
		t.Error("a full device goes unnoticed")
	}
}

// A text whose lines are set in becomes a list in a list.
func TestOutlineNests(t *testing.T) {
	got := outline("all of these:\n  one\n  any of these:\n    two\n  three\nlast")
	want := []item{{"all of these:", []item{{"one", nil}, {"any of these:", []item{{"two", nil}}}, {"three", nil}}}, {"last", nil}}
	if !reflect.DeepEqual(got, want) {
		t.Errorf("%+v, want %+v", got, want)
	}
	if got := outline("    deep\nflat"); len(got) != 2 {
		t.Errorf("a first line that is set in gives %+v", got)
	}
}

// A link leads to the cell that has its id, and code is marked as such.
func TestLinksLeadToCells(t *testing.T) {
	v := reports.NewView(sample.Result(), reports.Options{})
	v.Sections = []reports.Section{{ID: "s", Lead: []reports.Para{reports.LinkPara("See", []reports.Link{{Text: "there", To: "x"}})},
		Parts: []reports.Part{{Table: &reports.Table{
			Columns: []reports.Column{{Role: reports.Group}, {Role: reports.Title}, {Heading: "As written"}, {Heading: "Sources"}},
			Rows: []reports.Row{{Cells: []reports.Cell{{Text: "Group", ID: "g"}, {Text: "Title", ID: "x"}, {Text: "a == 1", Code: true},
				reports.LinkCell([]reports.Link{{Text: "S1", To: "g", Note: "from memory"}})}}},
		}}}}}
	var b bytes.Buffer
	if err := Write(&b, v, Options{}); err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{`<li><a href="#x">there</a></li>`, `<h3 id="g">Group</h3>`, `<h4 id="x">Title</h4>`, `<code>a == 1</code>`,
		`<a href="#g">S1</a> (from memory)`} {
		if !strings.Contains(b.String(), want) {
			t.Errorf("the page lacks %s", want)
		}
	}
}
