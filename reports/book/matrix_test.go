package book

import (
	"strings"
	"sync"
	"testing"

	"underfoot/assess"
	"underfoot/assess/message"
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
		if v := r.Verdict; v > assess.Prepare || !r.Areas[0].Zones[0].Path.IsBase() {
			t.Errorf("%s: the bare floor gets %s, %s", ground, v, r.Areas[0].Zones[0].Path)
		}
		for _, f := range r.Areas[0].Findings {
			if f.Outcome == assess.Fails || f.Outcome == assess.NotSettled && (f.Policy == assess.PolicyHold || f.Policy == assess.PolicyPresume) {
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
			for _, z := range []*assess.ZoneResult{r.bare, r.letter, r.old} {
				for _, p := range assess.Paths() {
					standing(z, p)
				}
			}
			if r.bare.Path == assess.FindOut || r.letter.Path == assess.FindOut {
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
		leads              assess.PathID
		open               string // bases that stand open, in the matrix's order
		letter             string // bases open with the maker's letter alone
		old                assess.PathID
	}{
		{"FL01 FL03 FL06", "joists", "sheet-vinyl", assess.BackerBoard, "backer-board", "direct-bond", assess.TestOrAbate},
		{"FL08 FL09", "joists", "vinyl-composition-tile", assess.BackerBoard, "backer-board", "direct-bond", assess.TestOrAbate},
		{"FL16", "joists", "linoleum", assess.BackerBoard, "backer-board", "", assess.TestOrAbate},
		{"FL11", "joists", "asphalt-tile", assess.Remove, "", "", assess.TestOrAbate},
		{"FL13", "joists", "luxury-vinyl", assess.Remove, "", "", assess.Remove},
		{"FL14 FL51", "slab", "laminate", assess.Remove, "", "", assess.Remove},
		{"FL17", "slab", "cork", assess.Remove, "", "", assess.Remove},
		{"FL18", "joists", "hardwood-strip", assess.Remove, "", "", assess.Remove},
		{"FL20", "joists", "parquet", assess.Remove, "", "", assess.Remove},
		{"FL22 FL23", "slab", "ceramic-tile", assess.DirectBond, "direct-bond", "", assess.DirectBond},
		{"FL39", "joists", "particleboard", assess.Remove, "", "", assess.Remove},
		{"FL42", "joists", "lauan", assess.Remove, "", "", assess.Remove},
		{"FL45", "slab", "black-glue", assess.Remove, "", "", assess.TestOrAbate},
		{"FL34 FL35", "joists", "gypsum-poured", assess.IsolateFull, "uncouple isolate-full", "", assess.IsolateFull},
		{"FL03 FL16 CB12", "slab", "sheet-vinyl", assess.Remove, "", "direct-bond", assess.TestOrAbate},
		{"FL16", "slab", "linoleum", assess.Remove, "", "", assess.TestOrAbate},
	} {
		r := judgedOnce()[tt.floor][tt.kind]
		if r.bare.Path != tt.leads || r.old.Path != tt.old {
			t.Errorf("%s on %s leads to %s, of the presumed years to %s; want %s and %s (%s)",
				tt.kind, tt.floor, r.bare.Path, r.old.Path, tt.leads, tt.old, tt.cites)
		}
		var open, letter []string
		for _, p := range bases {
			switch r.base(p) {
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
		if cell := r.base(assess.BackerBoard); cell != "no" {
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
