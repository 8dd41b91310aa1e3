package structure

import (
	"os"
	"path/filepath"
	"slices"
	"testing"

	"github.com/pelletier/go-toml/v2"

	"underfoot/assess/schema"
)

// TestWordsAreThoseOfTheCatalogue holds the choice words here to the order of
// the question catalogue, whose bits the facts carry.
func TestWordsAreThoseOfTheCatalogue(t *testing.T) {
	asked := map[string][]string{}
	files, _ := filepath.Glob("../question/catalogue/*.toml")
	for _, file := range files {
		data, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		var doc struct {
			Fact []struct {
				ID      string
				Choices []string
			}
		}
		if err := toml.Unmarshal(data, &doc); err != nil {
			t.Fatal(file, err)
		}
		for _, f := range doc.Fact {
			asked[f.ID] = f.Choices
		}
	}
	for _, d := range []schema.Declaration{substrate, member, figureFrom, knownLoad, species, grade, notched, continuity, tileKind, deckKind, choices("load.kind", LoadKinds...)} {
		if !slices.Equal(d.Choices, asked[d.ID]) {
			t.Errorf("%s: %v here, %v in the catalogue", d.ID, d.Choices, asked[d.ID])
		}
	}
}
