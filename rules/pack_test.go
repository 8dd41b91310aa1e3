package rules

import (
	"os"
	"path/filepath"
	"testing"

	"underfoot/assess"
	"underfoot/assess/message"
	"underfoot/assess/quantity"
	"underfoot/assess/result"
	"underfoot/rules/pack"
)

func readPack(t testing.TB, text string) *pack.Local {
	t.Helper()
	p, err := pack.ReadLocal("a.toml", []byte(text))
	if err != nil {
		t.Fatal(err)
	}
	return p
}

func openWith(t testing.TB, packs ...*pack.Local) *Engine {
	t.Helper()
	e, err := Open("us", quantity.US, message.English(), packs...)
	if err != nil {
		t.Fatal(err)
	}
	return e
}

// head begins a pack of the tests, with one source to lean on.
func head(id string) string {
	return `[pack]
id = "` + id + `"
title = "Invented"
edition = "1"
[[source]]
id = "` + id + `-source"
title = "Invented source"
edition = "1, section 1"
known = "lookup"
states = "Invented."
`
}

// strict tightens what decides most often in rules, and raises every rule that
// leaves an open question to a look before the work.
func strict(e *Engine, id string) string {
	text := head(id)
	for figure, value := range map[string]string{"presumed_to": "1995", "test_to": "2000", "lead_paint_to": "1990", "mould_area": "5 ft2",
		"crack_width_engineer": "1/16 in", "engineered_sag": "1/4 in", "sag_limit": "1/4 in", "sag_ratio": "360", "floor_drop": "1 in",
		"slab_rh": "70 %", "slab_mver": "2 lb/1000 ft2", "wood_moisture": "10 %", "framing_moisture": "15 %", "moisture_gap": "3 points",
		"thick_stone": "3/8 in", "ceramic_limit": "L/480", "stone_limit": "L/960", "flat_small": "1/8 in", "flat_large": "1/16 in",
		"panel_mat_16": "1 in", "new_concrete_days": "60 days", "weight_unquestioned": "3 psf", "hollow_share": "5 %"} {
		text += "[[tighten]]\nfigure = \"" + figure + "\"\nvalue = \"" + value + "\"\nsource = \"" + id + "-source\"\n"
	}
	for _, r := range e.Pack.Rules {
		if r.Unknown == result.PolicyVerify {
			text += "[[raise]]\nrule = \"" + r.ID + "\"\nunknown = \"hold\"\nsource = \"" + id + "-source\"\n"
		}
	}
	return text
}

// likely are floors that people ask about with a few answers changed: a floor
// drawn at random mostly has a trouble that outweighs every figure.
func likely(t *testing.T, e *Engine) func(g floorplan) *assess.Job {
	t.Helper()
	names, err := filepath.Glob("../testdata/cases/P*.yaml")
	if err != nil || len(names) == 0 {
		t.Fatal("no floors", err)
	}
	var floors []*assess.Job
	for _, name := range names {
		j, _ := readJob(t, e, name)
		if len(j.Areas) == 1 && len(j.Areas[0].Zones) == 1 {
			j.Areas[0].ID = "the-room"
			floors = append(floors, j)
		}
	}
	return func(g floorplan) *assess.Job {
		j := one(g, floors...).Clone()
		all := slots(e, j)
		for range g.Intn(6) {
			s := one(g, all...)
			j.Put(s.addr, g.answer(s.decl))
		}
		return j
	}
}

// TestTighteningNeverLowers: a pack that only tightens figures and raises rules
// never lowers either end of the span, and does raise some.
func TestTighteningNeverLowers(t *testing.T) {
	e := openUS(t)
	tight, draw, raised := openWith(t, readPack(t, strict(e, "town"))), likely(t, e), 0
	trials(t, e, 4000, func(t *testing.T, g floorplan) {
		j := draw(g)
		before, after := evaluate(e, j).Span, evaluate(tight, j).Span
		if after.Low < before.Low || after.High < before.High {
			t.Fatalf("the stricter pack lowered the span %v to %v", before, after)
		}
		if after != before {
			raised++
		}
	})
	if raised == 0 {
		t.Error("the stricter pack raised nothing: the test shows nothing")
	}
	t.Logf("%d spans were raised", raised)
}

// TestOrderOfPacksNeverMatters: packs named in any order say the same.
func TestOrderOfPacksNeverMatters(t *testing.T) {
	e := openUS(t)
	example, err := os.ReadFile("../testdata/packs/example-harbour.toml")
	if err != nil {
		t.Fatal(err)
	}
	a, b, c := readPack(t, string(example)), readPack(t, strict(e, "town")), readPack(t, head("village")+
		"[[relax]]\nfigure = \"hollow_share\"\nvalue = \"20 %\"\nsource = \"village-source\"\n"+
		"[[relax]]\nrule = \"joist-too-soft\"\nunknown = \"note\"\nsource = \"village-source\"\n")
	forth, back, draw := openWith(t, a, b, c), openWith(t, c, b, a), likely(t, e)
	trials(t, e, 1000, func(t *testing.T, g floorplan) {
		j := draw(g)
		x, y := evaluate(forth, j), evaluate(back, j)
		if x.Span != y.Span || x.Lead != y.Lead || x.Blocked != y.Blocked {
			t.Fatalf("the order of packs matters: %v %v, %v %v", x.Lead, x.Span, y.Lead, y.Span)
		}
	})
}

// A result names every pack that took part and what it relaxes.
func TestResultNamesPacks(t *testing.T) {
	e := openWith(t, readPack(t, head("village")+"[[relax]]\nfigure = \"hollow_share\"\nvalue = \"20 %\"\nsource = \"village-source\"\n"))
	r := e.Assess(&assess.Job{Region: "us", Visited: today}, today)
	if len(r.Packs) != 2 || r.Packs[0].Local || !r.Packs[1].Local || len(r.Packs[1].Relaxes) != 1 {
		t.Fatalf("%+v", r.Packs)
	}
	if want := "figure hollow_share is 20 %; Invented source (1, section 1)"; r.Packs[1].Relaxed(nil)[0] != want {
		t.Errorf("%q, want %q", r.Packs[1].Relaxes[0], want)
	}
}
