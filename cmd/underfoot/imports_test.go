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
	"assess/message":          "assess/datafile",
	"assess/plaintext":        "",
	"assess/quantity":         "assess/plaintext assess/message",
	"assess/formula":          "assess/quantity assess/message",
	"assess/figure":           "assess/quantity assess/message assess/datafile",
	"assess/datafile":         "",
	"assess/logic":            "",
	"assess/schema":           "assess/logic assess/message assess/quantity",
	"assess/result":           "assess assess/figure assess/formula assess/logic assess/message assess/quantity assess/schema",
	"assess":                  "assess/message assess/logic assess/schema",
	"assess/condition":        "assess assess/figure assess/plaintext assess/quantity assess/message assess/logic assess/schema",
	"assess/question":         "assess assess/condition assess/quantity assess/message assess/schema assess/datafile",
	"assess/facts":            "assess assess/condition assess/question assess/quantity assess/logic assess/result assess/schema",
	"assess/structure":        "assess/figure assess/formula assess/quantity assess/message assess/logic assess/result assess/schema",
	"assess/buildup":          "assess/figure assess/formula assess/quantity assess/message assess/logic assess/result assess/schema",
	"assess/surface":          "assess/figure assess/quantity assess/logic assess/result assess/schema",
	"assess/check":            "assess/figure assess/structure assess/buildup assess/surface assess/result",
	"assess/takeoff":          "assess/figure assess/quantity assess/message assess/logic assess/result assess/datafile",
	"assess/record":           "assess assess/figure assess/plaintext assess/quantity assess/message assess/schema",
	"rules/pack":              "assess assess/condition assess/figure assess/message assess/logic assess/result assess/schema assess/datafile",
	"rules/judge":             "assess/condition assess/facts assess/figure assess/message assess/quantity assess/question rules/pack assess/logic assess/result assess/schema",
	"rules/plan":              "assess assess/facts assess/quantity assess/takeoff rules/judge assess/logic assess/result assess/schema",
	"rules/inquiry":           "assess assess/facts assess/quantity assess/question rules/judge assess/logic assess/result assess/schema",
	"rules/internal/trial":    "assess assess/check assess/condition assess/facts assess/figure assess/message assess/quantity assess/question rules/judge rules/pack assess/result assess/schema",
	"rules":                   "assess assess/check assess/condition assess/facts assess/figure assess/quantity assess/question rules/inquiry rules/judge rules/pack rules/plan assess/message assess/logic assess/result assess/schema",
	"rules/interview":         "assess assess/message assess/question rules/inquiry assess/quantity assess/logic assess/result assess/schema",
	"reports":                 "assess assess/plaintext assess/formula assess/quantity reports/drawing assess/message assess/result assess/schema",
	"reports/internal/sample": "assess assess/formula assess/quantity assess/message assess/result assess/schema",
	"reports/drawing":         "",
	"reports/workbook":        "reports assess/formula assess/quantity",
	"reports/page":            "reports",
	"reports/text":            "reports assess/plaintext",
	"reports/markdown":        "reports",
	"reports/book":            "assess assess/condition assess/figure assess/message assess/quantity assess/question assess/record reports rules rules/judge rules/pack assess/result assess/schema assess/datafile",
	"reports/data":            "assess/quantity assess/message assess/result assess/schema",
	"cmd/internal/disk":       "assess assess/message",
	"cmd/internal/console":    "assess assess/message",
	"cmd/internal/screen":     "assess assess/quantity assess/question rules/interview assess/message assess/plaintext assess/logic assess/result assess/schema",
	"cmd/internal/line":       "assess assess/quantity assess/question rules/interview assess/message assess/logic assess/schema",
	"cmd/internal/cli":        "assess assess/condition assess/figure assess/message assess/plaintext assess/quantity assess/question assess/record assess/structure cmd/internal/console cmd/internal/disk cmd/internal/line cmd/internal/screen reports reports/data reports/page reports/text reports/workbook rules rules/interview rules/judge rules/pack reports/book reports/markdown assess/result assess/schema",
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
	"github.com/charmbracelet/x/ansi":    "assess/plaintext",
}

// TestRoomsImportWhatTheyMay holds the table against the code both ways: a row,
// an import or a fence that nothing uses is as wrong as one that is missing, for
// the table is where a reader learns who knows whom.
func TestRoomsImportWhatTheyMay(t *testing.T) {
	out, err := exec.Command("go", "list", "-f", `{{.ImportPath}} {{join .Imports " "}}`, "underfoot/...").Output()
	if err != nil {
		t.Fatal(err)
	}
	rooms, libraries := map[string]bool{}, map[string]bool{}
	for _, line := range strings.Split(strings.TrimSpace(string(out)), "\n") {
		words := strings.Fields(line)
		room, imports := strings.TrimPrefix(words[0], "underfoot/"), words[1:]
		rooms[room] = true
		if _, known := allowed[room]; !known {
			t.Errorf("%s stands in no row of the table", room)
		}
		checkRoom(t, room, imports)
		for _, i := range imports {
			libraries[i] = true
			if place := only[i]; place != "" && place != room {
				t.Errorf("%s imports %s, which belongs in %s alone", room, i, place)
			}
		}
	}
	for room := range allowed {
		if !rooms[room] {
			t.Errorf("the table has a row for %s, which is not there", room)
		}
	}
	for library, place := range only {
		if !libraries[library] {
			t.Errorf("%s is kept for %s, and nothing imports it", library, place)
		}
	}
}

func checkRoom(t *testing.T, room string, imports []string) {
	t.Helper()
	may := strings.Fields(allowed[room])
	for _, i := range imports {
		if ours, ok := strings.CutPrefix(i, "underfoot/"); ok && !slices.Contains(may, ours) {
			t.Errorf("%s imports %s, which the table does not allow", room, ours)
		}
	}
	for _, m := range may {
		if !slices.Contains(imports, "underfoot/"+m) {
			t.Errorf("the table lets %s import %s, which it does not", room, m)
		}
	}
}
