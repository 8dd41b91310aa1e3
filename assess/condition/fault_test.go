package condition_test

import (
	"flag"
	"os"
	"strings"
	"testing"
	"unicode/utf8"

	"underfoot/assess"
	"underfoot/assess/condition"
	"underfoot/assess/message"
)

var update = flag.Bool("update", false, "write the golden files anew")

// Each condition of the table faults is refused with the report that
// testdata/faults.txt has below it.
func TestFaults(t *testing.T) {
	const file = "testdata/faults.txt"
	golden, err := os.ReadFile(file)
	if err != nil && !*update {
		t.Fatal(err)
	}
	var all strings.Builder
	for _, f := range faults {
		block := "== " + f.name + "\n" + f.src + "\n\n" + reportOf(f.src) + "\n"
		all.WriteString(block)
		if !*update && !strings.Contains(string(golden), block) {
			t.Errorf("not in %s:\n%s", file, block)
		}
	}
	if *update {
		if err := os.WriteFile(file, []byte(all.String()), 0o644); err != nil {
			t.Fatal(err)
		}
	} else if all.Len() != len(golden) {
		t.Errorf("%s holds more or less than the table", file)
	}
}

func reportOf(src string) string {
	c, problems := condition.Compile(src, condition.Place{File: "rules.toml", Line: 7, Column: 9}, names)
	if c != nil {
		return "no problem: " + c.String() + "\n"
	}
	var b strings.Builder
	for _, p := range problems {
		b.WriteString(p.Report(message.English()) + "\n")
	}
	return b.String()
}

// What cannot stand in a text file: bounds, control characters, broken text.
func TestBoundsAndCharacters(t *testing.T) {
	atom := `danger.gas == "yes"`
	chain := func(n int) string { return strings.TrimSuffix(strings.Repeat(atom+" || ", n), " || ") }
	nested := func(n int) string { return strings.Repeat("(", n) + atom + strings.Repeat(")", n) }
	tests := []struct {
		name, src string
		want      string // empty: it compiles
		places    string
	}{
		{"400 parts", chain(133), "", ""}, // 133 comparisons of three parts and the chain itself
		{"over 400 parts", chain(134), "the condition has more than 400 parts", "7:3068"},
		{"40 deep", nested(40), "", ""},
		{"over 40 deep", nested(41), "the condition is nested more than 40 deep", "7:49"},
		{"many signs", strings.Repeat("!", 41) + "(" + atom + ")", "the condition is nested more than 40 deep", "7:49"},
		{"4096 bytes", atom + strings.Repeat(" ", 4096-len(atom)), "", ""},
		{"over 4096 bytes", atom + strings.Repeat(" ", 4097-len(atom)), "the condition is longer than 4096 bytes", "7:9"},
		{"no text at all", "", "the condition is empty", "7:9"},
		{"escape sequence in a text", "danger.gas == \"\x1b[31m\"", "a text holds a character that it may not hold", "7:24"},
		{"text that is not UTF-8", "danger.gas == \"\xff\"", "a text holds a character that it may not hold", "7:24"},
		{"right-to-left mark", "danger.gas == \u202e\"yes\"", `'\u202e' means nothing in a condition`, "7:23"},
	}
	for _, tt := range tests {
		c, problems := condition.Compile(tt.src, condition.Place{File: "f", Line: 7, Column: 9}, names)
		switch {
		case tt.want == "" && c == nil:
			t.Errorf("%s: %v", tt.name, problems)
		case tt.want == "":
		case len(problems) == 0:
			t.Errorf("%s: compiles", tt.name)
		case problems[0].What.String() != tt.want || problems[0].Place != "f:"+tt.places:
			t.Errorf("%s: %v\nwant f:%s: %s", tt.name, problems, tt.places, tt.want)
		case strings.ContainsAny(problems[0].Lines, "\x1b\u202e"), !utf8.ValidString(problems[0].Lines):
			t.Errorf("%s: the report carries the character on to the terminal: %q", tt.name, problems[0].Lines)
		}
		for _, p := range problems {
			if p.Kind != assess.Invalid {
				t.Errorf("%s: kind %d", tt.name, p.Kind)
			}
		}
	}
}

// A record that is known by its name alone gives the place without a column.
func TestPlaceWithoutLine(t *testing.T) {
	_, problems := condition.Compile("danger.gas", condition.Place{File: "layer.kind"}, names)
	if len(problems) != 1 || problems[0].Place != "layer.kind" {
		t.Errorf("%v", problems)
	}
}
