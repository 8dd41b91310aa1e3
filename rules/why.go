package rules

import (
	"strings"

	"underfoot/assess"
	"underfoot/assess/condition"
	"underfoot/assess/message"
	"underfoot/rules/judge"
)

// A Reason is what decided one finding.
type Reason struct {
	Area, Zone string // ids
	Several    bool   // the room has several zones
	Finding    assess.Finding
	Decided    []condition.Explanation // the deciding branches, with values
	Gone       bool                    // judged as gone: the layer is coming out
	Rest       bool                    // about items that nobody has named
}

// Why gives what decided the findings of a rule, or the one finding of an id
// such as rule@l2, with the zone before the subject or not. It gives none where
// the record has nothing that the rule looks at, and for an id of no rule.
func (e *Engine) Why(job *assess.Job, id string, today assess.Day) []Reason {
	name, subject, one := strings.Cut(id, "@")
	job = job.Normal()
	floor := e.facts.Fill(job, today)
	var out []Reason
	for i := range job.Areas {
		for _, frame := range floor.Zones[i] {
			look := e.judge.Zone(frame, false)
			for n := range look.Rulings {
				r := &look.Rulings[n]
				if r.Rule.ID != name || one && subject != r.Subject() && subject != strings.TrimSuffix(frame.ID()+"."+r.Subject(), ".") {
					continue
				}
				out = append(out, e.reason(r, job.Areas[i].ID, frame.ID(), len(job.Areas[i].Zones) > 1))
			}
		}
	}
	return out
}

// Explain adds to each finding of a result that asks something of the reader
// what decided it. It takes about as long as the assessment did.
func (e *Engine) Explain(r *assess.Result) {
	floor := e.facts.Fill(r.Job, r.Today)
	for i := range r.Areas {
		decided := map[string]string{}
		for _, frame := range floor.Zones[i] {
			look := e.judge.Zone(frame, false)
			for n := range look.Rulings {
				x := &look.Rulings[n]
				if x.Outcome.Truth != assess.No && !x.Rest() {
					f := e.teller.Finding(x, frame.ID(), len(floor.Zones[i]) > 1)
					decided[f.ID+" "+f.Zone] = lines(e.Language, e.teller.Why(x))
				}
			}
		}
		for n := range r.Areas[i].Findings {
			if f := &r.Areas[i].Findings[n]; f.Outcome < assess.Holds {
				f.Decided = decided[f.ID+" "+f.Zone]
			}
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

func (e *Engine) reason(r *judge.Ruling, area, zone string, several bool) Reason {
	return Reason{Area: area, Zone: zone, Several: several, Finding: e.teller.Finding(r, zone, several), Decided: e.teller.Why(r), Gone: r.Gone(), Rest: r.Rest()}
}
