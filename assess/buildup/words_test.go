package buildup

import (
	"os"
	"path/filepath"
	"slices"
	"testing"

	"github.com/pelletier/go-toml/v2"

	"underfoot/assess/figure"
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
	for _, d := range []schema.Declaration{substrate, tileKind, tileSetting} {
		if !slices.Equal(d.Choices, asked[d.ID]) {
			t.Errorf("%s: %v here, %v in the catalogue", d.ID, d.Choices, asked[d.ID])
		}
	}
}

// TestEveryTileHasItsWeight: by the inch, with a usual thickness.
func TestEveryTileHasItsWeight(t *testing.T) {
	for _, kind := range tileKind.Choices {
		if w, ok := figure.WeightOf(kind); !ok || !w.ByInch || w.Thickness == "" {
			t.Errorf("%s: %+v", kind, w)
		}
	}
}
