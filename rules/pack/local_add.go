package pack

import (
	"cmp"
	"maps"
	"slices"
	"strings"

	"underfoot/assess"
	"underfoot/assess/condition"
	"underfoot/assess/figure"
	"underfoot/assess/message"
	"underfoot/assess/result"
)

// An Addition is local packs on their way into the rules of a region. The
// order in which the packs are named never matters.
type Addition struct {
	Figures *figure.Table // the region's figures as the packs leave them
	parts   []*part       // by pack id
}

// A part is one pack with what has been found in it.
type part struct {
	*Local
	*loader
	relaxes []message.Message
	ours    *Pack           // the rules of the program
	seen    map[string]bool // ids of all packs, with what they are ids of
	placed  []newcomer
}

// A newcomer is a rule of a pack that takes a rank behind one of ours.
type newcomer struct {
	rule  *Rule
	after string
	at    place
}

// Add begins with what the packs say of figures, since facts and conditions
// are compiled with them. Problems are given by To, with the rest.
func Add(t *figure.Table, locals ...*Local) *Addition {
	a, seen := &Addition{}, map[string]bool{}
	for _, p := range locals {
		l := &loader{region: t.Region, problems: slices.Clone(p.unknown)}
		a.parts = append(a.parts, &part{Local: p.in(l), loader: l, seen: seen})
	}
	slices.SortStableFunc(a.parts, func(x, y *part) int { return cmp.Compare(x.ID, y.ID) })
	for _, p := range a.parts {
		p.sources()
	}
	a.Figures = a.figures(t)
	return a
}

// To is the program's rules with what the packs add and change. All problems of
// all packs come back at once as assess.Problems.
func (a *Addition) To(ours *Pack, names condition.Names) (*Pack, error) {
	if len(a.parts) == 0 {
		return ours, nil
	}
	names.Words = ours.Words
	out := *ours
	out.Rules, out.Cautions = slices.Clone(ours.Rules), maps.Clone(ours.Cautions)
	for i, p := range a.parts {
		p.ours, p.pack, p.names = ours, &out, names
		p.head(p.loader, ours)
		if i > 0 && a.parts[i-1].ID == p.ID {
			p.problem(p.place().key("pack").key("id"), message.New("pack/twice.pack", "id", p.ID))
		}
		p.cautions()
		p.rules()
		p.peopleFigures()
	}
	a.change(&out)
	a.rank(ours)
	var problems assess.Problems
	for _, p := range a.parts {
		slices.SortFunc(p.relaxes, func(x, y message.Message) int { return cmp.Compare(x.String(), y.String()) })
		out.Locals = append(out.Locals, result.PackRef{ID: p.ID, Edition: p.Edition, Local: true, Relaxes: p.relaxes})
		problems = append(problems, p.problems...)
	}
	return &out, problems.Err()
}

// id holds the id of a record, a rule, a caution or a source, against the pack's
// own and those before it.
func (p *part) id(id, what string, at place) {
	if !strings.HasPrefix(id, p.ID+"-") || !packID.MatchString(id) {
		p.problem(at.key("id"), message.New("pack/prefix."+what, "id", p.ID))
	}
	if p.seen[what+" "+id] {
		p.problem(at.key("id"), message.New("pack/twice."+what))
	}
	p.seen[what+" "+id] = true
}

// sources are the papers that the pack brings with it.
func (p *part) sources() {
	p.own = map[string]figure.Citation{}
	for i, s := range p.records.Sources {
		at := p.place().key("source").item(i)
		p.id(s.ID, "source", at)
		c := figure.Citation{Source: figure.Source{ID: s.ID, Title: s.Title, Edition: s.Edition, Known: s.Known}, States: message.Verbatim(s.States)}
		for _, fault := range c.Faults() {
			p.problem(at, message.New("pack/source.fault", "id", s.ID, "fault", fault))
		}
		if s.States == "" {
			p.problem(at, message.New("pack/source.no_statement", "id", s.ID))
		}
		p.own[s.ID] = c
	}
}

func (p *part) cautions() {
	for i, c := range p.records.Cautions {
		at := p.place().key("caution").item(i)
		p.id(c.ID, "caution", at)
		if c.Text == "" {
			p.problem(at, message.New("pack/caution.no_text"))
		}
		if len(c.Sources) == 0 {
			p.problem(at, message.New("pack/caution.no_source"))
		}
		p.caution(cautionRecord{c.ID, c.Sources}, c.Text, at)
	}
}
