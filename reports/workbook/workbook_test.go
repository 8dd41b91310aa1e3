package workbook

import (
	"archive/zip"
	"bytes"
	"io"
	"regexp"
	"strings"
	"testing"
	"time"

	"github.com/xuri/excelize/v2"

	"underfoot/assess/result"
	"underfoot/reports"
	"underfoot/reports/internal/sample"
)

func sampleView() *reports.View { return reports.NewView(sample.Result(), reports.Options{}) }

func built(t testing.TB, v *reports.View, o Options) []byte {
	t.Helper()
	b, err := Build(v, o)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// parts are the parts of a workbook by name.
func parts(t *testing.T, book []byte) map[string]string {
	t.Helper()
	z, err := zip.NewReader(bytes.NewReader(book), int64(len(book)))
	if err != nil {
		t.Fatal(err)
	}
	out := map[string]string{}
	for i, f := range z.File {
		if (i == 0) != (f.Name == typesPart) {
			t.Errorf("part %d is %s", i, f.Name)
		}
		if want := time.Date(2026, 5, 4, 12, 0, 0, 0, time.UTC); !f.Modified.Equal(want) {
			t.Errorf("%s is dated %s, the visit was on 2026-05-04", f.Name, f.Modified)
		}
		r, err := f.Open()
		if err != nil {
			t.Fatal(err)
		}
		text, err := io.ReadAll(r)
		if err != nil {
			t.Fatal(err)
		}
		out[f.Name] = string(text)
	}
	return out
}

func opened(t *testing.T, book []byte) *excelize.File {
	t.Helper()
	f, err := excelize.OpenReader(bytes.NewReader(book))
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { f.Close() })
	return f
}

func TestSheetsAreThoseOfTheView(t *testing.T) {
	want := []string{"Summary", "Rooms", "Findings", "To find out", "Plan", "Quantities", "Heights", "Calculations", "Cautions", "Answers", "Not checked", "Sources", "Sign-off"}
	if got := opened(t, built(t, sampleView(), Options{})).GetSheetList(); strings.Join(got, "|") != strings.Join(want, "|") {
		t.Errorf("sheets %v", got)
	}
	empty := reports.NewView(&result.Result{}, reports.Options{})
	for _, name := range opened(t, built(t, empty, Options{})).GetSheetList() {
		if name == "Plan" || name == "Calculations" {
			t.Errorf("%s has nothing to say and is there", name)
		}
	}
}

// The library packs its parts in changing order with the clock's date.
func TestSameViewSameBytes(t *testing.T) {
	for _, o := range []Options{{}, {Cached: true, Paper: "a4"}} {
		if !bytes.Equal(built(t, sampleView(), o), built(t, sampleView(), o)) {
			t.Errorf("two workbooks of one view differ with %+v", o)
		}
	}
}

// One reader refuses core properties without their prefix.
func TestCorePropertiesHavePrefixAndDate(t *testing.T) {
	core := parts(t, built(t, sampleView(), Options{}))["docProps/core.xml"]
	for _, want := range []string{"<cp:coreProperties ", ">2026-05-04T12:00:00Z</dcterms:created>", "<dc:creator>underfoot</dc:creator>"} {
		if !strings.Contains(core, want) {
			t.Errorf("%s is missing in %s", want, core)
		}
	}
}

var anyFormula = regexp.MustCompile(`<c [^>]*><f>[^<]*</f>(<v>[^<]*</v>)?</c>`)

// The library writes every formula's result as text.
func TestFormulaResultsHaveTheirType(t *testing.T) {
	numbers, texts := 0, 0
	for name, text := range parts(t, built(t, sampleView(), Options{Cached: true})) {
		if !strings.HasPrefix(name, "xl/worksheets/sheet") {
			continue
		}
		for _, m := range anyFormula.FindAllStringSubmatch(text, -1) {
			isText := strings.Contains(m[0], `t="str"`)
			if isText {
				texts++
			} else {
				numbers++
			}
			if isNumber := regexp.MustCompile(`^<v>[-0-9.e+]+</v>$`).MatchString(m[1]); isNumber == isText {
				t.Errorf("%s: result and type do not fit", m[0])
			}
		}
	}
	if numbers < 15 || texts < 10 {
		t.Errorf("%d numbers and %d texts are computed", numbers, texts)
	}
}

func TestUncachedFormulasHaveNoResult(t *testing.T) {
	formulas := 0
	for _, text := range parts(t, built(t, sampleView(), Options{})) {
		for _, m := range anyFormula.FindAllStringSubmatch(text, -1) {
			formulas++
			if m[1] != "" {
				t.Errorf("%s has a result", m[0])
			}
		}
	}
	if formulas < 25 {
		t.Errorf("%d formulas", formulas)
	}
}

func TestForeignTextStaysText(t *testing.T) {
	for _, text := range []string{"=1+1", "+1", "-1", "@SUM(A1)", "_x0041_ and _x005F_x0041_", "_x0041_x0042_", "_x00_", "a & b < c", "  spaces  ", `=HYPERLINK("x")`} {
		r := sample.Result()
		r.Areas[1].Name = text
		f := opened(t, built(t, reports.NewView(r, reports.Options{}), Options{Cached: true}))
		cell := cellWith(t, f, "Summary", text)
		if cell == "" {
			t.Errorf("%q is not read back", text)
			continue
		}
		if formula, _ := f.GetCellFormula("Summary", cell); formula != "" {
			t.Errorf("%q became the formula %s", text, formula)
		}
	}
}

// cellWith is the first cell that holds exactly the text, or empty.
func cellWith(t *testing.T, f *excelize.File, sheet, text string) string {
	t.Helper()
	rows, err := f.GetRows(sheet)
	if err != nil {
		t.Fatal(err)
	}
	for r := range rows {
		for c := range rows[r] {
			if rows[r][c] == text {
				return cellName(c+1, r+1)
			}
		}
	}
	return ""
}

func TestTooLongTextIsCutVisibly(t *testing.T) {
	long := strings.Repeat("\U0001F9F1a", cellLimit)
	got := cellText(long)
	if units(got) > cellLimit || units(got) < cellLimit-2 || !strings.HasSuffix(got, cut) {
		t.Errorf("%d units, ends in %q", units(got), got[len(got)-10:])
	}
	if fits := strings.Repeat("a", cellLimit); cellText(fits) != fits {
		t.Error("a text that fits was cut")
	}
}

var definedName = regexp.MustCompile(`^(_xlnm\.Print_(Titles|Area)|[a-z]+_[0-9]+_[a-z0-9_]+)$`)

func TestDefinedNamesAreValidAndPointToACell(t *testing.T) {
	names := opened(t, built(t, sampleView(), Options{})).GetDefinedName()
	seen := map[string]bool{}
	for _, n := range names {
		if !definedName.MatchString(n.Name) || seen[n.Name+n.Scope] {
			t.Errorf("name %q is malformed or doubled", n.Name)
		}
		seen[n.Name+n.Scope] = true
		if !regexp.MustCompile(`^'[^']+'!\$`).MatchString(n.RefersTo) {
			t.Errorf("%s refers to %s", n.Name, n.RefersTo)
		}
	}
	if !seen["sum_1_span_low"+"Workbook"] {
		t.Error("no name for the low end of the span")
	}
}

// A sheet filter over a table makes one office program offer a repair.
func TestTablesHaveUniqueHeadingsAndNoSheetFilter(t *testing.T) {
	tables := 0
	for name, text := range parts(t, built(t, sampleView(), Options{})) {
		if strings.HasPrefix(name, "xl/worksheets/sheet") && strings.Contains(text, "<autoFilter") {
			t.Errorf("%s has a sheet filter", name)
		}
		if !strings.HasPrefix(name, "xl/tables/") {
			continue
		}
		tables++
		seen := map[string]bool{}
		for _, m := range regexp.MustCompile(`<tableColumn [^>]*name="([^"]*)"`).FindAllStringSubmatch(text, -1) {
			if m[1] == "" || seen[m[1]] {
				t.Errorf("%s: heading %q is empty or doubled", name, m[1])
			}
			seen[m[1]] = true
		}
	}
	if tables < 10 {
		t.Errorf("%d tables", tables)
	}
}

func TestEveryStyleNamesItsFace(t *testing.T) {
	styles := parts(t, built(t, sampleView(), Options{}))["xl/styles.xml"]
	used := regexp.MustCompile(`<xf [^>]*fontId="([0-9]+)"`).FindAllStringSubmatch(styles[strings.Index(styles, "<cellXfs"):strings.Index(styles, "</cellXfs>")], -1)
	fonts := regexp.MustCompile(`(?s)<font>.*?</font>`).FindAllString(styles, -1)
	if len(used) < 8 || len(fonts) < 4 {
		t.Fatalf("%d styles, %d fonts", len(used), len(fonts))
	}
	for _, font := range fonts[1:] { // the first is the library's own, for cells without a style
		if !strings.Contains(font, `<name val="`+face+`"`) || !strings.Contains(font, "<sz ") {
			t.Errorf("%s names no face or size", font)
		}
	}
}

func TestPagesAreSet(t *testing.T) {
	for paper, want := range map[string]int{"": 1, "letter": 1, "a4": 9} {
		f := opened(t, built(t, sampleView(), Options{Paper: paper}))
		for _, name := range f.GetSheetList() {
			layout, err := f.GetPageLayout(name)
			if err != nil {
				t.Fatal(err)
			}
			panes, err := f.GetPanes(name)
			if err != nil {
				t.Fatal(err)
			}
			if *layout.Size != want || *layout.FitToWidth != 1 || !panes.Freeze {
				t.Errorf("%s on %q: paper %d, fit %d, frozen %v", name, paper, *layout.Size, *layout.FitToWidth, panes.Freeze)
			}
			running, err := f.GetHeaderFooter(name)
			if err != nil {
				t.Fatal(err)
			}
			if !strings.Contains(running.OddFooter, "&P of &N") || !strings.Contains(running.OddFooter, "invented") {
				t.Errorf("%s: footer %q", name, running.OddFooter)
			}
		}
	}
	if _, err := Build(sampleView(), Options{Paper: "a5"}); err == nil {
		t.Error("an unknown paper is taken")
	}
}

func TestRunningTextFitsAHeader(t *testing.T) {
	for text, want := range map[string]string{"a & b": "a && b", "12 Lane": " 12 Lane", "two\nlines": "two lines", strings.Repeat("x", 30): "xxxxxxxxxxxxxx [...]"} {
		if got := running(text, 20); got != want {
			t.Errorf("%q becomes %q, want %q", text, got, want)
		}
	}
}

func TestLinesGrowWithTheText(t *testing.T) {
	for _, c := range []struct {
		text  string
		width int
		want  int
	}{
		{"", 20, 1}, {"short", 20, 1}, {"one\ntwo", 20, 2}, {"aaaaaaaa bbbbbbbb cccccccc", 10, 3}, {strings.Repeat("x", 55), 20, 3},
	} {
		if got := lines(c.text, c.width); got != c.want {
			t.Errorf("%q in %d: %d lines, want %d", c.text, c.width, got, c.want)
		}
	}
}

// BenchmarkBuild builds 12 sheets with 200 findings.
func BenchmarkBuild(b *testing.B) {
	r := sample.Result()
	for len(r.Areas[0].Findings) < 200 {
		r.Areas[0].Findings = append(r.Areas[0].Findings, r.Areas[0].Findings[1])
	}
	v := reports.NewView(r, reports.Options{})
	for b.Loop() {
		built(b, v, Options{Cached: true})
	}
}
