package condition_test

import (
	"slices"
	"strings"
	"testing"

	"underfoot/assess/condition"
	"underfoot/assess/schema"
)

var shared = condition.Definitions{
	Families: []condition.FamilyRecord{
		{ID: "vinyl", Of: "layer.kind", Words: []string{"vinyl-tile", "sheet-vinyl"}},
		{ID: "other", Of: "layer.kind", Words: []string{"linoleum", "plywood"}},
	},
	Sets: []condition.SetRecord{
		{ID: "resilient", Of: "layer.kind", Sets: []string{"vinyl"}, Words: []string{"linoleum"}, Leaves: []string{"plywood"}},
	},
	Conditions: []condition.PartRecord{
		{ID: "loose_vinyl", When: `vinyl_layer && layer.tight == "no"`},
		{ID: "vinyl_layer", When: `layer.kind in vinyl`},
	},
}

func defined(t *testing.T) condition.Names {
	t.Helper()
	v, problems := (*condition.Vocabulary)(nil).With(shared, "words.toml", names)
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	out := names
	out.Words = v
	return out
}

// A name is what it stands for: the same condition as if it were written out.
func TestNamesStandForWhatTheyName(t *testing.T) {
	with := defined(t)
	for _, tt := range []struct{ src, plain string }{
		{`layer.kind in resilient`, `layer.kind in ["sheet-vinyl", "vinyl-tile", "linoleum"]`},
		{`layer.kind in ["plywood", vinyl]`, `layer.kind in ["plywood", "sheet-vinyl", "vinyl-tile"]`},
		{`layer.kind not in vinyl`, `layer.kind not in ["sheet-vinyl", "vinyl-tile"]`},
		{`danger.gas == "no" && loose_vinyl`, `danger.gas == "no" && layer.kind in ["sheet-vinyl", "vinyl-tile"] && layer.tight == "no"`},
		{`danger.gas == "no" || loose_vinyl`, `danger.gas == "no" || layer.kind in ["sheet-vinyl", "vinyl-tile"] && layer.tight == "no"`},
		{`!vinyl_layer`, `!(layer.kind in ["sheet-vinyl", "vinyl-tile"])`},
	} {
		c, problems := condition.Compile(tt.src, condition.Place{File: "f"}, with)
		if c == nil {
			t.Errorf("%s: %v", tt.src, problems)
			continue
		}
		if c.Source() != tt.src {
			t.Errorf("%s is written %s", tt.src, c.Source())
		}
		if c.String() != tt.plain {
			t.Errorf("%s\nis   %s\nwant %s", tt.src, c, tt.plain)
		}
	}
}

// What is none of a set is one of the other words, and applies.
func TestNotInDoesNotHoldWhereTheFactIsAbsent(t *testing.T) {
	c := compile(t, `layer.tight not in ["yes"]`)
	for name, tt := range map[string]struct {
		f    facts
		want string
	}{
		"no":      {facts{"layer.tight": present(words("layer.tight", "no"))}, "yes"},
		"yes":     {facts{"layer.tight": present(words("layer.tight", "yes"))}, "no"},
		"absent":  {facts{"layer.tight": schema.Absent}, "no"},
		"nothing": {facts{}, "open"},
		"may be":  {facts{"layer.tight": may(words("layer.tight", "no"))}, "open"},
	} {
		if got := c.Eval(tt.f).Truth.String(); got != tt.want {
			t.Errorf("%s: %s, want %s", name, got, tt.want)
		}
	}
}

func TestUnusedNames(t *testing.T) {
	v := defined(t).Words
	if got := v.Unused(); !slices.Equal(got, []string{"resilient", "loose_vinyl"}) {
		t.Errorf("unused are %v", got)
	}
	if got := v.Using(condition.Mentions(`layer.kind in [resilient] && (loose_vinyl || x)`)...).Unused(); got != nil {
		t.Errorf("unused are %v", got)
	}
}

// One fault each: what is changed, in which record it is told, and with what words.
func TestDefinitionsAreHeldAgainstTheirFacts(t *testing.T) {
	family := func(id string, w ...string) func(*condition.Definitions) {
		return func(d *condition.Definitions) {
			d.Families = append(d.Families, condition.FamilyRecord{ID: id, Of: "layer.kind", Words: w})
		}
	}
	set := func(r condition.SetRecord) func(*condition.Definitions) {
		return func(d *condition.Definitions) { d.Sets = append(d.Sets, r) }
	}
	part := func(id, when string) func(*condition.Definitions) {
		return func(d *condition.Definitions) {
			d.Conditions = append(d.Conditions, condition.PartRecord{ID: id, When: when})
		}
	}
	for _, tt := range []struct {
		name        string
		change      func(*condition.Definitions)
		place, want string
	}{
		{"word in no family", func(d *condition.Definitions) { d.Families[1].Words = []string{"linoleum"} }, "layer.kind", `"plywood" of layer.kind is in no family`},
		{"word in two families", family("again", "plywood"), "layer.kind", `"plywood" is in several families: other, again`},
		{"word not decided", func(d *condition.Definitions) { d.Sets[0].Leaves = nil }, "resilient", `the family other and does not say whether "plywood"`},
		{"word left and taken", func(d *condition.Definitions) { d.Sets[0].Leaves = append(d.Sets[0].Leaves, "linoleum") }, "resilient", `"linoleum" is in the set, and left out`},
		{"word left for nothing", func(d *condition.Definitions) {
			d.Sets[0].Sets, d.Sets[0].Leaves = nil, []string{"plywood", "sheet-vinyl"}
		}, "resilient", `"sheet-vinyl" belongs to no family`},
		{"no such word", family("more", "linolium"), "more", "did you mean linoleum?"},
		{"no such fact", set(condition.SetRecord{ID: "more", Of: "layer.kin", Words: []string{"plywood"}}), "more", "did you mean layer.kind?"},
		{"no choice", set(condition.SetRecord{ID: "more", Of: "joist.span", Words: []string{"plywood"}}), "more", "joist.span has no words"},
		{"no families", set(condition.SetRecord{ID: "more", Of: "zone.base", Words: []string{"joists"}}), "more", "no families divide the words of zone.base"},
		{"no such set", set(condition.SetRecord{ID: "more", Of: "layer.kind", Sets: []string{"vinil"}}), "more", "did you mean vinyl?"},
		{"set of another fact", set(condition.SetRecord{ID: "more", Of: "zone.base", Sets: []string{"vinyl"}}), "more", "vinyl has words of layer.kind"},
		{"empty", set(condition.SetRecord{ID: "more", Of: "layer.kind"}), "more", "has no words"},
		{"same words", set(condition.SetRecord{ID: "more", Of: "layer.kind", Sets: []string{"vinyl"}}), "more", "the words of vinyl"},
		{"word twice", set(condition.SetRecord{ID: "more", Of: "layer.kind", Sets: []string{"vinyl", "resilient"}}), "more", "stands twice"},
		{"cycle of sets", func(d *condition.Definitions) { d.Sets[0].Sets = []string{"resilient"} }, "resilient", "resilient > resilient"},
		{"name of a word", family("plywood"), "plywood", "plywood is a word of layer.kind too"},
		{"form of the name", family("Old-Vinyl"), "Old-Vinyl", "lower-case words"},
		{"reserved name", part("in", `danger.gas == "yes"`), "in", "lower-case words"},
		{"name twice", part("vinyl", `danger.gas == "yes"`), "vinyl", "vinyl stands twice"},
		{"cycle of conditions", func(d *condition.Definitions) { d.Conditions[1].When = "loose_vinyl" }, "loose_vinyl", "loose_vinyl > vinyl_layer > loose_vinyl"},
		{"fault in a condition", part("more", `layer.kid in vinyl`), "more", "there is no fact layer.kid"},
		{"condition of no set", part("more", `layer.kind in vinil`), "more", "did you mean vinyl?"},
		{"condition of a set of another fact", part("more", `zone.base in vinyl`), "more", "vinyl has words of layer.kind, not of zone.base"},
		{"condition of no condition", part("more", `vinil_layer`), "more", "did you mean vinyl_layer?"},
		{"set as a condition", part("more", `vinyl && danger.gas == "yes"`), "more", "write layer.kind in vinyl"},
		{"condition as a set", part("more", `layer.kind in vinyl_layer`), "more", "vinyl_layer is a condition, not a set"},
	} {
		t.Run(tt.name, func(t *testing.T) {
			d := condition.Definitions{Families: slices.Clone(shared.Families), Sets: slices.Clone(shared.Sets), Conditions: slices.Clone(shared.Conditions)}
			d.Sets[0].Leaves = slices.Clone(d.Sets[0].Leaves)
			tt.change(&d)
			_, problems := (*condition.Vocabulary)(nil).With(d, "words.toml", names)
			for _, p := range problems {
				if p.Place == "words.toml "+tt.place && strings.Contains(p.What.String()+" "+p.Hint.String(), tt.want) {
					return
				}
			}
			t.Errorf("%v\nwant words.toml %s: %s", problems, tt.place, tt.want)
		})
	}
}

// Names that stand for ever more names cannot cost much.
func TestNamesMayNotGrowWithoutBound(t *testing.T) {
	d := condition.Definitions{Conditions: []condition.PartRecord{{ID: "c0", When: `danger.gas == "yes" || floor.cracks > 1`}}}
	for i := range 12 {
		was := "c" + string(rune('0'+i))
		if i > 9 {
			was = "c" + string(rune('a'+i))
		}
		next := "c" + string(rune('0'+i+1))
		if i+1 > 9 {
			next = "c" + string(rune('a'+i+1))
		}
		d.Conditions = append(d.Conditions, condition.PartRecord{ID: next, When: "(" + was + " && " + was + ") || (" + was + " && floor.cracks > 2)"})
	}
	_, problems := (*condition.Vocabulary)(nil).With(d, "words.toml", names)
	if len(problems) == 0 || !strings.Contains(problems[0].What.String(), "more than 400 parts") {
		t.Errorf("%v", problems)
	}
}
