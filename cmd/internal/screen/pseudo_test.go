package screen

import (
	"regexp"
	"testing"

	"underfoot/assess/message"
)

// own are parts of what the screen says by itself, in every kind of pane.
var own = regexp.MustCompile(`answered, the|waited for,|So far: hold|help and all keys|Marked|Nothing is taken|Leave it|fits|Page Down|what is so|first question`)

// TestTheScreenSaysNothingBesideTheHomeOfWords looks at frames in the
// pseudo-language.
func TestTheScreenSaysNothingBesideTheHomeOfWords(t *testing.T) {
	pseudo, _ := message.Open(message.Pseudo)
	for _, keys := range [][]string{nil, {"f1"}, {"f1", "pgdown"}, {"esc"}, {"down", " ", "end", "enter"}, {"f3"}, {"/"}} {
		for _, address := range []string{"zone.base", "joist.span", "danger.gas", "layer.complete"} {
			s := sit(t, wants(t, address))
			s.Language = pseudo
			s.ask(s.prompt)
			s.size(120, 60)
			s.press(keys...)
			if leak := own.FindString(message.Unbracketed(s.View())); leak != "" {
				t.Errorf("%s, %v: %q stands in no brackets:\n%s", address, keys, leak, s.View())
			}
		}
	}
}
