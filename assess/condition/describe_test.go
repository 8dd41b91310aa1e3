package condition_test

import (
	"strings"
	"testing"

	"underfoot/assess/condition"
	"underfoot/assess/logic"
	"underfoot/assess/message"
	"underfoot/assess/quantity"
	"underfoot/assess/schema"
)

// A told condition names every part of it, proven or not, and no value: what a
// reader needs who looks at the rule and not at a floor.
func TestTell(t *testing.T) {
	c := compile(t, `zone.base == "joists" && (layer.laid <= figure.presumed_to || !(floor.cracks > 2))`)
	show := condition.Show{Units: quantity.US, Label: func(f schema.FactID) string { return "the " + declared.Decl(f).ID }}
	want := "all of these: open\n  the zone.base is joists: open\n  any of these: open\n" +
		"    the layer.laid is at most 1980: open\n    the contrary of: open\n      the floor.cracks is more than 2: open"
	if got := c.Describe(show).Lines(message.English()); got != want {
		t.Errorf("told as\n%s\nwant\n%s", got, want)
	}
}

// Every comparison of a condition is told, however deep.
func TestTellLeavesNothingOut(t *testing.T) {
	src := `danger.gas == "yes" || joist.span / joist.depth > 15 && (floor.cracks != 2 || layer.kind in ["linoleum", "plywood"])`
	told := compile(t, src).Describe(condition.Show{}).Lines(message.English())
	for _, f := range compile(t, src).Reads() {
		if !strings.Contains(told, declared.Decl(f).ID) {
			t.Errorf("%s is left out of\n%s", declared.Decl(f).ID, told)
		}
	}
}

// Of a long list an explanation names the words that the floor may have, and
// where it can have none the first few.
func TestLongListsAreShortened(t *testing.T) {
	many := schema.Declaration{ID: "layer.colour", Scope: schema.ScopeLayer, Kind: schema.KindChoice, Always: true,
		Choices: []string{"a", "b", "c", "d", "e", "f", "g", "h"}}
	s := schema.NewSchema([]schema.Declaration{many})
	c, problems := condition.Compile(`layer.colour in ["a", "b", "c", "d", "e", "f", "g"]`, condition.Place{}, condition.Names{Schema: s})
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	for _, tt := range []struct {
		mask uint64
		want string
	}{
		{1 << 6, "layer.colour (g) is one of g; and 6 more: yes"},
		{1<<6 | 1<<7, "layer.colour (g or h) is one of g; and 6 more: open"},
		{1 << 7, "layer.colour (h) is one of a; b; c; d; e; f; and 1 more: no"},
	} {
		floor := single{schema.Fact{Presence: logic.Proven, Set: schema.Set{Mask: tt.mask}}}
		if got := c.Explain(floor, condition.Show{}).Lines(message.English()); got != tt.want {
			t.Errorf("explained as %q, want %q", got, tt.want)
		}
	}
}

// single is a floor of one fact.
type single struct{ fact schema.Fact }

func (s single) Fact(schema.FactID) schema.Fact { return s.fact }
