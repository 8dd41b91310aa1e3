package message

import (
	"errors"
	"fmt"
	"strings"
	"testing"
	"testing/fstest"
)

func room(text string) *Language {
	return &Language{Tag: source, files: fstest.MapFS{"en/deck.toml": {Data: []byte(text)}}}
}

func TestSayFillsHoles(t *testing.T) {
	l := room("[note]\nthin = \"{sheet} is {thickness} thick, {thickness}\"\nsheet = \"sheet {n}\"\n")
	got := l.Text("deck/note.thin", "sheet", New("deck/note.sheet", "n", 2), "thickness", "1/2 in")
	if want := "sheet 2 is 1/2 in thick, 1/2 in"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
	if got := l.Say(Message{}); got != "" {
		t.Errorf("nothing says %q", got)
	}
	if got := l.Say(Verbatim("a {brace}")); got != "a {brace}" {
		t.Errorf("somebody else's words became %q", got)
	}
}

func TestFaultsOfASentencePanic(t *testing.T) {
	l := room("one = \"about {n}\"\n")
	for name, m := range map[string]Message{
		"no value":    New("deck/one"),
		"no hole":     New("deck/one", "n", 1, "m", 2),
		"no sentence": New("deck/two"),
		"no room":     New("dock/one"),
	} {
		t.Run(name, func(t *testing.T) {
			defer func() {
				if recover() == nil {
					t.Error("nothing was said about it")
				}
			}()
			l.Say(m)
		})
	}
}

type fault struct{}

func (fault) Error() string    { return "in English" }
func (fault) Message() Message { return New("problem/report.hint", "hint", "x") }

func TestOfFindsTheMessageOfAnError(t *testing.T) {
	if got := Of(fmt.Errorf("around: %w", fault{})).Key; got != "problem/report.hint" {
		t.Errorf("key %q", got)
	}
	if got := Of(errors.New("disk on fire")).String(); got != "disk on fire" {
		t.Errorf("%q", got)
	}
}

func TestPseudoLanguageBracketsEverySentence(t *testing.T) {
	l := room("inner = \"a\"\nouter = \"b {x} c\"\n")
	l.Tag = Pseudo
	if got, want := l.Text("deck/outer", "x", New("deck/inner")), "⟦b ⟦a⟧ c⟧"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
}

func TestALanguageIsHeldAgainstEnglish(t *testing.T) {
	files := fstest.MapFS{
		"en/deck.toml": {Data: []byte("a = \"{x}\"\nb = \"b\"\n")},
		"xx/deck.toml": {Data: []byte("a = \"{y}\"\nc = \"c\"\n")},
		"xx/dock.toml": {Data: []byte("d = \"d\"\n")},
	}
	faults := (&Language{Tag: "xx", files: files}).compare(&Language{Tag: source, files: files})
	if len(faults) != 4 {
		t.Errorf("found %q, want other holes, a missing and a needless key and a needless room", faults)
	}
}

func TestReadIsStrict(t *testing.T) {
	files := fstest.MapFS{"text.en.toml": {Data: []byte("[span]\nask = \"How far?\"\nunit = \"in\"\n")}}
	var into map[string]struct {
		Ask  string `toml:"ask"`
		Unit string `toml:"unit" message:"word"`
	}
	if err := (&Language{Tag: Pseudo}).Read(files, "text", &into); err != nil {
		t.Fatal(err)
	}
	if got := into["span"]; got.Ask != "⟦How far?⟧" || got.Unit != "in" {
		t.Errorf("%+v", got)
	}
	files["text.en.toml"].Data = []byte("[span]\naks = \"How far?\"\n")
	if err := English().Read(files, "text", &into); err == nil || !strings.Contains(err.Error(), "aks") {
		t.Errorf("an unknown key gives %v", err)
	}
}
