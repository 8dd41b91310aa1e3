package markdown

import (
	"bytes"
	"errors"
	"regexp"
	"strings"
	"testing"

	"underfoot/reports"
	"underfoot/reports/internal/sample"
)

func written(t *testing.T, v *reports.View) string {
	t.Helper()
	var b bytes.Buffer
	if err := Write(&b, v); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

func TestTextStaysText(t *testing.T) {
	for _, tt := range []struct{ text, want string }{
		{"a_b and *c*", `a\_b and \*c\*`},
		{"RH < 75 & > 3", "RH &lt; 75 &amp; &gt; 3"},
		{"# no heading", `\# no heading`},
		{"- no item", `\- no item`},
		{"2. no number", `2\. no number`},
		{"1/8 in stays", "1/8 in stays"},
	} {
		if got := first(literal(tt.text)); got != tt.want {
			t.Errorf("%q is written %q, want %q", tt.text, got, tt.want)
		}
	}
}

// view is one section with a table.
func view(table *reports.Table) *reports.View {
	v := reports.NewView(sample.Result(), reports.Options{})
	v.Sections = []reports.Section{{ID: "s", Heading: "A section", Parts: []reports.Part{{ID: "p", Heading: "A part", Table: table}}}}
	return v
}

func TestGridHasPipes(t *testing.T) {
	got := written(t, view(&reports.Table{Shape: reports.Grid,
		Columns: []reports.Column{{Heading: "Name", Role: reports.Title}, {Heading: "Value", Number: true}},
		Rows:    []reports.Row{{Cells: []reports.Cell{{Text: "x|y", ID: "x"}, {Text: "a\nb"}}}}}))
	for _, want := range []string{"| Name | Value |\n| --- | ---: |\n", `| <a id="x"></a>x\|y | a<br>b |`, "### A part", `<a id="p"></a>`} {
		if !strings.Contains(got, want) {
			t.Errorf("%q is not in\n%s", want, got)
		}
	}
}

func TestRecordIsAList(t *testing.T) {
	got := written(t, view(&reports.Table{
		Columns: []reports.Column{{Heading: "Name", Role: reports.Title}, {Heading: "Where"}, {Heading: "Written"}, {Heading: "Sees"}},
		Rows: []reports.Row{{Cells: []reports.Cell{{Text: "A rule", ID: "r"}, {Text: "all of these:\n  one\n  two"}, {Text: "a == 1", Code: true},
			reports.LinkCell([]reports.Link{{Text: "S1", To: "s1", Note: "from memory"}, {Text: "S2", To: "s2"}})}}}}))
	want := "#### A rule\n\n- **Where:**\n  - all of these:\n    - one\n    - two\n- **Written:** `a == 1`\n- **Sees:** [S1](#s1) (from memory); [S2](#s2)\n"
	if !strings.Contains(got, want) {
		t.Errorf("want\n%s\nin\n%s", want, got)
	}
}

// A result reads as Markdown too: every heading follows one that is at most one
// level higher, and no table has lines of another length than its head.
func TestResultIsWellFormed(t *testing.T) {
	text := written(t, reports.NewView(sample.Result(), reports.Options{}))
	last := 0
	for _, m := range regexp.MustCompile(`(?m)^(#+) `).FindAllStringSubmatch(text, -1) {
		if level := len(m[1]); level > last+1 {
			t.Errorf("a heading of level %d follows one of level %d", level, last)
		}
		last = len(m[1])
	}
	bars := 0
	for line := range strings.SplitSeq(text, "\n") {
		n := strings.Count(strings.ReplaceAll(line, `\|`, ""), "|")
		if strings.HasPrefix(line, "| ") && bars > 0 && n != bars {
			t.Errorf("%d bars under a head of %d: %s", n, bars, line)
		}
		if bars = n; !strings.HasPrefix(line, "| ") {
			bars = 0
		}
	}
	if !strings.Contains(text, "## Findings, worst first") || strings.Contains(text, "\n\n\n") {
		t.Error("the findings are missing, or two empty lines follow each other")
	}
}

type full struct{}

func (full) Write([]byte) (int, error) { return 0, errors.New("device full") }

func TestWriteGivesTheWritersError(t *testing.T) {
	if err := Write(full{}, view(&reports.Table{})); err == nil || !strings.Contains(err.Error(), "device full") {
		t.Errorf("got %v", err)
	}
}
