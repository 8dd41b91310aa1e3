package book

import (
	"strings"
	"sync"
	"testing"

	"underfoot/assess/message"
	"underfoot/assess/result"
)

// judgedOnce are the rows of every floor by kind of layer.
var judgedOnce = sync.OnceValue(func() map[string]map[string]row {
	all := map[string]map[string]row{}
	for _, g := range grounds {
		rows, err := matrixRows(engines()[0], g)
		if err != nil {
			panic(err)
		}
		all[g] = map[string]row{}
		for _, r := range rows {
			all[g][r.kind] = r
		}
	}
	return all
})

// The floors of the matrix are as good as they say: bare, nothing is asked and
// a base leads. Else a cell would show what the floor lacks, not the layer.
func TestMatrixFloorsAreGood(t *testing.T) {
	e := engines()[0]
	for _, ground := range grounds {
		g, err := open(ground, e.Catalogue)
		if err != nil {
			t.Fatal(err)
		}
		job, err := g.with("", noLetter)
		if err != nil {
			t.Fatal(err)
		}
		r := e.Assess(job, job.Visited)
		if v := r.Verdict; v > result.Prepare || !r.Areas[0].Zones[0].Path.IsAssembly() {
			t.Errorf("%s: the bare floor gets %s, %s", ground, v, r.Areas[0].Zones[0].Path)
		}
		for _, f := range r.Areas[0].Findings {
			if f.Outcome == result.Fails || f.Outcome == result.NotSettled && (f.Policy == result.PolicyHold || f.Policy == result.PolicyPresume) {
				t.Errorf("%s: the bare floor has %s: %s", ground, f.ID, f.Outcome)
			}
		}
	}
}

// Every kind of layer meets every way to go on, and nothing waits for an answer.
func TestMatrixIsComplete(t *testing.T) {
	kinds := engines()[0].Catalogue.Schema().Find("layer.kind").Choices
	for _, ground := range grounds {
		rows := judgedOnce()[ground]
		for _, kind := range kinds {
			r, ok := rows[kind]
			if !ok {
				t.Fatalf("%s: %s has no row", ground, kind)
			}
			for _, z := range []*result.ZoneResult{r.bare, r.letter, r.old} {
				for _, p := range result.Paths() {
					standing(z, p)
				}
			}
			if r.bare.Path == result.FindOut || r.letter.Path == result.FindOut {
				t.Errorf("%s: %s ends in a question", ground, kind)
			}
		}
	}
}

// What the statements of the facts table say of each old floor. The source is
// the citation beside each line; the cells are those of the best such layer.
func TestMatrixAgainstTheFacts(t *testing.T) {
	for _, tt := range []struct {
		cites, floor, kind string
		leads              result.PathID
		open               string // bases that stand open, in the matrix's order
		letter             string // bases open with the maker's letter alone
		old                result.PathID
	}{
		{"FL01 FL03 FL06", "joists", "sheet-vinyl", result.BackerBoard, "backer-board", "direct-bond", result.TestOrAbate},
		{"FL08 FL09", "joists", "vinyl-composition-tile", result.BackerBoard, "backer-board", "direct-bond", result.TestOrAbate},
		{"FL16", "joists", "linoleum", result.BackerBoard, "backer-board", "", result.TestOrAbate},
		{"FL11", "joists", "asphalt-tile", result.Remove, "", "", result.TestOrAbate},
		{"FL13", "joists", "luxury-vinyl", result.Remove, "", "", result.Remove},
		{"FL14 FL51", "slab", "laminate", result.Remove, "", "", result.Remove},
		{"FL17", "slab", "cork", result.Remove, "", "", result.Remove},
		{"FL18", "joists", "hardwood-strip", result.Remove, "", "", result.Remove},
		{"FL20", "joists", "parquet", result.Remove, "", "", result.Remove},
		{"FL22 FL23", "slab", "ceramic-tile", result.DirectBond, "direct-bond", "", result.DirectBond},
		{"FL39", "joists", "particleboard", result.Remove, "", "", result.Remove},
		{"FL42", "joists", "lauan", result.Remove, "", "", result.Remove},
		{"FL45", "slab", "black-glue", result.Remove, "", "", result.TestOrAbate},
		{"FL34 FL35", "joists", "gypsum-poured", result.IsolateFull, "uncouple isolate-full", "", result.IsolateFull},
		{"FL03 FL16 CB12", "slab", "sheet-vinyl", result.Remove, "", "direct-bond", result.TestOrAbate},
		{"FL16", "slab", "linoleum", result.Remove, "", "", result.TestOrAbate},
	} {
		r := judgedOnce()[tt.floor][tt.kind]
		if r.bare.Path != tt.leads || r.old.Path != tt.old {
			t.Errorf("%s on %s leads to %s, of the presumed years to %s; want %s and %s (%s)",
				tt.kind, tt.floor, r.bare.Path, r.old.Path, tt.leads, tt.old, tt.cites)
		}
		var open, letter []string
		for _, p := range bases {
			switch r.assembly(p) {
			case "yes", "leads":
				open = append(open, p.String())
			case "letter":
				letter = append(letter, p.String())
			}
		}
		if strings.Join(open, " ") != tt.open || strings.Join(letter, " ") != tt.letter {
			t.Errorf("%s on %s: open %v, with a letter %v; want %q and %q (%s)", tt.kind, tt.floor, open, letter, tt.open, tt.letter, tt.cites)
		}
	}
}

// Backer board is for wood-framed floors alone (CB12), so no slab opens it.
func TestNoBoardOnASlab(t *testing.T) {
	for kind, r := range judgedOnce()["slab"] {
		if cell := r.assembly(result.BackerBoard); cell != "no" {
			t.Errorf("%s on a slab: backer board is %q", kind, cell)
		}
	}
}

// Each word that a cell may say stands in the chapter's own text.
func TestMatrixWordsAreExplained(t *testing.T) {
	text := message.English().Text("book/lead.matrix_words")
	for _, key := range []string{"yes", "leads", "letter", "ask", "later"} {
		if word := message.English().Text("book/cell." + key); !strings.Contains(text, "'"+word+"'") {
			t.Errorf("%s is not explained", word)
		}
	}
}
