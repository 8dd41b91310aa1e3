package condition_test

import (
	"slices"
	"strings"
	"testing"

	"underfoot/assess/condition"
	"underfoot/assess/logic"
	"underfoot/assess/message"
	"underfoot/assess/quantity"
	"underfoot/assess/schema"
)

// The expected outcomes follow from the definition of the language: an atom is
// And(presence, comparison), in Kleene's strong three-valued logic (Stephen
// Kleene, Introduction to Metamathematics, 1952, section 64), over every value
// that a set leaves possible.
func TestEval(t *testing.T) {
	tests := []struct {
		name string
		src  string
		in   facts
		want logic.Truth
		deps string
	}{
		{"word that is known", `zone.base == "joists"`, facts{"zone.base": present(words("zone.base", "joists"))}, logic.Yes, ""},
		{"other word", `zone.base == "joists"`, facts{"zone.base": present(words("zone.base", "slab-on-ground"))}, logic.No, ""},
		{"one of two words", `zone.base == "joists"`, facts{"zone.base": present(words("zone.base", "joists", "slab-on-ground"))}, logic.Open, "zone.base"},
		{"both of two words", `layer.kind in ["sheet-vinyl", "vinyl-tile"]`, facts{"layer.kind": present(words("layer.kind", "sheet-vinyl", "vinyl-tile"))}, logic.Yes, ""},
		{"neither of two words", `layer.kind in ["linoleum"]`, facts{"layer.kind": present(words("layer.kind", "sheet-vinyl", "vinyl-tile"))}, logic.No, ""},
		{"word on the left", `"joists" == zone.base`, facts{"zone.base": present(words("zone.base", "joists"))}, logic.Yes, ""},
		{"another word than that", `zone.base != "joists"`, facts{"zone.base": present(words("zone.base", "slab-on-ground", "beam-and-deck"))}, logic.Yes, ""},

		{"absent fact proves nothing", `layer.tight == "no"`, facts{"layer.tight": schema.Absent}, logic.No, ""},
		{"absent fact is not unequal either", `layer.tight != "no"`, facts{"layer.tight": schema.Absent}, logic.No, ""},
		{"absent number", `joist.span <= "1 in"`, facts{"joist.span": schema.Absent}, logic.No, ""},
		{"perhaps absent, else proven", `layer.tight == "no"`, facts{"layer.tight": may(schema.SetNo)}, logic.Open, "layer.tight?"},
		{"perhaps absent, else refuted", `layer.tight == "no"`, facts{"layer.tight": may(schema.SetYes)}, logic.No, ""},
		{"perhaps absent and not known", `layer.tight == "no"`, facts{"layer.tight": may(words("layer.tight", "no", "yes"))}, logic.Open, "layer.tight layer.tight?"},
		{"perhaps absent number, else proven", `joist.span > "1 ft"`, facts{"joist.span": may(between(100, 120))}, logic.Open, "joist.span?"},
		{"perhaps absent number that is not known", `joist.span > "1 ft"`, facts{"joist.span": may(between(1, 120))}, logic.Open, "joist.span joist.span?"},

		{"number above", `joist.span > "12 ft"`, facts{"joist.span": present(point(145))}, logic.Yes, ""},
		{"number at the limit is not above", `joist.span > "12 ft"`, facts{"joist.span": present(point(144))}, logic.No, ""},
		{"number at the limit is at least", `joist.span >= "12 ft"`, facts{"joist.span": present(point(144))}, logic.Yes, ""},
		{"number at the limit is at most", `joist.span <= "12 ft"`, facts{"joist.span": present(point(144))}, logic.Yes, ""},
		{"number at the limit is not below", `joist.span < "12 ft"`, facts{"joist.span": present(point(144))}, logic.No, ""},
		{"range about the limit", `joist.span > "12 ft"`, facts{"joist.span": present(between(140, 150))}, logic.Open, "joist.span"},
		{"range that touches the limit from below", `joist.span > "12 ft"`, facts{"joist.span": present(between(140, 144))}, logic.No, ""},
		{"number nobody has stated, though bounds are declared", `joist.span > "1 in"`, facts{}, logic.Open, "joist.span"},
		{"at least a number", `joist.span > "12 ft"`, facts{"joist.span": present(between(150, infinite))}, logic.Yes, ""},
		{"both ends of a range inside a band prove nothing", `joist.span > "145 in" && joist.span < "155 in"`, facts{"joist.span": present(between(140, 160))}, logic.Open, "joist.span"},
		{"metric quantity", `joist.span > "3048 mm"`, facts{"joist.span": present(point(120))}, logic.No, ""},
		{"negative quantity", `edge.step_now < -"1 in"`, facts{"edge.step_now": present(point(-2))}, logic.Yes, ""},
		{"figure", `layer.laid <= figure.presumed_to`, facts{"layer.laid": present(between(1950, 1980))}, logic.Yes, ""},
		{"figure the region lacks", `layer.laid <= figure.test_to || danger.gas == "yes"`, facts{"danger.gas": present(schema.SetYes)}, logic.Open, ""},
		{"two facts", `slab.rh > slab.rh_limit`, facts{"slab.rh": present(between(80, 90)), "slab.rh_limit": present(point(75))}, logic.Yes, ""},
		{"two facts, one not known", `slab.rh > slab.rh_limit`, facts{"slab.rh_limit": present(point(75))}, logic.Open, "slab.rh"},
		{"equal counts", `floor.cracks == 2`, facts{"floor.cracks": present(point(2))}, logic.Yes, ""},
		{"equal to a range", `floor.cracks == 2`, facts{"floor.cracks": present(between(1, 2))}, logic.Open, "floor.cracks"},
		{"outside the range", `floor.cracks == 3`, facts{"floor.cracks": present(between(1, 2))}, logic.No, ""},
		{"unequal outside the range", `floor.cracks != 3`, facts{"floor.cracks": present(between(1, 2))}, logic.Yes, ""},
		{"sum", `joist.span + "2 in" > "12 ft"`, facts{"joist.span": present(point(143))}, logic.Yes, ""},
		{"product and quotient", `joist.span / joist.depth > 3 * 5`, facts{"joist.span": present(point(160)), "joist.depth": present(point(10))}, logic.Yes, ""},
		{"quotient by a quantity", `joist.span / "1 ft" >= 12 && "20 ft" / joist.depth > 12`, facts{"joist.span": present(point(144)), "joist.depth": present(point(10))}, logic.Yes, ""},
		{"quantity by a count", `"20 ft" / floor.covers > joist.span`, facts{"joist.span": present(point(144)), "floor.covers": present(point(2))}, logic.No, ""},
		{"quotient of ranges", `joist.span / joist.depth > 15`, facts{"joist.span": present(between(150, 160)), "joist.depth": present(between(9, 11))}, logic.Open, "joist.depth joist.span"},

		{"a refuted part settles and", `danger.gas == "yes" && zone.base == "joists"`, facts{"danger.gas": present(schema.SetNo)}, logic.No, ""},
		{"a proven part settles or", `danger.gas == "yes" || zone.base == "joists"`, facts{"danger.gas": present(schema.SetYes)}, logic.Yes, ""},
		{"a proven part leaves and to the rest", `danger.gas == "yes" && zone.base == "joists"`, facts{"danger.gas": present(schema.SetYes)}, logic.Open, "zone.base"},
		{"not", `!(danger.gas == "yes")`, facts{"danger.gas": present(schema.SetNo)}, logic.Yes, ""},
		{"not open", `!(danger.gas == "yes")`, facts{}, logic.Open, "danger.gas"},
		{"and binds before or", `danger.gas == "yes" || zone.base == "joists" && floor.cracks > 1`, facts{"danger.gas": present(schema.SetYes), "floor.cracks": present(point(0))}, logic.Yes, ""},
		{"brackets", `(danger.gas == "yes" || zone.base == "joists") && floor.cracks > 1`, facts{"danger.gas": present(schema.SetYes), "floor.cracks": present(point(0))}, logic.No, ""},

		{"a word or not that word", `zone.base == "joists" || zone.base != "joists"`, facts{}, logic.Yes, ""},
		{"below or at least", `floor.cracks < 2 || floor.cracks >= 2`, facts{}, logic.Yes, ""},
		{"below and above", `floor.cracks < 2 && floor.cracks > 2`, facts{}, logic.No, ""},
		{"between two neighbours lies a value", `floor.cracks <= 2 || floor.cracks >= 3`, facts{}, logic.Open, "floor.cracks"},
		{"where it may be absent", `layer.tight == "yes" || layer.tight == "no"`, facts{"layer.tight": may(words("layer.tight", "no", "yes"))}, logic.Open, "layer.tight layer.tight?"},
		{"three readings of one number", `joist.span < "10 ft" || joist.span > "9 ft" && joist.span <= "10 ft" || joist.span > "10 ft"`, facts{}, logic.Yes, ""},
		{"whatever the kind, the rest decides", `layer.kind == "linoleum" && danger.gas == "yes" || layer.kind != "linoleum" && danger.gas == "yes"`, facts{"danger.gas": present(schema.SetYes)}, logic.Yes, ""},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			got := compile(t, tt.src).Eval(tt.in)
			if got.Truth != tt.want || strings.Join(dependsOn(got.Deps), " ") != tt.deps {
				t.Errorf("%s\n got %v on %q\nwant %v on %q", tt.src, got.Truth, dependsOn(got.Deps), tt.want, tt.deps)
			}
		})
	}
}

func TestWhatAConditionNames(t *testing.T) {
	c := compile(t, `layer.laid <= figure.presumed_to && (joist.span > "12 ft" || zone.base == "joists") && layer.laid > figure.test_to && room.size < "10 ft2"`)
	if got, want := c.Reads(), []schema.FactID{id("layer.laid"), id("joist.span"), id("zone.base"), id("room.size")}; !slices.Equal(got, want) {
		t.Errorf("reads %v, want %v", got, want)
	}
	if got := c.Figures(); !slices.Equal(got, []string{"presumed_to", "test_to"}) {
		t.Errorf("figures %v", got)
	}
	if got := c.Lacks(); !slices.Equal(got, []string{"test_to"}) {
		t.Errorf("lacks %v", got)
	}
	if got := c.Scopes(); !slices.Equal(got, []schema.Scope{schema.ScopeArea, schema.ScopeZone, schema.ScopeLayer}) {
		t.Errorf("scopes %v", got)
	}
}

func TestConstants(t *testing.T) {
	tests := []struct {
		src, fact string
		want      []float64
	}{
		{`joist.span > "12 ft" || joist.span < "8 ft" || joist.span >= "12 ft"`, "joist.span", []float64{96, 144}},
		{`"12 ft" > joist.span`, "joist.span", []float64{144}},
		{`layer.laid <= figure.presumed_to`, "layer.laid", []float64{1980}},
		{`joist.span + "1 ft" > "12 ft" && joist.span - "1 ft" > "12 ft"`, "joist.span", []float64{132, 156}},
		{`joist.span * 2 > "12 ft" && joist.span / 2 > "12 ft"`, "joist.span", []float64{72, 288}},
		{`"20 ft" - joist.span > "12 ft" && -joist.span < -"1 ft"`, "joist.span", []float64{12, 96}},
		{`"20 ft" / joist.depth > 12 && 3 * joist.depth > "1 ft"`, "joist.depth", []float64{4, 20}},
		{`slab.rh > slab.rh_limit`, "slab.rh", nil},
		{`zone.base == "joists"`, "zone.base", nil},
		{`joist.span > "12 ft"`, "joist.depth", nil},
	}
	for _, tt := range tests {
		if got := compile(t, tt.src).Constants(id(tt.fact)); !slices.Equal(got, tt.want) {
			t.Errorf("%s: %v, want %v", tt.src, got, tt.want)
		}
	}
}

func TestString(t *testing.T) {
	tests := [][2]string{
		{`danger.gas=="yes"`, `danger.gas == "yes"`},
		{` danger.gas == 'yes'&&( zone.base=="joists" && floor.cracks>1 ) `, `danger.gas == "yes" && zone.base == "joists" && floor.cracks > 1`},
		{`(danger.gas == "yes" || zone.base == "joists") && floor.cracks > 1`, ``},
		{`!(danger.gas == "yes")`, ``},
		{`joist.span - (joist.depth - "1 in") > '3/4"'`, ``},
		{`(joist.span - joist.depth) - "1 in" > "0 in"`, `joist.span - joist.depth - "1 in" > "0 in"`},
		{`layer.kind in ["linoleum","plywood"]`, `layer.kind in ["linoleum", "plywood"]`},
		{"danger.gas == \"yes\"\n\t|| floor.cracks >= 1.50", `danger.gas == "yes" || floor.cracks >= 1.50`},
	}
	for _, tt := range tests {
		want := tt[1]
		if want == "" {
			want = tt[0]
		}
		if got := compile(t, tt[0]).String(); got != want {
			t.Errorf("%s\n got %s\nwant %s", tt[0], got, want)
		} else if again := compile(t, got).String(); again != got {
			t.Errorf("%s compiles to %s", got, again)
		}
	}
}

func TestExplain(t *testing.T) {
	in := facts{
		"zone.base":       present(words("zone.base", "joists")),
		"joist.span":      present(point(168)),
		"layer.kind":      present(words("layer.kind", "sheet-vinyl", "linoleum")),
		"layer.laid":      present(between(1960, 1969)),
		"layer.tight":     schema.Absent,
		"layer.cushioned": may(schema.SetYes),
	}
	label := func(f schema.FactID) string {
		return map[string]string{"joist.span": "Joist span"}[declared.Decl(f).ID]
	}
	tests := []struct {
		src  string
		show condition.Show
		want string
	}{
		{`zone.base == "slab-on-ground" || joist.span > "12 ft" && layer.laid <= figure.presumed_to`, condition.Show{},
			"all of these: yes\n  joist.span (14 ft) is more than 12 ft: yes\n  layer.laid (1960 to 1969) is at most 1980: yes"},
		{`joist.span < "12 ft"`, condition.Show{Units: quantity.Metric, Label: label}, "Joist span (4267 mm) is less than 3658 mm: no"},
		{`"12 ft" > joist.span`, condition.Show{}, "joist.span (14 ft) is less than 12 ft: no"},
		{`zone.base == "joists" && (danger.gas == "yes" || layer.kind in ["linoleum", "plywood"])`, condition.Show{},
			"any of these: open\n  danger.gas (not known) is yes: open\n  layer.kind (sheet-vinyl or linoleum) is one of linoleum; plywood: open"},
		{`!(zone.base != "joists")`, condition.Show{}, "the contrary of: yes\n  zone.base (joists) is not joists: no"},
		{`layer.tight == "no" || layer.cushioned == "no"`, condition.Show{},
			"any of these: no\n  layer.tight (does not apply) is no: no\n  layer.cushioned (yes, if it applies) is no: no"},
		{`danger.gas == "yes" || danger.gas == "no"`, condition.Show{},
			"whichever way these turn out: yes\n  any of these: open\n    danger.gas (not known) is yes: open\n    danger.gas (not known) is no: open"},
		{`layer.kind == "linoleum"`, condition.Show{Word: func(_ schema.FactID, w string) string { return strings.ToUpper(w) }},
			"layer.kind (SHEET-VINYL or LINOLEUM) is LINOLEUM: open"},
		{`layer.laid <= figure.test_to`, condition.Show{}, "no figure for this region: test_to: open"},
		{`(joist.span - "1 ft") * 2 > "12 ft"`, condition.Show{}, "(joist.span (14 ft) - 12 in) * 2 is more than 12 ft: yes"},
	}
	for _, tt := range tests {
		if got := compile(t, tt.src).Explain(in, tt.show).Lines(message.English()); got != tt.want {
			t.Errorf("%s\n got %s\nwant %s", tt.src, got, tt.want)
		}
	}
}
