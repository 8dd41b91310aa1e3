package structure

import (
	"underfoot/assess/figure"
	"underfoot/assess/message"
)

// Rules are what a country's code says of notches, holes and bearing of sawn
// joists, for a reader who stands below them; beyond them the joists are not
// computed and go to an engineer.
type Rules struct {
	Texts  []message.Message
	Source figure.Source
}

// LimitsOf are the rules of a region; ok is false where none were read, and the
// local code is to be asked.
func LimitsOf(region string) (r Rules, ok bool) {
	limits := figure.PracticeOf(region).Limits
	for _, name := range limits.Names {
		r.Texts = append(r.Texts, message.New("structure/limit."+name))
	}
	r.Source = limits.Source()
	return r, len(r.Texts) > 0
}
