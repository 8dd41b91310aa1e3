package question_test

import (
	"errors"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"underfoot/assess/quantity"
	"underfoot/assess/question"
	"underfoot/assess/schema"
)

func TestReadValues(t *testing.T) {
	for _, tt := range []struct{ id, text, want string }{
		{"zone.base", "joists", "joists"},
		{"zone.base", "Beam and deck", "beam-and-deck"},
		{"zone.base", " joists , slab-on-ground ", "joists, slab-on-ground"},
		{"layer.kind", "linoleum,sheet-vinyl", "sheet-vinyl, linoleum"}, // in declared order
		{"danger.gas", "yes", "yes"},
		{"danger.gas", "Y", "yes"},
		{"danger.gas", "TRUE", "yes"},
		{"danger.gas", "No", "no"},
		{"danger.gas", "n", "no"},
		{"danger.gas", "false", "no"},
		{"danger.gas", "none", "no"},
		{"danger.gas", "no, yes", "no, yes"},
		{"joist.span", "12 ft", "12 ft"},
		{"joist.span", "11'6 to 12'", "11 ft 6 in to 12 ft"},
		{"joist.spacing", "16 oc", "16 in"},
		{"joist.spacing", "48 in", "48 in"}, // the bound itself
		{"joist.spacing", "at least 40 in", "at least 40 in"},
		{"slab.rh", "75% RH", "75%"},
		{"joist.size", " 2x10 ", "2x10"},
	} {
		d := decl(t, tt.id)
		set, err := us().Read(d, tt.text, quantity.US)
		if got := us().Write(d, set, quantity.US); err != nil || got != tt.want {
			t.Errorf("%s = %q reads as %q, %v; want %q", tt.id, tt.text, got, err, tt.want)
		}
	}
}

func TestRefusedValues(t *testing.T) {
	for _, tt := range []struct{ id, text, what, hint string }{
		{"zone.base", "joistss", `"joistss" is not a choice of zone.base`, "did you mean joists?"},
		{"layer.kind", "sheet-vinyl, xyzzy", `"xyzzy" is not a choice`, "one of: sheet-vinyl"},
		{"layer.kind", "", `"" is not a choice`, "one of"},
		{"danger.gas", "perhaps", `"perhaps" is not a choice`, "one of: no, yes"},
		{"joist.spacing", "60 in", "60 in is outside what joist.spacing can be", "8 to 48 in"},
		{"joist.spacing", "40 to 60 in", "outside what joist.spacing can be", "8 to 48 in"},
		{"joist.spacing", "more than 48 in", "outside what joist.spacing can be", "8 to 48 in"},
		{"joist.spacing", "up to 7 in", "outside what joist.spacing can be", "8 to 48 in"},
		{"joist.size", "  ", "joist.size is empty", "not sure"},
	} {
		_, err := us().Read(decl(t, tt.id), tt.text, quantity.US)
		var refused *question.Refused
		if !errors.As(err, &refused) {
			t.Errorf("%s = %q: error %v, want a refusal", tt.id, tt.text, err)
			continue
		}
		if !strings.Contains(refused.Error(), tt.what) || !strings.Contains(refused.Hint.String(), tt.hint) {
			t.Errorf("%s = %q: %q, hint %q", tt.id, tt.text, refused.What, refused.Hint.String())
		}
	}
}

// A bare number is asked back with its readings, never guessed; what is no
// quantity says what would be one.
func TestQuantityErrorsPassThrough(t *testing.T) {
	var unclear *quantity.Unclear
	if _, err := us().Read(decl(t, "joist.span"), "12", quantity.US); !errors.As(err, &unclear) || len(unclear.Readings) < 2 {
		t.Errorf("a bare 12: %v", err)
	}
	var malformed *quantity.Malformed
	if _, err := us().Read(decl(t, "joist.span"), "long", quantity.US); !errors.As(err, &malformed) || malformed.Want.IsZero() {
		t.Errorf("a word for a length: %v", err)
	}
}

// A tallied or derived choice is called what the question calls it.
func TestWord(t *testing.T) {
	for _, tt := range []struct{ id, choice, want string }{
		{"layer.kind", "sheet-vinyl", "Sheet vinyl"},
		{"floor.top_kind", "sheet-vinyl", "Sheet vinyl"},
		{"floor.top_kind", "bare", "bare"}, // a choice of the tally's own
		{"deck.top_kind", "osb", "OSB"},
		{"danger.gas", "yes", "yes"},
	} {
		f, ok := us().Schema().Lookup(tt.id)
		if got := us().Word(f, tt.choice); !ok || got != tt.want {
			t.Errorf("%s of %s is called %q, want %q", tt.choice, tt.id, got, tt.want)
		}
	}
}

func TestShow(t *testing.T) {
	for _, tt := range []struct {
		id, text, want string
		sys            quantity.System
	}{
		{"joist.span", "12 ft", "12 ft", quantity.US},
		{"joist.span", "12 ft", "3658 mm", quantity.Metric}, // 12 x 304.8 mm
		{"joist.size", "2x10", "2x10", quantity.US},
		{"floor.top_kind", "bare", "bare", quantity.US}, // not asked: the word itself
	} {
		f, _ := us().Schema().Lookup(tt.id)
		d := us().Schema().Decl(f)
		set, err := us().Read(d, tt.text, quantity.US)
		if got := us().Show(f, set, tt.sys); err != nil || got != tt.want {
			t.Errorf("%s = %q shows as %q, %v; want %q", tt.id, tt.text, got, err, tt.want)
		}
	}
	q := us().Find("layer.kind")
	two, _ := us().Read(q.Decl, "sheet-vinyl, linoleum", quantity.US)
	shown := us().Show(q.ID, two, quantity.US)
	for _, word := range []string{"sheet-vinyl", "linoleum"} {
		label, _, _ := strings.Cut(q.Text.Choices[word], " (")
		if !strings.Contains(shown, label) {
			t.Errorf("%q does not show %q", shown, label)
		}
	}
	if !strings.Contains(shown, " or ") {
		t.Errorf("two possibilities show as %q", shown)
	}
}

// What Write gives, Read takes back, in either system of units.
func TestWriteRoundTrips(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		q := &us().Questions[rapid.IntRange(0, len(us().Questions)-1).Draw(t, "question")]
		sys := rapid.SampledFrom([]quantity.System{quantity.US, quantity.Metric}).Draw(t, "units")
		set := draw(t, q.Decl)
		text := us().Write(q.Decl, set, sys)
		if back, err := us().Read(q.Decl, text, sys); err != nil || back != set {
			t.Fatalf("%s: %+v writes as %q and reads as %+v, %v", q.Decl.ID, set, text, back, err)
		}
	})
}

// draw is any set that an answer may have: never the empty one.
func draw(t *rapid.T, d *schema.Declaration) schema.Set {
	switch d.Kind {
	case schema.KindText:
		return schema.Set{Text: rapid.StringMatching(`[1-4]x(4|6|8|10|12)`).Draw(t, "text")}
	case schema.KindQuantity:
		a := rapid.IntRange(0, 1000).Draw(t, "low")
		b := rapid.IntRange(a, 1000).Draw(t, "high")
		at := func(share int) float64 { return d.Bounds.Lo + (d.Bounds.Hi-d.Bounds.Lo)*float64(share)/1000 }
		r := quantity.Range{Lo: at(a), Hi: at(b)}
		if d.Dimension == quantity.Year {
			r = quantity.Range{Lo: float64(int(r.Lo)), Hi: float64(int(r.Hi))}
		}
		return schema.Set{Range: r}
	}
	return schema.Set{Mask: rapid.Uint64Range(1, d.Full().Mask).Draw(t, "mask")}
}
