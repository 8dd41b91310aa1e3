package workbook

import (
	"archive/zip"
	"bytes"
	"encoding/xml"
	"fmt"
	"io"
	"io/fs"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"time"

	"github.com/xuri/excelize/v2"

	"underfoot/reports"
)

// An archive gathers the parts of the workbook and mends them before they are
// packed: parts in one order with one date, so that equal reports are equal
// bytes; formula results with their own type, where the library writes all of
// them as text; core properties under the prefix that every reader knows.
type archive struct {
	out      io.Writer
	parts    map[string]*bytes.Buffer
	core     []byte
	day      string // of the visit, 2006-01-02, or empty
	formulas map[string]map[string]any
	cached   bool
}

func (a *archive) open(w io.Writer) excelize.ZipWriter {
	a.out, a.parts = w, map[string]*bytes.Buffer{}
	return a
}

// Create takes a part.
func (a *archive) Create(name string) (io.Writer, error) {
	a.parts[name] = &bytes.Buffer{}
	return a.parts[name], nil
}

// AddFS is not used by the library for what is built here.
func (a *archive) AddFS(fs.FS) error { return fmt.Errorf("no file system goes into a workbook") }

const typesPart = "[Content_Types].xml"

// Close packs the parts, the list of their types first.
func (a *archive) Close() error {
	names := make([]string, 0, len(a.parts))
	for name := range a.parts {
		names = append(names, name)
	}
	slices.SortFunc(names, func(x, y string) int {
		if (x == typesPart) != (y == typesPart) {
			return map[bool]int{true: -1, false: 1}[x == typesPart]
		}
		return strings.Compare(x, y)
	})
	z := zip.NewWriter(a.out)
	for _, name := range names {
		w, err := z.CreateHeader(&zip.FileHeader{Name: name, Method: zip.Deflate, Modified: noon(a.day)})
		if err != nil {
			return err
		}
		if _, err := w.Write(a.mended(name)); err != nil {
			return err
		}
	}
	return z.Close()
}

func (a *archive) mended(name string) []byte {
	text := a.parts[name].Bytes()
	if name == "docProps/core.xml" {
		return a.core
	}
	if results, ok := a.formulas[name]; ok {
		return typed(text, results, a.cached)
	}
	return text
}

// formulaCell is a cell with a formula as the library writes it: always with
// the type of a text.
var formulaCell = regexp.MustCompile(`<c r="([A-Z]+[0-9]+)"( s="[0-9]+")? t="str"><f>([^<]*)</f>(?:<v>[^<]*</v>)?</c>`)

// typed gives every formula cell the type of its result, and the result itself
// where it is wanted.
func typed(text []byte, results map[string]any, cached bool) []byte {
	return formulaCell.ReplaceAllFunc(text, func(cell []byte) []byte {
		m := formulaCell.FindSubmatch(cell)
		kind, value := "", ""
		switch v := results[string(m[1])].(type) {
		case float64:
			value = strconv.FormatFloat(v, 'g', -1, 64)
		case string:
			kind, value = ` t="str"`, escape(v)
		}
		if !cached {
			return fmt.Appendf(nil, `<c r="%s"%s><f>%s</f></c>`, m[1], m[2], m[3])
		}
		return fmt.Appendf(nil, `<c r="%s"%s%s><f>%s</f><v>%s</v></c>`, m[1], m[2], kind, m[3], value)
	})
}

func escape(text string) string {
	var b strings.Builder
	// writing to a Builder never fails
	_ = xml.EscapeText(&b, []byte(text))
	return b.String()
}

// noon is the middle of the day, or of the first day that the archive format
// can name where there is none.
func noon(d string) time.Time {
	t, err := time.Parse(time.DateOnly, d)
	if err != nil {
		t = time.Date(1980, time.January, 1, 0, 0, 0, 0, time.UTC)
	}
	return t.Add(12 * time.Hour)
}

// coreProperties are title, maker and date of the document, dated by the
// assessment and not by the clock.
func coreProperties(v *reports.View) []byte {
	at := noon(string(v.Day)).Format(time.RFC3339)
	return fmt.Appendf(nil, xml.Header+`<cp:coreProperties xmlns:cp="http://schemas.openxmlformats.org/package/2006/metadata/core-properties"`+
		` xmlns:dc="http://purl.org/dc/elements/1.1/" xmlns:dcterms="http://purl.org/dc/terms/" xmlns:xsi="http://www.w3.org/2001/XMLSchema-instance">`+
		`<dc:title>%s</dc:title><dc:subject>%s</dc:subject><dc:creator>underfoot</dc:creator><dc:language>%s</dc:language>`+
		`<dcterms:created xsi:type="dcterms:W3CDTF">%s</dcterms:created><dcterms:modified xsi:type="dcterms:W3CDTF">%s</dcterms:modified></cp:coreProperties>`,
		escape(v.Title), escape(v.Subtitle), escape(v.Language.Tag), at, at)
}
