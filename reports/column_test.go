package reports

import (
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"underfoot/assess/message"
)

// named is a row of findings whose cells say what they are.
var named = findingRow{
	tone: Urgent, detail: true, place: "a room", stands: "as it stands", text: "a finding", about: "about", found: "found", limit: "a limit",
	why: "why", remedy: "what follows", missing: "not known", risk: "a risk", protects: "protects", rule: "a rule", sources: "sources",
	decided: "decided",
}

// byHead are the cells of a table's only row by the heading above each.
func byHead(t *Table) map[string]string {
	out := map[string]string{}
	for i, c := range t.Columns {
		out[c.Heading] = t.Rows[0].Cells[i].Text
	}
	return out
}

// A column that is moved, or left out, takes its cell with it.
func TestCellsStandUnderTheirHeads(t *testing.T) {
	whole := findingTable("findings", Records)
	want := byHead(whole.Of(message.English(), []findingRow{named}))
	for head, text := range map[string]string{"Finding": "a finding", "What follows": "what follows", "Rule": "a rule", "Room": "a room"} {
		if want[head] != text {
			t.Fatalf("under %s stands %q, want %q", head, want[head], text)
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		moved := whole
		moved.Columns = rapid.Permutation(whole.Columns).Draw(t, "columns")[:rapid.IntRange(1, len(whole.Columns)).Draw(t, "n")]
		for head, text := range byHead(moved.Of(message.English(), []findingRow{named})) {
			if text != want[head] {
				t.Fatalf("under %s stands %q, want %q", head, text, want[head])
			}
		}
	})
}

// Every field of a row is printed once: none is forgotten and none doubled.
func TestEveryFieldOfAFindingHasItsColumn(t *testing.T) {
	var texts []string
	for _, text := range byHead(findingTable("findings", Records).Of(message.English(), []findingRow{named})) {
		texts = append(texts, text)
	}
	slices.Sort(texts)
	if len(slices.Compact(texts)) != 14 || slices.Contains(texts, "") {
		t.Errorf("the row prints %s", strings.Join(texts, " | "))
	}
}

func TestRowHasToneAndDetail(t *testing.T) {
	row := findingTable("findings", Records).Of(message.English(), []findingRow{named}).Rows[0]
	if row.Tone != Urgent || !row.Detail {
		t.Errorf("tone %v, left out of a short print %v", row.Tone, row.Detail)
	}
	plain := TableOf[string]{Columns: []ColumnOf[string]{blankColumn[string]("report/column.date", 1)}}.Of(message.English(), []string{"x"}).Rows[0]
	if plain.Tone != Plain || plain.Detail || !plain.Cells[0].Blank {
		t.Errorf("a row of no design is %+v", plain)
	}
}
