package structure

import "underfoot/assess/figure"

// Rules are what a country's code says of notches, holes and bearing of sawn
// joists, for a reader who stands below them; beyond them the joists are not
// computed and go to an engineer.
type Rules struct {
	Texts  []string
	Source figure.Source
}

// LimitsOf are the rules of a region; ok is false where none were read, and the
// local code is to be asked.
func LimitsOf(region string) (r Rules, ok bool) {
	r, ok = rulesOf[region]
	return r, ok
}

var rulesOf = map[string]Rules{
	"us": {[]string{
		"No notch in the middle third of the span.",
		"Elsewhere a notch is at most 1/6 of the depth deep and 1/3 of the depth long; at the end at most 1/4 of the depth deep.",
		"In joists 4 in and thicker the tension side is notched at the ends alone.",
		"A hole is at most 1/3 of the depth across, and 2 in away from the edges and from other holes and notches.",
		"Joists bear at least 1-1/2 in on wood or metal and 3 in on masonry or concrete.",
	}, figure.Source{Title: "International Residential Code", Edition: "2018, R502.6 and R502.8.1", Known: "lookup"}},
	"ca": {[]string{
		"A notch is in the top alone, within half the depth from the bearing, and at most 1/3 of the depth deep; elsewhere what is left under the notch is taken as the depth.",
		"A hole is at most 1/4 of the depth across, and 50 mm away from the edges.",
		"Joists bear at least 38 mm.",
	}, figure.Source{Title: "CMHC wood-frame house construction guide", Edition: "edition not read; drilled holes, notching, end bearing", Known: "lookup"}},
}
