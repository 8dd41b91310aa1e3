package main

import (
	"os/exec"
	"slices"
	"strings"
	"testing"
)

// allowed is the table of rooms: which of our packages each may import. One
// way in, one way through: a check never sees a rule, a rule never a reading,
// a report never a rule, but for the book, which is about rules.
var allowed = map[string]string{
	"assess/message":          "",
	"assess/plaintext":        "",
	"assess/quantity":         "assess/plaintext assess/message",
	"assess/formula":          "assess/quantity assess/message",
	"assess/figure":           "assess/quantity assess/message",
	"assess":                  "assess/quantity assess/formula assess/figure assess/message",
	"assess/condition":        "assess assess/figure assess/plaintext assess/quantity assess/message",
	"assess/question":         "assess assess/condition assess/figure assess/quantity assess/message",
	"assess/facts":            "assess assess/condition assess/question assess/quantity assess/message",
	"assess/structure":        "assess assess/figure assess/formula assess/quantity assess/message",
	"assess/buildup":          "assess assess/figure assess/formula assess/quantity assess/message",
	"assess/surface":          "assess assess/figure assess/formula assess/quantity assess/message",
	"assess/slab":             "assess assess/figure assess/formula assess/quantity assess/message",
	"assess/check":            "assess assess/figure assess/formula assess/quantity assess/structure assess/buildup assess/surface assess/slab assess/message",
	"assess/takeoff":          "assess assess/figure assess/quantity assess/message",
	"assess/record":           "assess assess/figure assess/plaintext assess/quantity assess/message",
	"rules/pack":              "assess assess/condition assess/figure assess/message",
	"rules/judge":             "assess assess/check assess/condition assess/facts assess/figure assess/quantity assess/question rules/pack assess/message",
	"rules/plan":              "assess assess/facts assess/quantity assess/takeoff rules/judge rules/pack assess/message",
	"rules/inquiry":           "assess assess/condition assess/facts assess/quantity assess/question rules/judge assess/message",
	"rules":                   "assess assess/check assess/condition assess/facts assess/figure assess/quantity assess/question rules/inquiry rules/judge rules/pack rules/plan assess/message",
	"rules/interview":         "assess assess/question rules/inquiry rules/judge assess/message",
	"reports":                 "assess assess/plaintext assess/formula assess/quantity reports/drawing assess/message",
	"reports/internal/sample": "assess assess/figure assess/formula assess/quantity assess/message",
	"reports/drawing":         "",
	"reports/workbook":        "reports assess/formula assess/quantity assess/message",
	"reports/page":            "reports assess/message",
	"reports/text":            "reports assess/message",
	"reports/markdown":        "reports",
	"reports/book":            "assess assess/condition assess/figure assess/message assess/quantity assess/question assess/record reports rules rules/judge rules/pack",
	"reports/data":            "assess assess/quantity assess/message",
	"cmd/internal/disk":       "assess assess/message",
	"cmd/internal/console":    "assess assess/plaintext assess/message",
	"cmd/internal/screen":     "assess assess/quantity assess/question rules/inquiry rules/interview cmd/internal/console assess/message",
	"cmd/internal/line":       "assess assess/quantity assess/question rules/inquiry rules/interview cmd/internal/console assess/message",
	"cmd/internal/cli":        "*",
	"cmd/underfoot":           "cmd/internal/cli cmd/internal/console",
}

// only names the packages that may import a library.
var only = map[string]string{
	"github.com/charmbracelet/huh":       "cmd/internal/screen",
	"github.com/xuri/excelize/v2":        "reports/workbook",
	"github.com/spf13/cobra":             "cmd/internal/cli",
	"go.yaml.in/yaml/v4":                 "assess/record",
	"github.com/gofrs/flock":             "cmd/internal/disk",
	"github.com/charmbracelet/bubbletea": "cmd/internal/screen",
}

func TestRoomsImportWhatTheyMay(t *testing.T) {
	out, err := exec.Command("go", "list", "-f", `{{.ImportPath}} {{join .Imports " "}}`, "underfoot/...").Output()
	if err != nil {
		t.Fatal(err)
	}
	for _, line := range strings.Split(strings.TrimSpace(string(out)), "\n") {
		room, imports, _ := strings.Cut(line, " ")
		room = strings.TrimPrefix(room, "underfoot/")
		may, known := allowed[room]
		if !known {
			t.Errorf("%s stands in no row of the table", room)
		}
		for _, i := range strings.Fields(imports) {
			checkImport(t, room, may, i)
		}
	}
}

func checkImport(t *testing.T, room, may, imported string) {
	if ours, ok := strings.CutPrefix(imported, "underfoot/"); ok {
		if may != "*" && !slices.Contains(strings.Fields(may), ours) {
			t.Errorf("%s imports %s, which the table does not allow", room, ours)
		}
		return
	}
	for library, place := range only {
		if imported == library && room != place {
			t.Errorf("%s imports %s, which belongs in %s alone", room, imported, place)
		}
	}
}
