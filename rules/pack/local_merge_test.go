package pack

import (
	"fmt"
	"reflect"
	"strings"
	"testing"

	"underfoot/assess"
	"underfoot/assess/figure"
	"underfoot/assess/quantity"
	"underfoot/assess/result"
)

// small is a pack of a few lines with a source to lean on.
func small(t *testing.T, id, body string) *Local {
	t.Helper()
	return read(t, strings.ReplaceAll(`[pack]
id = "ID"
title = "Invented"
edition = "1"
[[source]]
id = "ID-source"
title = "Invented source of ID"
edition = "1, section 1"
known = "lookup"
states = "Invented."
`, "ID", id)+strings.ReplaceAll(body, "SOURCE", `source = "`+id+`-source"`))
}

// Several packs that speak of one thing: the strictest word counts, whichever
// pack is named first.
func TestStrictestPackCounts(t *testing.T) {
	number := func(what, value string) string {
		return "[[" + what + "]]\nfigure = \"hollow_share\"\nvalue = \"" + value + "\"\nSOURCE\n"
	}
	rule := func(what, unknown string) string {
		return "[[" + what + "]]\nrule = \"floor-bounces\"\nunknown = \"" + unknown + "\"\nSOURCE\n"
	}
	for _, tt := range []struct {
		name, a, b string
		share      float64       // shipped: 10 percent, lower is stricter
		unknown    result.Policy // shipped: verify
	}{
		{"nothing", "", "", 10, result.PolicyVerify},
		{"tightened twice", number("tighten", "5 %"), number("tighten", "7 %"), 5, result.PolicyVerify},
		{"relaxed twice", number("relax", "15 %"), number("relax", "20 %"), 15, result.PolicyVerify},
		{"tightened and relaxed", number("tighten", "8 %"), number("relax", "20 %"), 8, result.PolicyVerify},
		{"raised twice", rule("raise", "presume"), rule("raise", "hold"), 10, result.PolicyPresume},
		{"raised to less is nothing", rule("raise", "note"), "", 10, result.PolicyVerify},
		{"relaxed", rule("relax", "note"), "", 10, result.PolicyNote},
		{"relaxed to more is nothing", rule("relax", "hold"), "", 10, result.PolicyVerify},
		{"raised and relaxed", rule("relax", "note"), rule("raise", "hold"), 10, result.PolicyHold},
	} {
		t.Run(tt.name, func(t *testing.T) {
			a, b := small(t, "town-a", tt.a), small(t, "town-b", tt.b)
			first, p, err := added("us", a, b)
			if err != nil {
				t.Fatal(err)
			}
			if f, _ := first.Figures.Figure("hollow_share"); f.Value != tt.share {
				t.Errorf("the figure is %v, want %v", f.Value, tt.share)
			}
			if got := p.Rule("floor-bounces").Unknown; got != tt.unknown {
				t.Errorf("the rule says %s, want %s", got, tt.unknown)
			}
			second, q, err := added("us", b, a)
			if err != nil {
				t.Fatal(err)
			}
			if !reflect.DeepEqual(first.Figures, second.Figures) || !reflect.DeepEqual(p.Rule("floor-bounces"), q.Rule("floor-bounces")) ||
				!reflect.DeepEqual(p.Locals, q.Locals) {
				t.Error("the order of the packs matters")
			}
		})
	}
}

// Each case of a rule's policy is raised, not only the last word.
func TestRaiseReachesEveryPolicy(t *testing.T) {
	id := ""
	for _, r := range countries()["us"].pack.Rules {
		if len(r.UnknownWhen) > 0 && (r.Unknown == result.PolicyVerify || r.UnknownWhen[0].Then == result.PolicyVerify) {
			id = r.ID
		}
	}
	_, p, err := added("us", small(t, "town", "[[raise]]\nrule = \""+id+"\"\nunknown = \"hold\"\nSOURCE\n"))
	if err != nil {
		t.Fatal(err)
	}
	r := p.Rule(id)
	for _, c := range append(r.UnknownWhen, PolicyCase{Then: r.Unknown}) {
		if c.Then == result.PolicyVerify || c.Then == result.PolicyNote {
			t.Errorf("%s still says %s", id, c.Then)
		}
	}
}

// What a pack permits is a relaxation: the floors of the program's rules are
// opened by it.
func TestPermitIsNamed(t *testing.T) {
	_, p, err := added("us", read(t, example(t, "[[caution]]", extra("permits = [\"uncouple\"]\nafter = \"bare-slab-sound\"")+"[[caution]]")))
	if err != nil {
		t.Fatal(err)
	}
	all := strings.Join(p.Locals[0].Relaxed(nil), "\n")
	if !strings.Contains(all, "rule example-harbour-extra permits uncouple; Floor ordinance of the invented town") {
		t.Errorf("the pack relaxes %q", all)
	}
}

// Rules behind one rule of the program stand by their ids, before its next one.
func TestNewcomersStandByID(t *testing.T) {
	rule := func(id string) string {
		return strings.ReplaceAll(strings.ReplaceAll(extra("calls = \"engineer\"\nafter = \"wood-rot\""), "example-harbour-extra", id+"-new"),
			"example-harbour-ordinance", id+"-source")
	}
	a, b := small(t, "town-a", rule("town-a")), small(t, "town-b", rule("town-b"))
	for _, order := range [][]*Local{{a, b}, {b, a}} {
		_, p, err := added("us", order...)
		if err != nil {
			t.Fatal(err)
		}
		from, to := countries()["us"].pack.between("wood-rot")
		first, second := p.Rule("town-a-new").Rank, p.Rule("town-b-new").Rank
		if from >= first || first >= second || second >= to {
			t.Errorf("between %v and %v stand %v and %v", from, to, first, second)
		}
	}
}

func TestSameIDTwice(t *testing.T) {
	p := small(t, "town", "")
	if _, _, err := added("us", p, p); err == nil || !strings.Contains(err.Error(), "there are two packs town") {
		t.Errorf("the same pack twice gives %v", err)
	}
}

// A reader mends packs in one go.
func TestAllProblemsOfAllPacksAtOnce(t *testing.T) {
	_, _, err := added("us", small(t, "town-a", "[[tighten]]\nfigure = \"nothing\"\nvalue = \"1\"\nSOURCE\n"),
		read(t, example(t, `zone.base ==`, `zone.bas ==`, `regions`, `region`)))
	problems, _ := err.(assess.Problems)
	text := err.Error()
	for _, want := range []string{`there is no figure "nothing"`, "there is no fact zone.bas", "region is no key here"} {
		if !strings.Contains(text, want) {
			t.Errorf("of %d problems none says %q:\n%s", len(problems), want, text)
		}
	}
}

func TestBounds(t *testing.T) {
	long := strings.Repeat("#", MaxLocalBytes+1)
	if _, err := ReadLocal("a.toml", []byte(long)); err == nil || !strings.Contains(err.Error(), "larger than 1048576 bytes") {
		t.Errorf("a long file gives %v", err)
	}
	if _, err := ReadLocal("a.toml", []byte("a = \"\xff\"")); err == nil || !strings.Contains(err.Error(), "UTF-8") {
		t.Errorf("bad UTF-8 gives %v", err)
	}
	for _, key := range []string{"rule", "source", "raise"} {
		text := "[pack]\nid = \"town\"\n" + strings.Repeat("[["+key+"]]\n", maxLocalRecords+1)
		if _, err := ReadLocal("a.toml", []byte(text)); err == nil || !strings.Contains(err.Error(), "a.toml:2003:3: the pack has 2001 records "+key) {
			t.Errorf("many records %s give %v", key, err)
		}
	}
	var keys strings.Builder
	for i := range 50000 {
		fmt.Fprintf(&keys, "key%d = 1\n", i)
	}
	if _, err := ReadLocal("a.toml", []byte(keys.String())); err == nil || !strings.Contains(err.Error(), "a.toml:1:1: a table has 50000 keys") {
		t.Errorf("many keys give %v", err)
	}
	_, _, err := added("us", small(t, "town", strings.Repeat("[[rule]]\n", maxLocalRecords)))
	if problems, _ := err.(assess.Problems); len(problems) != maxProblems {
		t.Errorf("many bad rules give %d problems", len(problems))
	}
	for _, tt := range []struct{ name, when, want string }{
		{"bytes", strings.Repeat(" ", 4097), "longer than 4096 bytes"},
		{"depth", strings.Repeat("(", 60) + `zone.base == "joists"` + strings.Repeat(")", 60), "deep"},
		{"nodes", strings.TrimSuffix(strings.Repeat(`floor.covers==0||`, 220), "||"), ""},
	} {
		_, _, err := added("us", read(t, example(t, `'zone.base == "joists" && room.wet == "wet-room"'`, `'`+tt.when+`'`)))
		if err == nil || !strings.Contains(err.Error(), tt.want) {
			t.Errorf("%s: %v", tt.name, err)
		}
	}
}

// Whatever the bytes, a pack is read or refused, with a place for each problem,
// and what is read can be added or is refused again.
func FuzzReadLocal(f *testing.F) {
	f.Add([]byte(example(f)))
	f.Add([]byte("[pack]\nid = \"a\"\n[[rule]]\nwhen = '''\r\nzone.base == \"joists\"'''\ncase = [{facts = {a.b = 1}}]\n"))
	f.Add([]byte("rule = [{id = \"a\", risk = {likelihood = \"\\u00e4\"}}]\npack.id = \"b\"\n[relax]\n"))
	f.Fuzz(func(t *testing.T, data []byte) {
		p, err := ReadLocal("a.toml", data)
		if err == nil {
			c := countries()["us"]
			_, err = Add(figure.For("us", quantity.US), p).To(c.pack, c.names)
		}
		if err == nil {
			return
		}
		problems, ok := err.(assess.Problems)
		if !ok || len(problems) == 0 {
			t.Fatalf("%v are no problems", err)
		}
		for _, p := range problems {
			if p.Place == "" || p.What.IsZero() {
				t.Errorf("%+v says too little", p)
			}
		}
	})
}
