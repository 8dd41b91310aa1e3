package rules

import (
	"strings"

	"underfoot/assess/condition"
	"underfoot/assess/logic"
	"underfoot/assess/message"
	"underfoot/assess/result"
	"underfoot/rules/judge"
)

// An Explanation is what decided one finding.
type Explanation struct {
	Area, Zone string // ids
	Several    bool   // the room has several zones
	Finding    result.Finding
	Conditions []condition.Explanation // the deciding branches, with values
	Gone       bool                    // judged as gone: the layer is coming out
	Rest       bool                    // about items that nobody has named
}

// Why gives what decided the findings of a rule, or the one finding of an id
// such as rule@l2, with the zone before the subject or not. It gives none where
// the record has nothing that the rule looks at, and for an id of no rule.
func (a *Assessment) Why(id string) []Explanation {
	name, subject, one := strings.Cut(id, "@")
	var out []Explanation
	for z := range a.all() {
		for n := range z.Rulings {
			r := &z.Rulings[n]
			if r.Rule.ID == name && (!one || subject == r.Subject() || subject == strings.TrimSuffix(z.frame.ID()+"."+r.Subject(), ".")) {
				out = append(out, a.explanation(z, r))
			}
		}
	}
	return out
}

func (a *Assessment) explanation(z judged, r *judge.Ruling) Explanation {
	d, several := a.engine.describer, a.several(z.area)
	return Explanation{Area: a.job.Areas[z.area].ID, Zone: z.frame.ID(), Several: several,
		Finding: d.Finding(r, z.frame.ID(), several), Conditions: d.Why(r), Gone: r.Gone(), Rest: r.Rest()}
}

// Explained is the whole answer, in which each finding that asks something of
// the reader says what decided it.
func (a *Assessment) Explained() *result.Result {
	out := a.Result()
	decided := make([]map[string]string, len(a.zones))
	for z := range a.all() {
		if decided[z.area] == nil {
			decided[z.area] = map[string]string{}
		}
		a.decide(z, decided[z.area])
	}
	for i := range out.Areas {
		for n := range out.Areas[i].Findings {
			if f := &out.Areas[i].Findings[n]; f.Outcome < result.Holds {
				f.Explanation = decided[i][f.ID+" "+f.Zone]
			}
		}
	}
	return out
}

// decide notes what decided each ruling of a zone, by its finding and zone.
func (a *Assessment) decide(z judged, decided map[string]string) {
	for n := range z.Rulings {
		r := &z.Rulings[n]
		if r.Outcome.Truth != logic.No && !r.Rest() {
			id := r.FindingIDIn(z.frame.ID(), a.several(z.area))
			decided[id+" "+z.frame.ID()] = lines(a.engine.Language, a.engine.describer.Why(r))
		}
	}
}

// lines are explanations as one text.
func lines(l *message.Language, list []condition.Explanation) string {
	var parts []string
	for _, x := range list {
		parts = append(parts, x.Lines(l))
	}
	return strings.Join(parts, "\n")
}
