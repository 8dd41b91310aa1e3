package cli

import (
	"strings"
	"testing"

	"github.com/spf13/pflag"

	"underfoot/assess/message"
)

// a joist that bends between the limits under ceramic tile and under stone.
var oneJoist = []string{"joist", "--json", "--size", "2x10", "--spacing", "16in", "--span", "14ft", "--species", "douglas-fir-larch", "--grade", "no2"}

func TestJoistTakesTheWordsOfTheTrade(t *testing.T) {
	_, stone, _ := run(t, "", append(oneJoist, "--tile", "natural-stone")...)
	_, ceramic, _ := run(t, "", append(oneJoist, "--tile", "ceramic")...)
	if stone == ceramic {
		t.Fatal("stone is held to the limit of ceramic tile")
	}
	for word, want := range map[string]string{"marble": stone, "slate": stone, "Granite": stone, "Natural Stone": stone, "stone": stone, "porcelain": ceramic, "tile": ceramic} {
		if code, out, errs := run(t, "", append(oneJoist, "--tile", word)...); code != exitDone || out != want {
			t.Errorf("--tile %s: exit %d, said %q, and is not judged as what it means", word, code, errs)
		}
	}
	if code, _, errs := run(t, "", append(oneJoist[:len(oneJoist)-1:len(oneJoist)-1], "#2", "--member", "lumber")...); code != exitDone {
		t.Errorf("grade #2 of lumber: exit %d, %s", code, errs)
	}
}

// TestJoistReplacesNothing: a word that nobody knows and a number that cannot be
// meant are asked back, each with what could be written.
func TestJoistReplacesNothing(t *testing.T) {
	for line, hint := range map[string]string{
		"--tile banana":           "natural-stone",
		"--continuity bananas":    "two-spans",
		"--continuity cantilever": "one-span",
		"--member beam-me":        "sawn-lumber",
		"--species teak":          "hem-fir",
		"--grade no9":             "no2",
		"--test-with dial --test-weight 200lb --test-drop 0.1in": "dial-gauge",
		"--live 0":        "greater than zero",
		"--live -40":      "write it with its unit",
		"--dead 0":        "greater than zero",
		"--span -14ft":    "greater than zero",
		"--span 0ft":      "greater than zero",
		"--spacing 0in":   "greater than zero",
		"--point 0lb":     "greater than zero",
		"--overhang -1ft": "greater than zero",
	} {
		flags := strings.Fields(line)
		code, out, errs := run(t, "", append(oneJoist[:len(oneJoist):len(oneJoist)], flags...)...)
		if code != exitUsage || out != "" || !strings.Contains(errs, flags[0]+": ") || !strings.Contains(errs, hint) {
			t.Errorf("%s: exit %d, printed %d bytes, said %q; want the flag and %q", line, code, len(out), errs, hint)
		}
	}
}

// TestJoistFlagsThatSayNothing goes through every flag that the command has: one
// that is named and left empty, or counts none, is asked back like any other.
func TestJoistFlagsThatSayNothing(t *testing.T) {
	(&app{language: message.English()}).joistCommand().Flags().VisitAll(func(f *pflag.Flag) {
		for _, value := range map[string][]string{"string": {"", " "}, "int": {"0", "-1"}}[f.Value.Type()] {
			line := append(oneJoist[:len(oneJoist):len(oneJoist)], "--test-weight", "200lb", "--test-drop", "0.1in", "--"+f.Name+"="+value)
			if code, out, errs := run(t, "", line...); code != exitUsage || out != "" || !strings.Contains(errs, "--"+f.Name+": ") {
				t.Errorf("--%s=%q: exit %d, printed %d bytes, said %q", f.Name, value, code, len(out), errs)
			}
		}
	})
	for _, flag := range []string{"--test-with=string", "--test-alike=3", "--test-place=2ft"} {
		if code, _, errs := run(t, "", append(oneJoist[:len(oneJoist):len(oneJoist)], flag)...); code != exitUsage || !strings.Contains(errs, "weight and the drop") {
			t.Errorf("%s without a test: exit %d, said %q", flag, code, errs)
		}
	}
}
