package figure

import (
	"regexp"
	"strings"
	"testing"
)

func TestCite(t *testing.T) {
	c, ok := Cite("HZ24")
	if !ok || c.ID != "HZ24" || !strings.Contains(c.Title, "40 CFR 745.82") || c.Known != "lookup" || !strings.Contains(c.States.String(), "before 1978") {
		t.Errorf("HZ24 is %+v, %v", c, ok)
	}
	if _, ok := Cite("ZZ99"); ok {
		t.Error("ZZ99 is found")
	}
	if n := len(CitationIDs()); n != 353 {
		t.Errorf("%d citations, want 353", n)
	}
}

// A statement is a whole sentence without traces of where it was kept before.
func TestCitationsAreClean(t *testing.T) {
	traces := regexp.MustCompile(`\.csv|README|\bR\d\d\b|\bsee [A-Z]{2}\d|this project|\bengine\b|decision\.md|existing source|\|| ,|\bhttp`)
	for _, id := range CitationIDs() {
		c, _ := Cite(id)
		if !regexp.MustCompile(`^[A-Z]{2}\d\d$`).MatchString(id) {
			t.Errorf("%s is no id", id)
		}
		if says := c.States.String(); !strings.HasSuffix(says, ".") || len(says) < 25 {
			t.Errorf("%s states %q", id, says)
		}
		if found := traces.FindString(c.Title + "\n" + c.Edition + "\n" + c.States.String()); found != "" {
			t.Errorf("%s holds %q", id, found)
		}
	}
}

func TestReadCitationsNamesFaults(t *testing.T) {
	const head = "id,title,edition,known\n"
	cases := []struct{ text, want string }{
		{"", "the columns are id, title"},
		{"id,title\n", "the columns are id, title"},
		{head + "A1,t,e,lookup\nA1,t,e,lookup\n", "line 3: A1 stands twice"},
		{head + ",t,e,lookup\n", "line 2: id and title"},
		{head + "A1,,e,lookup\n", "line 2: id and title"},
		{head + "A1,t,e,heard\n", `line 2: known is one of`},
		{head + "A1,t\n", "wrong number of fields"},
	}
	for _, c := range cases {
		if _, err := readCitations(strings.NewReader(c.text)); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%q gave %v, want %q", c.text, err, c.want)
		}
	}
}
