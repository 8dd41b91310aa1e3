package datafile

import (
	"strings"
	"testing"
)

func TestDecode(t *testing.T) {
	for name, c := range map[string]struct{ text, want string }{
		"good":     {"total_load = true\n", ""},
		"misspelt": {"totl_load = true\n", "totl_load"},
		"broken":   {"\ntotal_load = \n", "f.toml:2:14: "},
		"kind":     {"total_load = \"yes\"\n", "f.toml:1:14: "},
	} {
		var into struct {
			TotalLoad bool `toml:"total_load"`
		}
		err := Decode("f.toml", []byte(c.text), &into)
		switch {
		case c.want == "" && (err != nil || !into.TotalLoad):
			t.Errorf("%s: %v, %+v", name, err, into)
		case c.want != "" && (err == nil || !strings.Contains(err.Error(), c.want)):
			t.Errorf("%s: %v, want %q", name, err, c.want)
		}
	}
}
