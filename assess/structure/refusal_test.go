package structure

import (
	"reflect"
	"slices"
	"testing"

	"underfoot/assess/formula"
	"underfoot/assess/message"
	"underfoot/assess/quantity"
	"underfoot/assess/result"
)

// plain is a floor that is computed.
func plain() Member {
	return Member{Size: "2x10", Species: []string{"hem-fir"}, Grades: []string{"no2"}, Span: quantity.Point(168), Spacing: quantity.Point(16)}
}

// refusedMembers is every way to be refused, with the name of what is told.
func refusedMembers() map[string]struct {
	spoil func(*Member)
	says  string
} {
	type spoilt = struct {
		spoil func(*Member)
		says  string
	}
	all := map[string]spoilt{
		"no joists":          {func(m *Member) { m.Kind = "none" }, "no_joist"},
		"another word":       {func(m *Member) { m.Kind = "slab" }, "no_joist"},
		"notched too far":    {func(m *Member) { m.Notched = "beyond-limits" }, "notched"},
		"over 26 ft":         {func(m *Member) { m.Span = quantity.Point(26*12 + 1) }, "span"},
		"over 24 in":         {func(m *Member) { m.Spacing = quantity.Point(24.5) }, "spread"},
		"overhang over 2 ft": {func(m *Member) { m.Overhang = quantity.Point(25) }, "overhang"},
		"wall on overhang":   {func(m *Member) { m.Overhang, m.OverhangBears = quantity.Point(12), true }, "bears"},
		"2x9":                {func(m *Member) { m.Size = "2x9" }, "size"},
		"6x8, no table":      {func(m *Member) { m.Size = "6x8" }, "size"},
		"oak":                {func(m *Member) { m.Species = []string{"oak"} }, "wood"},
		"no4":                {func(m *Member) { m.Grades = []string{"no4"} }, "wood"},
		"hem-fir c24":        {func(m *Member) { m.Grades = []string{"no9", "c24"} }, "wood"},
		"a word of trouble":  {func(m *Member) { m.Troubles = []string{"bent"} }, "other"},
	}
	for _, kind := range member.Choices[1:] {
		all[kind] = spoilt{func(m *Member) { m.Kind = kind }, "member"}
	}
	for _, d := range damage {
		all[d.state] = spoilt{func(m *Member) { m.Troubles = []string{d.state} }, d.state}
		if d.fact != "" {
			all[d.fact] = spoilt{func(m *Member) { m.Troubles = []string{d.fact} }, d.state}
		}
	}
	return all
}

// numbers are every range in a struct, nested ones too.
func numbers(v reflect.Value) []quantity.Range {
	if r, ok := v.Interface().(quantity.Range); ok {
		return []quantity.Range{r}
	}
	var all []quantity.Range
	if _, words := v.Interface().(message.Message); v.Kind() == reflect.Struct && !words {
		for i := range v.NumField() {
			all = append(all, numbers(v.Field(i))...)
		}
	}
	return all
}

// TestNoPathFromARefusedMemberToANumber: not by analysis, option or load test.
func TestNoPathFromARefusedMemberToANumber(t *testing.T) {
	b := BoundFor("ceramic", us)
	for name, c := range refusedMembers() {
		m := plain()
		c.spoil(&m)
		a := Analyze(m, Loads{}, b, us)
		if a.Outcome != result.CheckRefused || a.Refusal.Key != "structure/refusal."+c.says || len(a.Sheets) > 0 || a.Deciding.Facts != nil {
			t.Errorf("%s: %v, %v, want %s", name, a.Outcome, a.Refusal, c.says)
		}
		measured := Measure(m, Loads{}, LoadTest{Weight: quantity.Point(150), Drop: quantity.Point(0.1), With: "dial-gauge", Alike: 5}, us)
		if measured.Refusal.Key != a.Refusal.Key || measured.Sheet != (*formula.Sheet)(nil) {
			t.Errorf("%s: load test %+v", name, measured)
		}
		for _, r := range append(numbers(reflect.ValueOf(a)), numbers(reflect.ValueOf(measured))...) {
			if r != quantity.Everything {
				t.Errorf("%s: a number got out: %v", name, r)
			}
		}
		if got := Options(m, Loads{}, b, us); got != nil {
			t.Errorf("%s: options %v", name, got)
		}
	}
	if a := Analyze(plain(), Loads{}, b, us); !a.Refusal.IsZero() || !a.Live.IsPoint() {
		t.Errorf("a plain floor: %+v", a)
	}
}

// TestEndsAreStillComputed: 26 ft, 24 in and 2 ft are within.
func TestEndsAreStillComputed(t *testing.T) {
	m := plain()
	m.Span, m.Spacing, m.Overhang = quantity.Point(312), quantity.Point(24), quantity.Point(24)
	if a := Analyze(m, Loads{}, BoundFor("ceramic", us), us); !a.Refusal.IsZero() || !a.Live.IsPoint() || !a.Tip.IsPoint() {
		t.Errorf("%+v", a)
	}
}

// TestMayBeRefusedIsOpen: where the span may be too long for the sum, nothing holds for certain.
func TestMayBeRefusedIsOpen(t *testing.T) {
	m := plain()
	m.Size, m.Species, m.Grades = "4x12", []string{"douglas-fir-larch"}, []string{"select-structural"}
	m.Spacing = quantity.Range{Lo: 8, Hi: 30}
	m.Span = quantity.Point(100)
	if a := Analyze(m, Loads{}, BoundFor("ceramic", us), us); a.Outcome != result.CheckOpen {
		t.Errorf("%v, %v", a.Outcome, a.Live)
	}
}

// TestRefusedDeck: nothing that counts, or joists too far apart.
func TestRefusedDeck(t *testing.T) {
	for name, d := range map[string]Deck{
		"particleboard": {Layers: []Layer{{Kind: "particleboard", Thickness: quantity.Point(0.75)}}, Spacing: quantity.Point(16)},
		"no layer":      {Spacing: quantity.Point(16)},
		"boards along":  {Layers: []Layer{{Kind: "boards", Thickness: quantity.Point(0.75), Along: true}}, Spacing: quantity.Point(16)},
		"over 24 in":    {Layers: []Layer{{Kind: "plywood", Rating: "24oc"}}, Spacing: quantity.Point(30)},
	} {
		a := AnalyzeDeck(d, 360, us)
		if a.Refusal.IsZero() || a.Sheet != nil || slices.ContainsFunc(numbers(reflect.ValueOf(a)), quantity.Range.Bounded) || DeckOptions(d, 360, us) != nil {
			t.Errorf("%s: %+v", name, a)
		}
	}
}
