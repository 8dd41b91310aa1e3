package judge

import "testing"

func TestLabelsInASentence(t *testing.T) {
	for value, want := range map[string]string{
		"Sheet vinyl":                   "sheet vinyl",
		"Sheet vinyl or Vinyl tile":     "sheet vinyl or vinyl tile",
		"OSB":                           "OSB",
		"I-joist or LVL":                "I-joist or LVL",
		"L/430":                         "L/430",
		"1/8 in":                        "1/8 in",
		"":                              "",
		"Ceramic or porcelain tile":     "ceramic or porcelain tile",
		"at least 3":                    "at least 3",
		"In lines along the panel seam": "in lines along the panel seam",
	} {
		if got := inSentence(value); got != want {
			t.Errorf("%q: %q, want %q", value, got, want)
		}
	}
}
