package question_test

import (
	"fmt"
	"slices"
	"sync"
	"testing"

	"underfoot/assess/check"
	"underfoot/assess/facts"
	"underfoot/assess/figure"
	"underfoot/assess/message"
	"underfoot/assess/quantity"
	"underfoot/assess/question"
	"underfoot/assess/schema"
)

// catalogues are the catalogue of every region, with the facts that the program
// itself gives.
var catalogues = sync.OnceValue(func() map[string]*question.Catalogue {
	all := map[string]*question.Catalogue{}
	for _, region := range figure.Regions {
		figures := figure.For(region, quantity.US)
		c, err := question.Open(figures, facts.Derived(check.All(figures)), message.English())
		if err != nil {
			panic(fmt.Sprint(region, ": ", err))
		}
		all[region] = c
	}
	return all
})

func us() *question.Catalogue { return catalogues()["us"] }

func decl(t *testing.T, id string) *schema.Declaration {
	t.Helper()
	d := us().Schema().Find(id)
	if d == nil {
		t.Fatalf("there is no fact %s", id)
	}
	return d
}

func TestCatalogueOpensInEveryRegion(t *testing.T) {
	for region, c := range catalogues() {
		for i := range c.Questions {
			q := &c.Questions[i]
			if q.Decl.Always != (q.Relevant == nil) {
				t.Errorf("%s: %s is asked always, yet has a condition, or the other way round", region, q.Decl.ID)
			}
			for _, im := range q.Implied {
				if im.When == nil || im.Then == (schema.Set{}) || !im.Then.Within(q.Decl.Full(), q.Decl.Kind) {
					t.Errorf("%s: %s implies %+v", region, q.Decl.ID, im)
				}
			}
			if lacks := q.Relevant; lacks != nil && len(lacks.Lacks()) > 0 {
				t.Errorf("%s: %s names figures that the region lacks: %v", region, q.Decl.ID, lacks.Lacks())
			}
		}
	}
}

func TestQuestionsNameTheirGroup(t *testing.T) {
	c := us()
	for i := range c.Questions {
		q := &c.Questions[i]
		if !slices.Contains(c.Groups(), q.Group) || c.GroupTitle(q.Group) == "" {
			t.Errorf("%s: group %q has no place or no title", q.Decl.ID, q.Group)
		}
		if got := c.Question(q.ID); got != q || c.Find(q.Decl.ID) != q {
			t.Errorf("%s is not found by its number or by its name", q.Decl.ID)
		}
	}
}

// A topic belongs to one scope; the answer that closes a list stands in its zone.
func TestQuestionsStandInTheScopeOfTheirTopic(t *testing.T) {
	for i := range us().Questions {
		d := us().Questions[i].Decl
		a, err := schema.ParseAddress(d.ID)
		scope, _ := schema.TopicScope(a.Topic)
		if a.Field == "complete" {
			scope = schema.ScopeZone
		}
		if err != nil || d.Scope != scope {
			t.Errorf("%s stands in scope %v, its topic in %v; %v", d.ID, d.Scope, scope, err)
		}
	}
}

// Of a state of the floor nothing is taken for granted, but for papers, the
// laboratory, usual design values and the count of a line of cracks.
func TestFoundFactsHaveNoDefault(t *testing.T) {
	may := []string{"crack.count", "layer.lab_result", "joist.continuity", "joist.live_load", "joist.dead_load", "slab.rh_limit", "slab.mver_limit"}
	for i := range us().Questions {
		d := us().Questions[i].Decl
		if d.Default == "" {
			continue
		}
		if _, err := us().Read(d, d.Default, quantity.US); err != nil {
			t.Errorf("%s: default: %v", d.ID, err)
		}
		topic, _ := schema.ParseAddress(d.ID)
		if d.Nature == schema.Found && topic.Topic != "paper" && !slices.Contains(may, d.ID) {
			t.Errorf("%s is found on the floor and has the default %q", d.ID, d.Default)
		}
	}
}

// What is not asked has no question.
func TestDerivedFactsAreNotAsked(t *testing.T) {
	for _, id := range []string{"layer.laid", "layer.top", "floor.covers", "joist.ratio_live", "joist.limit"} {
		f, ok := us().Schema().Lookup(id)
		if !ok || us().Question(f) != nil || us().Find(id) != nil || us().Schema().Decl(f).Nature != schema.Derived {
			t.Errorf("%s is asked, or is not there", id)
		}
	}
	if us().Find("floor.nothing") != nil {
		t.Error("a question for a fact that there is not")
	}
}

// A family's fields can all be answered no at once.
func TestFamilies(t *testing.T) {
	counts := map[string]int{}
	for i := range us().Questions {
		d := us().Questions[i].Decl
		if d.Family == "" {
			continue
		}
		counts[d.Family]++
		if bit, ok := d.ChoiceBit("no"); !ok || d.Kind == schema.KindYesNo && bit != schema.SetNo.Mask {
			if _, none := d.ChoiceBit("none"); !none {
				t.Errorf("%s of %s can be neither no nor none", d.ID, d.Family)
			}
		}
	}
	for _, family := range []string{"danger", "water", "work", "joist.trouble"} {
		if counts[family] < 2 {
			t.Errorf("family %s has %d fields", family, counts[family])
		}
	}
}

func TestTallyDeclarations(t *testing.T) {
	for _, tt := range []struct {
		id     string
		kind   schema.Kind
		always bool
		bounds quantity.Range
	}{
		{"floor.covers", schema.KindQuantity, true, quantity.AtLeast(0)},
		{"floor.screed", schema.KindYesNo, true, quantity.AtLeast(0)},
		{"floor.cracks", schema.KindQuantity, true, quantity.AtLeast(0)},
		{"floor.cracks_dormant", schema.KindYesNo, true, quantity.AtLeast(0)},
		{"floor.top_kind", schema.KindChoice, true, quantity.Everything},
		{"floor.top_tight", schema.KindYesNo, false, quantity.Everything},
		{"floor.top_pull", schema.KindQuantity, false, quantity.Range{Lo: 0, Hi: 2000}},
	} {
		d := decl(t, tt.id)
		if d.Kind != tt.kind || d.Always != tt.always || d.Scope != schema.ScopeZone || d.Nature != schema.Derived || d.Bounds != tt.bounds {
			t.Errorf("%s: %+v", tt.id, d)
		}
	}
	kinds, top := decl(t, "layer.kind").Choices, decl(t, "floor.top_kind").Choices
	if !slices.Equal(top, append(slices.Clone(kinds), "bare")) {
		t.Errorf("floor.top_kind has not the kinds of layers and bare: %v", top)
	}
	if _, there := decl(t, "layer.kind").ChoiceBit("bare"); there {
		t.Error("the tally's own word has reached the choices of layer.kind")
	}
	if above := decl(t, "layer.above").Choices; !slices.Equal(above, append(slices.Clone(kinds), "none")) {
		t.Errorf("layer.above has not the kinds of layers and none: %v", above)
	}
}

func TestTalliesLookAtTheirOwnList(t *testing.T) {
	for i := range us().Tallies {
		tally := &us().Tallies[i]
		id := us().Schema().Decl(tally.ID).ID
		conditions := []interface{ Scopes() []schema.Scope }{}
		if tally.When != nil {
			conditions = append(conditions, tally.When)
		}
		if tally.Where != nil {
			conditions = append(conditions, tally.Where)
		}
		for _, c := range conditions {
			for _, s := range c.Scopes() {
				if s > schema.ScopeZone && s != tally.Over {
					t.Errorf("%s runs over %v and looks at %v", id, tally.Over, s)
				}
			}
		}
		switch tally.Fold {
		case question.Sum, question.Most, question.Least, question.First:
			if us().Schema().Decl(tally.Of).Scope != tally.Over {
				t.Errorf("%s folds a fact of another list", id)
			}
		}
	}
}
