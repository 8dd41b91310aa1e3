package data

import (
	"underfoot/assess/result"
)

// ComparisonFormat names the document of two visits and its version.
const ComparisonFormat = "underfoot.comparison/1"

type comparison struct {
	Format  string         `json:"format"`
	Old     string         `json:"old"`
	New     string         `json:"new"`
	Verdict pair           `json:"verdict"`
	Areas   []areaChange   `json:"areas"`
	Added   []string       `json:"added"`
	Missing []string       `json:"missing"`
	Answers []answerChange `json:"answers"`
}

// pair is one value at two visits; an end is empty where that visit has none.
type pair struct {
	Old string `json:"old"`
	New string `json:"new"`
}

type areaChange struct {
	ID       string          `json:"id"`
	Name     string          `json:"name"`
	Verdict  pair            `json:"verdict"`
	Zones    []zoneChange    `json:"zones"`
	Findings []findingChange `json:"findings"`
}

type zoneChange struct {
	ID      string `json:"id"`
	Verdict pair   `json:"verdict"`
	Path    pair   `json:"path"`
}

type findingChange struct {
	ID      string       `json:"id"`
	Rule    string       `json:"rule"`
	Zone    string       `json:"zone"`
	Change  string       `json:"change"`
	Outcome pair         `json:"outcome"`
	Value   pair         `json:"value"`
	Text    string       `json:"text"`
	Remedy  string       `json:"remedy"`
	Accept  []inspection `json:"accept"`
}

type inspection struct {
	Address string `json:"address"`
	Label   string `json:"label"`
	How     string `json:"how"`
	Value   string `json:"value"`
	Basis   string `json:"basis"`
	Missing bool   `json:"missing"`
	Firm    bool   `json:"firm"`
}

type answerChange struct {
	Address string `json:"address"`
	Label   string `json:"label"`
	Value   pair   `json:"value"`
}

func newComparison(c *result.Comparison) comparison {
	return comparison{
		Format: ComparisonFormat, Old: c.Old.File, New: c.New.File,
		Verdict: pair{c.Old.Verdict.String(), c.New.Verdict.String()},
		Areas:   each(c.Areas, newAreaChange),
		Added:   listed(c.Added), Missing: listed(c.Missing),
		Answers: each(c.Answers, func(a *result.AnswerChange) answerChange {
			return answerChange{a.Address.String(), a.Label, pair{answerValue(a.Old), answerValue(a.New)}}
		}),
	}
}

func newAreaChange(a *result.AreaComparison) areaChange {
	return areaChange{
		ID: a.ID, Name: a.Name, Verdict: pair{a.Old.Verdict.String(), a.New.Verdict.String()},
		Zones: each(a.Zones, newZoneChange), Findings: each(a.Accept, newFindingChange),
	}
}

func newZoneChange(z *result.ZoneComparison) zoneChange {
	out := zoneChange{ID: z.ID}
	if z.Old != nil {
		out.Verdict.Old, out.Path.Old = z.Old.Verdict.String(), z.Old.Path.String()
	}
	if z.New != nil {
		out.Verdict.New, out.Path.New = z.New.Verdict.String(), z.New.Path.String()
	}
	return out
}

func newFindingChange(a *result.Acceptance) findingChange {
	last := a.Latest()
	out := findingChange{ID: last.ID, Rule: last.Rule, Zone: a.Zone, Change: a.Change.String(), Text: last.Text, Accept: each(a.Inspections, newInspection)}
	if a.Old != nil {
		out.Outcome.Old, out.Value.Old = a.Old.Outcome.String(), a.Old.Value
	}
	if a.New != nil {
		out.Outcome.New, out.Value.New = a.New.Outcome.String(), a.New.Value
	}
	if a.New.Compared() > 0 {
		out.Remedy = a.New.Remedy
	}
	return out
}

func newInspection(l *result.Inspection) inspection {
	return inspection{l.Address.String(), l.Label, l.How, l.Value, l.Basis.String(), l.Missing, l.Firm()}
}

func answerValue(s *result.AnswerRow) string {
	if s == nil {
		return ""
	}
	return s.Value
}
