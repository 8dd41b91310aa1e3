package question

import (
	"embed"
	"io/fs"

	"underfoot/assess/condition"
	"underfoot/assess/datafile"
)

// The records as they stand in the files.
type (
	factRecord struct {
		ID        string          `toml:"id"`
		Scope     string          `toml:"scope"`
		Kind      string          `toml:"kind"`
		Dimension string          `toml:"dimension"`
		Choices   []string        `toml:"choices"`
		Bounds    string          `toml:"bounds"`
		Relevant  string          `toml:"relevant"`
		Nature    string          `toml:"nature"`
		Default   string          `toml:"default"`
		Family    string          `toml:"family"`
		Implied   []impliedRecord `toml:"implied"`
		group     string
	}
	impliedRecord struct {
		When string `toml:"when"`
		Then string `toml:"then"`
	}
	tallyRecord struct {
		ID    string `toml:"id"`
		Over  string `toml:"over"`
		Fold  string `toml:"fold"`
		When  string `toml:"when"`
		Of    string `toml:"of"`
		Where string `toml:"where"`
		Empty string `toml:"empty"`
	}
)

//go:embed catalogue/*.toml *.toml
var shipped embed.FS

// vocabularyFile holds the names of sets and conditions.
const vocabularyFile = "vocabulary.toml"

// groups is the order in which a person is led through the catalogue: dangers
// first, then what dates and names the old floor, then the rest.
var groups = []string{"danger", "site", "layer", "room", "zone", "tile", "water", "deck", "joist", "beam", "slab", "crack", "surface", "edge", "service", "load", "work"}

// readFacts reads the catalogue's files in group order.
func readFacts(files fs.FS) ([]factRecord, error) {
	var all []factRecord
	for _, group := range groups {
		var file struct {
			Fact []factRecord `toml:"fact"`
		}
		if err := decode(files, "catalogue/"+group+".toml", &file); err != nil {
			return nil, err
		}
		for i := range file.Fact {
			file.Fact[i].group = group
		}
		all = append(all, file.Fact...)
	}
	return all, nil
}

func readTallies(files fs.FS) ([]tallyRecord, error) {
	var file struct {
		Tally []tallyRecord `toml:"tally"`
	}
	err := decode(files, "tally.toml", &file)
	return file.Tally, err
}

// readWords reads the names that conditions share.
func readWords(files fs.FS) (condition.Definitions, error) {
	var d condition.Definitions
	return d, decode(files, vocabularyFile, &d)
}

func decode(files fs.FS, name string, into any) error {
	data, err := fs.ReadFile(files, name)
	if err != nil {
		return err
	}
	return datafile.Decode(name, data, into)
}
