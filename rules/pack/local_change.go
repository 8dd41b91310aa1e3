package pack

import (
	"slices"

	"underfoot/assess/figure"
	"underfoot/assess/message"
	"underfoot/assess/result"
)

// source is the one source of a change; nil where it is missing.
func (p *part) source(id string, at place) *figure.Citation {
	if id == "" {
		p.problem(at, message.New("pack/change.no_source"))
		return nil
	}
	if cited := p.cite(at.key("source"), []string{id}); len(cited) == 1 {
		return &cited[0]
	}
	return nil
}

// change applies what the packs say of the program's rules: first what they
// relax, then what they raise, so that the stricter word counts.
func (a *Addition) change(out *Pack) {
	ceilings := map[string]result.Policy{}
	for _, p := range a.parts {
		for id, ceiling := range p.ceilings() {
			if now, taken := ceilings[id]; !taken || stricter(ceiling, now) {
				ceilings[id] = ceiling
			}
		}
	}
	for i, r := range out.Rules {
		if ceiling, ok := ceilings[r.ID]; ok {
			out.Rules[i] = r.bounded(func(p result.Policy) result.Policy { return lower(p, ceiling) })
		}
	}
	for _, p := range a.parts {
		for i, r := range p.records.Raise {
			p.raise(r, out, p.place().key("raise").item(i))
		}
	}
}

// ceilings are the assess.Policies() to which the pack lowers rules.
func (p *part) ceilings() map[string]result.Policy {
	out := map[string]result.Policy{}
	for i, r := range p.records.Relax {
		if r.Rule == "" {
			continue
		}
		at := p.place().key("relax").item(i)
		rule, cited := p.theirs(r.Rule, at), p.source(r.Source, at)
		if rule == nil || cited == nil || !p.word(r.Unknown, at) {
			continue
		}
		if rule.Protects == result.ProtectsPeople {
			p.problem(at.key("rule"), message.New("pack/change.people_rule", "rule", rule.ID))
			continue
		}
		out[rule.ID] = result.Policy(r.Unknown)
		p.relax(message.New("pack/relaxes.rule", "rule", rule.ID, "policy", r.Unknown), cited.Source)
	}
	return out
}

// raise makes one of the program's rules ask for more.
func (p *part) raise(r raiseRecord, out *Pack, at place) {
	if p.theirs(r.Rule, at) == nil {
		return
	}
	i := slices.IndexFunc(out.Rules, func(o *Rule) bool { return o.ID == r.Rule })
	rule := *out.Rules[i]
	if r.Unknown != "" && p.word(r.Unknown, at) {
		rule = *rule.bounded(func(now result.Policy) result.Policy { return higher(now, result.Policy(r.Unknown)) })
	}
	if rule.IsPermit() && len(r.Bars) > 0 {
		p.problem(at.key("bars"), message.New("pack/change.permit_bars", "rule", rule.ID))
	}
	for k, word := range r.Bars {
		if base := p.path(word, at.key("bars").item(k), true); !slices.Contains(rule.Bars, base) {
			rule.Bars = append(slices.Clip(rule.Bars), base)
		}
	}
	p.warnings(r.Cautions, at.key("cautions"))
	rule.Cautions = append(slices.Clip(rule.Cautions), r.Cautions...)
	if cited := p.source(r.Source, at); cited != nil {
		rule.Cited = append(slices.Clip(rule.Cited), *cited)
	}
	out.Rules[i] = &rule
}

// theirs is a rule of the program; nil where there is none of that id.
func (p *part) theirs(id string, at place) *Rule {
	r := p.ours.Rule(id)
	if r == nil {
		var ids []string
		for _, o := range p.ours.Rules {
			ids = append(ids, o.ID)
		}
		p.misspelt(at.key("rule"), id, ids, message.New("pack/no_such.rule", "id", quoted(id), "region", p.region))
	}
	return r
}

func (p *part) word(policy string, at place) bool {
	ok := slices.Contains(result.Policies(), result.Policy(policy))
	if !ok {
		p.misspelt(at.key("unknown"), policy, words(result.Policies()), message.New("pack/no_such.policy", "word", quoted(policy)))
	}
	return ok
}

// bounded is the rule with each of its assess.Policies() changed.
func (r *Rule) bounded(change func(result.Policy) result.Policy) *Rule {
	out := *r
	out.Unknown = change(r.Unknown)
	out.UnknownWhen = slices.Clone(r.UnknownWhen)
	for i := range out.UnknownWhen {
		out.UnknownWhen[i].Then = change(out.UnknownWhen[i].Then)
	}
	return &out
}

// stricter reports whether one policy asks for more than another.
func stricter(a, b result.Policy) bool {
	return slices.Index(result.Policies(), a) > slices.Index(result.Policies(), b)
}

func higher(a, b result.Policy) result.Policy {
	if stricter(a, b) {
		return a
	}
	return b
}

func lower(a, b result.Policy) result.Policy {
	if stricter(a, b) {
		return b
	}
	return a
}

// relax notes what the pack relaxes and by which sources, for every report.
func (p *part) relax(what message.Message, by ...result.Source) {
	for _, s := range by {
		what = message.New("pack/relaxes.by", "what", what, "title", s.Title, "edition", s.Edition)
	}
	p.relaxes = append(p.relaxes, what)
}
