package cli

import (
	"strings"
	"testing"

	"underfoot/assess/message"
)

func TestTheLanguageIsFoundFirst(t *testing.T) {
	for line, want := range map[string]string{
		"":                           "",
		"assess x":                   "",
		"--lang de assess x":         "de",
		"assess x --lang=de":         "de",
		"assess --lang de --lang en": "en",
		"assess x --lang":            "",
		"assess -- --lang de":        "",
	} {
		if got := tagIn(strings.Fields(line)); got != want {
			t.Errorf("%q: %q, want %q", line, got, want)
		}
	}
	if got := languageOf([]string{"--lang", message.Pseudo}).Tag; got != message.Pseudo {
		t.Errorf("the pseudo-language opens as %s", got)
	}
	if got := languageOf([]string{"--lang", "xx"}).Tag; got != message.English().Tag {
		t.Errorf("no language opens as %s", got)
	}
}

// TestWrongCommandLines: each is refused with 2, what is wrong, and a hint.
func TestWrongCommandLines(t *testing.T) {
	for line, want := range map[string]string{
		"frob":                          `unknown command "frob" for "underfoot"|see: underfoot help`,
		"asess":                         `unknown command "asess" for "underfoot"|did you mean assess? see: underfoot help`,
		"help frob":                     `unknown command "frob" for "underfoot"|see: underfoot help`,
		"assess --frob x":               `unknown flag: --frob|see: underfoot assess --help`,
		"-q":                            `unknown shorthand flag: 'q' in -q|see: underfoot --help`,
		"assess x --units":              `flag needs an argument: --units|see: underfoot assess --help`,
		"report x -o":                   `flag needs an argument: 'o' in -o|see: underfoot report --help`,
		"joist --test-alike x":          `invalid argument "x" for "--test-alike" flag: strconv.ParseInt: parsing "x": invalid syntax|see: underfoot joist --help`,
		"walk":                          `accepts 1 arg(s), received 0|name one record; it is made if it is not there`,
		"assess":                        `requires at least 1 arg(s), only received 0|name a record, or - for the standard input`,
		"demo a b":                      `accepts at most 1 arg(s), received 2|name at most one folder`,
		"schema x":                      `unknown command "x" for "underfoot schema"|schema takes no arguments`,
		"rules list --units inch":       `--units inch is not a system of units|it is us or mm`,
		"rules list --region mars":      `--region mars is not a region|one of: us, ca, uk, ie, au, nz, de, eu, other`,
		"rules list --lang de":          `--lang de is not there yet|one of: en`,
		"rules list --today tomorrow":   `--today: "tomorrow" is not a day|write year, month and day, such as 2026-05-04`,
		"report x -o out.pdf --paper b": `--paper b is not a paper|it is letter or a4`,
		"assess --why x --json y":       `--why goes with no other flag of assess|see: underfoot assess --help`,
	} {
		what, hint, _ := strings.Cut(want, "|")
		code, out, errs := run(t, "", strings.Fields(line)...)
		if wanted := "underfoot: " + what + "\n  hint: " + hint + "\n"; code != exitUsage || out != "" || errs != wanted {
			t.Errorf("%s: exit %d, printed %q, said\n%swant\n%s", line, code, out, errs, wanted)
		}
	}
}

// TestHelpHasAPlaceForEverything: no command lacks a line of help, and help in
// another language is that language's.
func TestHelpHasAPlaceForEverything(t *testing.T) {
	a := &app{language: message.English()}
	for _, c := range a.root().Commands() {
		code, out, errs := run(t, "", "help", c.Name())
		if code != exitDone || errs != "" || c.Short == "" || c.Runnable() && !strings.Contains(out, "\nUsage:\n  underfoot "+c.Name()) {
			t.Errorf("help %s: exit %d, %q\n%s", c.Name(), code, errs, out)
		}
	}
	_, english, _ := run(t, "", "help", "walk")
	_, pseudo, _ := run(t, "", "help", "walk", "--lang", message.Pseudo)
	if got := strings.NewReplacer("⟦", "", "⟧", "").Replace(pseudo); got != english {
		t.Errorf("without its brackets the pseudo-language says\n%s\nand English\n%s", got, english)
	}
}
