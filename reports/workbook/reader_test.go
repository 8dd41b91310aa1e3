package workbook

import (
	"context"
	"encoding/csv"
	"encoding/json"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/xuri/excelize/v2"
)

// expected is what the program says of every formula: by sheet and cell.
func expected(t *testing.T, book []byte) map[string]map[string]string {
	t.Helper()
	f := opened(t, book)
	out := map[string]map[string]string{}
	for _, name := range []string{"Calculations", "Heights"} {
		out[name] = map[string]string{}
		rows, err := f.GetRows(name, excelize.Options{RawCellValue: true})
		if err != nil {
			t.Fatal(err)
		}
		for r := range rows {
			for c := range rows[r] {
				cell := cellName(c+1, r+1)
				if formula, _ := f.GetCellFormula(name, cell); formula != "" {
					out[name][cell] = rows[r][c]
				}
			}
		}
	}
	if len(out["Calculations"]) < 20 || len(out["Heights"]) < 6 {
		t.Fatalf("%d and %d formulas", len(out["Calculations"]), len(out["Heights"]))
	}
	return out
}

// same compares texts as such and numbers to ten digits.
func same(got, want string) bool {
	g, gerr := strconv.ParseFloat(got, 64)
	w, werr := strconv.ParseFloat(want, 64)
	if gerr != nil || werr != nil {
		return got == want
	}
	return math.Abs(g-w) <= 1e-10*math.Max(1, math.Abs(w))
}

// An office program that is given no results computes the same ones. It is run
// on the workbook without them, since it would trust even wrong ones.
func TestOfficeProgramComputesTheSame(t *testing.T) {
	if testing.Short() {
		t.Skip("starts an office program")
	}
	soffice, err := exec.LookPath("soffice")
	if err != nil {
		t.Skip("no office program here")
	}
	dir := t.TempDir()
	in := filepath.Join(dir, "in.xlsx")
	if err := os.WriteFile(in, built(t, sampleView(), Options{}), 0o600); err != nil {
		t.Fatal(err)
	}
	ctx, cancel := context.WithTimeout(t.Context(), 2*time.Minute)
	defer cancel()
	// one file of comma separated values a sheet, numbers in full
	filter := `csv:Text - txt - csv (StarCalc):44,34,76,1,,0,false,false,false,false,false,-1`
	cmd := exec.CommandContext(ctx, soffice, "-env:UserInstallation=file://"+filepath.Join(dir, "profile"),
		"--headless", "--convert-to", filter, "--outdir", dir, in)
	if out, err := cmd.CombinedOutput(); err != nil {
		t.Fatalf("%v: %s", err, out)
	}
	for sheet, cells := range expected(t, built(t, sampleView(), Options{Cached: true})) {
		text, err := os.ReadFile(filepath.Join(dir, "in-"+sheet+".csv"))
		if err != nil {
			t.Fatal(err)
		}
		r := csv.NewReader(strings.NewReader(string(text)))
		r.FieldsPerRecord = -1
		rows, err := r.ReadAll()
		if err != nil {
			t.Fatal(err)
		}
		for cell, want := range cells {
			c, row, _ := excelize.CellNameToCoordinates(cell)
			if got := rows[row-1][c-1]; !same(got, want) {
				t.Errorf("%s!%s: the office program has %s, the program %s", sheet, cell, got, want)
			}
		}
	}
}

// dump reads a workbook with an independent library and prints its cells.
const dump = `
import json, sys, openpyxl
b = openpyxl.load_workbook(sys.argv[1], data_only=True)
print(json.dumps({"creator": b.properties.creator, "created": str(b.properties.created),
  "sheets": {s.title: {c.coordinate: c.value for row in s.iter_rows() for c in row if c.value is not None} for s in b}}, default=str))
`

// reader finds a Python that has the library.
func reader(t *testing.T) string {
	for _, name := range []string{"python3", "/usr/bin/python3"} {
		if exec.Command(name, "-c", "import openpyxl").Run() == nil {
			return name
		}
	}
	t.Skip("no independent reader here")
	return ""
}

func TestIndependentReaderSeesTheSame(t *testing.T) {
	python := reader(t)
	v := sampleView()
	book := built(t, v, Options{Cached: true})
	file := filepath.Join(t.TempDir(), "book.xlsx")
	if err := os.WriteFile(file, book, 0o600); err != nil {
		t.Fatal(err)
	}
	out, err := exec.Command(python, "-c", dump, file).Output()
	if err != nil {
		t.Fatal(err)
	}
	var got struct {
		Creator, Created string
		Sheets           map[string]map[string]any
	}
	if err := json.Unmarshal(out, &got); err != nil {
		t.Fatal(err)
	}
	if got.Creator != "underfoot" || !strings.HasPrefix(got.Created, "2026-05-04") {
		t.Errorf("made by %q on %q", got.Creator, got.Created)
	}
	for sheet, cells := range expected(t, book) {
		for cell, want := range cells {
			value := got.Sheets[sheet][cell]
			if number, isNumber := value.(float64); isNumber {
				value = strconv.FormatFloat(number, 'g', -1, 64)
			} else if _, err := strconv.ParseFloat(want, 64); err == nil {
				t.Errorf("%s!%s is read as a text", sheet, cell)
			}
			if !same(value.(string), want) {
				t.Errorf("%s!%s: the reader has %v, the program %s", sheet, cell, value, want)
			}
		}
	}
	for _, text := range []string{"=measured from below\nPhotos: span one.jpg", "cupboard full"} {
		if !holds(got.Sheets["Answers"], text) {
			t.Errorf("the reader does not see %q", text)
		}
	}
}

func holds(cells map[string]any, text string) bool {
	for _, v := range cells {
		if v == text {
			return true
		}
	}
	return false
}
