package record_test

import (
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	"github.com/pelletier/go-toml/v2"

	"underfoot/assess/quantity"
	"underfoot/assess/record"
	"underfoot/assess/schema"
)

// words are the values of the catalogue's own records, read without the
// catalogue's synonyms: a record must not depend on them.
type words struct{ schema *schema.Schema }

func (w words) Schema() *schema.Schema { return w.schema }

func (w words) Read(d *schema.Declaration, text string, sys quantity.System) (schema.Set, error) {
	switch d.Kind {
	case schema.KindQuantity:
		r, err := quantity.Read(d.Dimension, text, sys)
		if err == nil && r.Meet(d.Bounds).IsEmpty() {
			err = fmt.Errorf("%s is outside what %s can be", text, d.ID)
		}
		return schema.Set{Range: r}, err
	case schema.KindText:
		return schema.Set{Text: text}, nil
	}
	var set schema.Set
	for word := range strings.SplitSeq(text, ", ") {
		bit, ok := d.ChoiceBit(word)
		if !ok {
			return set, fmt.Errorf("%q is not a choice of %s", word, d.ID)
		}
		set.Mask |= bit
	}
	return set, nil
}

func (w words) Write(d *schema.Declaration, s schema.Set, sys quantity.System) string {
	switch d.Kind {
	case schema.KindQuantity:
		return quantity.WriteExact(d.Dimension, s.Range, sys)
	case schema.KindText:
		return s.Text
	}
	return strings.Join(s.Words(d), ", ")
}

// values are those of the catalogue's records, and one derived fact.
var values = sync.OnceValue(func() record.Values {
	var list []schema.Declaration
	for _, file := range catalogueFiles {
		list = append(list, declarations("../question/catalogue/"+file+".toml")...)
	}
	return words{schema.NewSchema(append(list, schema.Declaration{
		ID: "layer.laid", Scope: schema.ScopeLayer, Kind: schema.KindQuantity, Dimension: quantity.Year, Nature: schema.Derived}))}
})

var catalogueFiles = []string{"danger", "site", "room", "tile", "zone", "joist", "beam", "slab", "water", "surface", "work",
	"layer", "deck", "crack", "edge", "service", "load"}

func declarations(path string) []schema.Declaration {
	data, err := os.ReadFile(path)
	if err != nil {
		panic(err)
	}
	var file struct {
		Fact []struct {
			ID, Scope, Kind, Dimension, Family, Bounds string
			Choices                                    []string
		}
	}
	if err := toml.Unmarshal(data, &file); err != nil {
		panic(err)
	}
	var out []schema.Declaration
	for _, f := range file.Fact {
		d := schema.Declaration{ID: f.ID, Choices: f.Choices, Family: f.Family, Bounds: quantity.Everything}
		d.Scope, _ = schema.ParseScope(f.Scope)
		d.Dimension, _ = quantity.ParseDimension(f.Dimension)
		d.Kind = map[string]schema.Kind{"yes-no": schema.KindYesNo, "choice": schema.KindChoice, "quantity": schema.KindQuantity, "text": schema.KindText}[f.Kind]
		switch d.Kind {
		case schema.KindYesNo:
			d.Choices = schema.YesNoChoices
		case schema.KindQuantity:
			d.Bounds = testBounds[d.Dimension]
		}
		out = append(out, d)
	}
	return out
}

// testBounds are wide enough for every record here, and narrow enough to fail.
var testBounds = map[quantity.Dimension]quantity.Range{
	quantity.Number: {Lo: 0, Hi: 1000}, quantity.Length: {Lo: 0, Hi: 6000}, quantity.Area: {Lo: 0, Hi: 1e5},
	quantity.Load: {Lo: 0, Hi: 150}, quantity.Weight: {Lo: 0, Hi: 1e5}, quantity.Strength: {Lo: 0, Hi: 1e4},
	quantity.Ratio: {Lo: 60, Hi: 5000}, quantity.Percent: {Lo: 0, Hi: 100}, quantity.Year: {Lo: 1600, Hi: 2200},
	quantity.Days: {Lo: 0, Hi: 1e5}, quantity.Emission: {Lo: 0, Hi: math.MaxInt8}, quantity.Points: {Lo: 0, Hi: 40},
}

// cases are the scenarios' record files.
func cases(t testing.TB) []string {
	files, err := filepath.Glob("../../testdata/cases/P*.yaml")
	if err != nil || len(files) != 25 {
		t.Fatalf("%d case files, %v", len(files), err)
	}
	return files
}

func load(t testing.TB, path string) (*record.Document, []byte) {
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return parse(t, string(data)), data
}

func parse(t testing.TB, text string) *record.Document {
	t.Helper()
	d, err := record.Read([]byte(text), "record.yaml", values())
	if err != nil {
		t.Fatal(err)
	}
	return d
}

func address(t testing.TB, text string) schema.Address {
	t.Helper()
	a, err := schema.ParseAddress(text)
	if err != nil {
		t.Fatal(err)
	}
	return a
}
