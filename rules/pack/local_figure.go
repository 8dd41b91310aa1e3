package pack

import (
	"slices"

	"underfoot/assess/condition"
	"underfoot/assess/figure"
	"underfoot/assess/message"
	"underfoot/assess/result"
)

// A figureChange is another value that a pack gives a figure.
type figureChange struct {
	part    *part
	figure  figure.Figure // as shipped
	value   float64
	source  figure.Source
	relaxes bool
	written string
}

// figures is the table with every change of the packs. Where several packs name
// a figure the strictest value counts.
func (a *Addition) figures(t *figure.Table) *figure.Table {
	strictest := map[string]figureChange{}
	for _, p := range a.parts {
		for _, c := range p.figureChanges(t) {
			now, taken := strictest[c.figure.ID]
			if kept := now.figure; taken {
				kept.Value = now.value
				if kept.Looser(c.value) || c.value == now.value {
					continue
				}
			}
			strictest[c.figure.ID] = c
		}
	}
	out := t
	for _, c := range strictest {
		change := out.Tighten
		if c.relaxes {
			change = out.Relax
			c.part.relax(message.New("pack/relaxes.figure", "figure", c.figure.ID, "value", c.written), c.source)
		}
		if changed, err := change(c.figure.ID, c.value, c.source); err == nil {
			out = changed
		}
	}
	return out
}

// figureChanges are those that the pack asks for and may have.
func (p *part) figureChanges(t *figure.Table) []figureChange {
	var out []figureChange
	for i, r := range p.records.Tighten {
		out = p.figureChange(out, t, figureChange{written: r.Value}, r.Figure, r.Source, p.place().key("tighten").item(i))
	}
	for i, r := range p.records.Relax {
		at := p.place().key("relax").item(i)
		switch {
		case (r.Figure == "") == (r.Rule == ""):
			p.problem(at, message.New("pack/change.figure_or_rule"))
		case r.Figure != "":
			out = p.figureChange(out, t, figureChange{written: r.Value, relaxes: true}, r.Figure, r.Source, at)
		}
	}
	return out
}

func (p *part) figureChange(list []figureChange, t *figure.Table, c figureChange, id, source string, at place) []figureChange {
	f, ok := t.Figure(id)
	if !ok {
		p.misspelt(at.key("figure"), id, t.IDs(), message.New("pack/no_such.figure", "id", quoted(id)))
		return list
	}
	cited := p.source(source, at)
	value, err := f.Read(c.written)
	if err != nil {
		p.problem(at.key("value"), message.Of(err))
		return list
	}
	change := t.Tighten
	if c.relaxes {
		change = t.Relax
	}
	if cited == nil {
		return list
	}
	if _, err := change(id, value, cited.Source); err != nil {
		p.problem(at.key("value"), message.New("pack/change.refused", "why", message.Of(err), "region", t.Region))
		return list
	}
	c.part, c.figure, c.value, c.source = p, f, value, cited.Source
	return append(list, c)
}

// peopleFigures refuses to relax a figure that a rule which protects people
// compares with.
func (p *part) peopleFigures() {
	for i, r := range p.records.Relax {
		if r.Figure == "" {
			continue
		}
		for _, rule := range p.ours.Rules {
			if rule.Protects == result.ProtectsPeople && rule.compares(r.Figure) {
				p.problem(p.place().key("relax").item(i), message.New("pack/change.people_figure", "figure", r.Figure, "rule", rule.ID))
				break
			}
		}
	}
}

// compares reports whether a condition of the rule names the figure.
func (r *Rule) compares(id string) bool {
	return slices.ContainsFunc(r.Conditions(), func(c *condition.Condition) bool { return slices.Contains(c.Figures(), id) })
}
