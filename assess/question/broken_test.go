package question

import (
	"fmt"
	"io/fs"
	"strings"
	"testing"
	"testing/fstest"

	"underfoot/assess"
	"underfoot/assess/figure"
	"underfoot/assess/message"
	"underfoot/assess/quantity"
)

// small is a catalogue of two lists and a few facts; every file that the
// catalogue reads is there.
func small() fstest.MapFS {
	files := fstest.MapFS{}
	for _, group := range groups {
		files["catalogue/"+group+".toml"] = &fstest.MapFile{}
	}
	put := func(name, text string) { files[name] = &fstest.MapFile{Data: []byte(text)} }
	put("catalogue/zone.toml", `[[fact]]
id = "zone.base"
scope = "zone"
kind = "choice"
choices = ["joists", "slab"]
nature = "found"
`)
	put("catalogue/layer.toml", `[[fact]]
id = "layer.thickness"
scope = "layer"
kind = "quantity"
dimension = "length"
bounds = "1/4 .. 12 in"
relevant = 'zone.base == "slab"'
nature = "found"

[[fact]]
id = "layer.kind"
scope = "layer"
kind = "choice"
choices = ["vinyl", "tile"]
nature = "found"
implied = [{when = 'zone.base == "slab"', then = "tile"}]
`)
	put("tally.toml", `[[tally]]
id = "floor.all"
over = "layer"
fold = "count"
when = 'layer.kind == "tile"'

[[tally]]
id = "floor.top"
over = "layer"
fold = "first"
of = "layer.kind"
empty = "bare"
`)
	put("vocabulary.toml", "")
	text := func(id, label, choices string) string {
		return fmt.Sprintf("[%q]\nlabel = %q\nask = \"a\"\nwhy = \"w\"\nhow = \"h\"\nlimits = \"l\"\nwho = \"owner\"\nchoices = {%s}\n", id, label, choices)
	}
	put("text.en.toml", text("zone.base", "Base", `joists = "Joists", slab = "Slab"`)+text("layer.thickness", "Thickness", "")+
		text("layer.kind", "Kind", `vinyl = "Vinyl", tile = "Tile"`))
	put("group.en.toml", "zone = \"Base\"\nlayer = \"Layers\"\n")
	put("word.en.toml", "[words.\"layer.kind\"]\nlino = [\"vinyl\"]\n")
	return files
}

func TestSmallCatalogueOpens(t *testing.T) {
	c, err := open(small(), figure.For("us", quantity.US), nil, message.English())
	if err != nil {
		t.Fatal(err)
	}
	if q := c.Find("zone.base"); q.Text.Label != "Base" || q.Group != "zone" {
		t.Errorf("%+v", q)
	}
	if d := c.Find("layer.thickness").Decl; d.Bounds != (quantity.Range{Lo: 0.25, Hi: 12}) || d.Always {
		t.Errorf("%+v", d)
	}
	if set, err := c.Read(c.Find("layer.kind").Decl, "Lino", quantity.US); err != nil || set.Mask != 1 {
		t.Errorf("lino reads as %+v, %v", set, err)
	}
	if top := c.Tallies[1]; top.Fold != First || c.Schema().Decl(top.ID).Choices[2] != "bare" || top.Empty.Mask != 4 {
		t.Errorf("%+v", top)
	}
}

// One broken place for each validation.
func TestBrokenCatalogueSaysWhy(t *testing.T) {
	for _, b := range []struct{ name, file, from, to, want string }{
		{"key that no record has", "catalogue/zone.toml", `nature =`, `natur =`, "catalogue/zone.toml"},
		{"not TOML", "catalogue/zone.toml", `scope = "zone"`, `scope = zone`, "catalogue/zone.toml"},
		{"key that no tally has", "tally.toml", `fold =`, `folds =`, "tally.toml"},
		{"texts are not TOML", "text.en.toml", `ask = "a"`, `ask = a`, "text.en.toml"},
		{"text with a key that none has", "text.en.toml", `limits =`, `limmits =`, "limmits"},
		{"text of no question", "text.en.toml", `["zone.base"]`, `["zone.bass"]`, "text zone.bass: there is no question of that id"},
		{"question without a text", "text.en.toml", `["zone.base"]`, `["zone.bass"]`, "text zone.base: `label` is missing"},
		{"sentence that is missing", "text.en.toml", `why = "w"`, `why = ""`, "text zone.base: `why` is missing"},
		{"choice without a label", "text.en.toml", `joists = "Joists", `, ``, "text zone.base: `choices.joists` is missing"},
		{"hole that nothing fills", "text.en.toml", `ask = "a"`, `ask = "a {zone.base}"`, "`ask` has a brace"},
		{"group of no questions", "group.en.toml", `zone =`, `zones =`, "group zones: there is no group of that name"},
		{"group without a title", "group.en.toml", `zone = "Base"`, ``, "group zone: `zone` is missing"},
		{"words of no question", "word.en.toml", `layer.kind`, `layer.sort`, "word layer.sort: there is no question of that id"},
		{"words of no choice", "word.en.toml", `["vinyl"]`, `["vinil"]`, `"lino" stands for vinil, which is no choice`},
		{"words under another key", "word.en.toml", `[words.`, `[word.`, "word"},
		{"scope", "catalogue/zone.toml", `"zone"`, `"house"`, `zone.base: "house" is not a scope`},
		{"kind", "catalogue/zone.toml", `"choice"`, `"word"`, `zone.base: "word" is not a kind`},
		{"nature", "catalogue/zone.toml", `"found"`, `"seen"`, `zone.base: "seen" is not a nature`},
		{"dimension", "catalogue/layer.toml", `"length"`, `"width"`, `layer.thickness: "width" is not a dimension`},
		{"bounds without an end", "catalogue/layer.toml", `"1/4 .. 12 in"`, `"1/4 in"`, "layer.thickness: bounds"},
		{"bounds that are no lengths", "catalogue/layer.toml", `"1/4 .. 12 in"`, `"thin .. 12 in"`, "layer.thickness: bounds"},
		{"relevance names no fact", "catalogue/layer.toml", `zone.base == "slab"'`, `zone.bass == "slab"'`, "there is no fact zone.bass"},
		{"relevance names no choice", "catalogue/layer.toml", `zone.base == "slab"'`, `zone.base == "slap"'`, "slap"},
		{"implied names no fact", "catalogue/layer.toml", `when = 'zone.base`, `when = 'zone.bass`, "there is no fact zone.bass"},
		{"implied value is no choice", "catalogue/layer.toml", `then = "tile"`, `then = "tiles"`, `"tiles" is not a choice of layer.kind`},
		{"tally over no list", "tally.toml", `over = "layer"`, `over = "zone"`, `tally floor.all: "zone" is not a list`},
		{"tally without its condition", "tally.toml", `when = 'layer.kind == "tile"'`, ``, "tally floor.all: count needs a condition"},
		{"tally of no fold", "tally.toml", `fold = "count"`, `fold = "mean"`, `tally floor.all: "mean" is not a fold`},
		{"tally of no fact", "tally.toml", `of = "layer.kind"`, `of = "layer.sort"`, `tally floor.top: there is no fact "layer.sort"`},
		{"tally's condition", "tally.toml", `layer.kind == "tile"`, `layer.sort == "tile"`, "there is no fact layer.sort"},
	} {
		t.Run(b.name, func(t *testing.T) {
			files := small()
			text := string(files[b.file].Data)
			if !strings.Contains(text, b.from) {
				t.Fatalf("%s has no %q", b.file, b.from)
			}
			files[b.file] = &fstest.MapFile{Data: []byte(strings.Replace(text, b.from, b.to, 1))}
			if _, err := open(files, figure.For("us", quantity.US), nil, message.English()); err == nil || !strings.Contains(err.Error(), b.want) {
				t.Errorf("error %v\nwant %q in it", err, b.want)
			}
		})
	}
}

func TestMissingFileIsAnError(t *testing.T) {
	for name := range small() {
		files := small()
		delete(files, name)
		if _, err := open(files, figure.For("us", quantity.US), nil, message.English()); err == nil || !strings.Contains(err.Error(), name) {
			t.Errorf("without %s: %v", name, err)
		}
	}
}

func TestProblemsComeAllAtOnce(t *testing.T) {
	files := small()
	for _, name := range []string{"catalogue/layer.toml", "tally.toml"} {
		data, err := fs.ReadFile(files, name)
		if err != nil {
			t.Fatal(err)
		}
		files[name] = &fstest.MapFile{Data: []byte(strings.NewReplacer(`zone.base ==`, `zone.bass ==`, `layer.kind ==`, `layer.sort ==`).Replace(string(data)))}
	}
	_, err := open(files, figure.For("us", quantity.US), nil, message.English())
	problems, ok := err.(assess.Problems)
	if !ok || len(problems) != 3 {
		t.Fatalf("%v", err)
	}
}

func TestReadBounds(t *testing.T) {
	for _, tt := range []struct {
		dim  quantity.Dimension
		text string
		want quantity.Range
	}{
		{quantity.Length, "1/4 in .. 4 in", quantity.Range{Lo: 0.25, Hi: 4}},
		{quantity.Length, "0 .. 12 in", quantity.Range{Lo: 0, Hi: 12}},
		{quantity.Length, "2 ft .. 40 ft", quantity.Range{Lo: 24, Hi: 480}},
		{quantity.Length, "1 .. 60 ft", quantity.Range{Lo: 12, Hi: 720}}, // the unit of the far end
		{quantity.Length, "-12 in .. 12 in", quantity.Range{Lo: -12, Hi: 12}},
		{quantity.Length, "8 .. 48", quantity.Range{Lo: 8, Hi: 48}}, // bare: the base unit
		{quantity.Load, "20 .. 150", quantity.Range{Lo: 20, Hi: 150}},
		{quantity.Weight, "0 .. 20000", quantity.Range{Lo: 0, Hi: 20000}},
		{quantity.Number, "1 .. 1000", quantity.Range{Lo: 1, Hi: 1000}},
		{quantity.Percent, "0 .. 100", quantity.Range{Lo: 0, Hi: 100}},
		{quantity.Year, "1600 .. visited", quantity.Range{Lo: 1600, Hi: 2200}},
	} {
		if got, err := readBounds(tt.dim, tt.text); err != nil || got != tt.want {
			t.Errorf("%q reads as %v, %v; want %v", tt.text, got, err, tt.want)
		}
	}
	for _, text := range []string{"", "4 in", "thin .. thick", "1 in .. thick"} {
		if got, err := readBounds(quantity.Length, text); err == nil {
			t.Errorf("%q reads as %v", text, got)
		}
	}
}
