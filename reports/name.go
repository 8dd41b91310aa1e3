package reports

import (
	"strconv"
	"strings"

	"underfoot/assess/result"
	"underfoot/assess/schema"
)

// labels are what the questions of a result are called, by address.
func labels(r *result.Result) map[schema.Address]string {
	out := map[schema.Address]string{}
	for _, s := range r.Answers {
		if s.Label != "" {
			out[s.Address] = s.Label
		}
	}
	return out
}

// named is an address in a reader's words: its question, or else its last words
// without dots.
func (b *builder) named(a schema.Address) string {
	if label, ok := b.labels[a]; ok {
		if a.Item != "" {
			return label + " (" + a.Item + ")"
		}
		return label
	}
	if label := b.r.Labels[a.Short()]; label != "" {
		if a.Item != "" {
			return label + " (" + a.Item + ")"
		}
		return label
	}
	return strings.NewReplacer(".", " ", "_", " ", "-", " ").Replace(a.Local())
}

// shownNames is how many names a cell lists before it only counts the rest.
const shownNames = 8

// names lists addresses, one a line.
func (b *builder) names(list []schema.Address) string {
	out := make([]string, 0, len(list))
	for _, a := range list {
		out = append(out, b.named(a))
	}
	return b.lines(out)
}

// lines lists different texts one a line, and counts those beyond the first few.
func (b *builder) lines(texts []string) string {
	texts = distinct(texts)
	if len(texts) > shownNames {
		rest := strconv.Itoa(len(texts) - shownNames)
		texts = append(texts[:shownNames:shownNames], b.say("report/view.and_more", "n", rest))
	}
	return strings.Join(texts, "\n")
}

// distinct drops empty texts and those that have stood before.
func distinct(texts []string) []string {
	seen := map[string]bool{"": true}
	var out []string
	for _, t := range texts {
		if !seen[t] {
			seen[t] = true
			out = append(out, t)
		}
	}
	return out
}

// areaName is what a reader calls the area.
func areaName(a *result.AreaResult) string {
	if a.Name != "" && a.Name != a.ID {
		return a.Name
	}
	return strings.ReplaceAll(a.ID, "-", " ")
}

// place is the area, with the zone where the area has several.
func place(a *result.AreaResult, zone string) string {
	if zone == "" || len(a.Zones) < 2 {
		return areaName(a)
	}
	return areaName(a) + ", " + strings.ReplaceAll(zone, "-", " ")
}

// placeOf is the room of an answer, with its zone where the room has several, or
// the house as a whole.
func (b *builder) placeOf(a schema.Address) string {
	for i := range b.r.Areas {
		if area := &b.r.Areas[i]; area.ID == a.Area {
			return place(area, a.Zone)
		}
	}
	return b.say("report/answers.house")
}

// address is how a record says it, without what only one thing can be meant by.
func (b *builder) address(a schema.Address) string {
	zones := 0
	for i := range b.r.Areas {
		if b.r.Areas[i].ID == a.Area {
			zones = len(b.r.Areas[i].Zones)
		}
	}
	text := a.Local()
	if a.Zone != "" && zones > 1 {
		text = a.Zone + "." + text
	}
	if a.Area != "" && len(b.r.Areas) > 1 {
		text = a.Area + "." + text
	}
	return text
}

// path is a path in a reader's words.
func (b *builder) path(p result.PathID) string { return b.say("report/path." + p.String()) }

// verdict is a verdict in a reader's words.
func (b *builder) verdict(v result.Verdict) string { return b.say("report/verdict." + v.String()) }

func verdictTone(v result.Verdict) Tone {
	switch v {
	case result.Stop, result.Repair:
		return Urgent
	case result.Hold:
		return Waiting
	}
	return Settled
}
