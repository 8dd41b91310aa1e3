package pack

import (
	"slices"
	"strings"

	"underfoot/assess/figure"
	"underfoot/assess/message"
	"underfoot/assess/result"
)

// rules compiles the pack's own rules.
func (p *part) rules() {
	for i := range p.records.Rules {
		r := &p.records.Rules[i]
		at := p.place().key("rule").item(i)
		p.id(r.ID, "rule", at)
		p.limits(r, at)
		p.wherever(&r.ruleRecord, at)
		out := p.rule(&r.ruleRecord, r.Text, at)
		if out == nil {
			continue
		}
		out.Local = true
		p.complete(out, at)
		if out.IsPermit() || out.Calls != result.NoPath {
			p.placed = append(p.placed, newcomer{out, r.After, at})
		}
		if out.IsPermit() {
			p.relax(message.New("pack/relaxes.permit", "rule", out.ID, "paths", pathList(out.Permits)), plain(out.Cited)...)
		}
	}
}

// limits refuses what only the program's own rules may say.
func (p *part) limits(r *localRule, at place) {
	if r.Rank != 0 {
		p.problem(at.key("rank"), message.New("pack/own.rank"))
	}
	if len(r.Makes) > 0 {
		p.problem(at.key("makes"), message.New("pack/own.makes"))
	}
	if len(r.Reveals) > 0 {
		p.problem(at.key("reveals"), message.New("pack/own.reveals"))
	}
	if r.TakesUp != "" {
		p.problem(at.key("takes_up"), message.New("pack/own.takes_up"))
	}
}

// wherever holds the regions of a rule and of its cases against those of the pack.
func (p *part) wherever(r *ruleRecord, at place) {
	holds := p.Regions()
	for i, region := range r.Regions {
		if !slices.Contains(holds, region) {
			p.misspelt(at.key("regions").item(i), region, holds, message.New("pack/own.region", "word", quoted(region)))
		}
	}
	if len(r.Regions) > 0 {
		holds = r.Regions
	}
	for i := range r.Cases {
		if region := r.Cases[i].region(); !slices.Contains(holds, region) {
			p.misspelt(at.key("case").item(i).key("region"), region, holds, message.New("pack/own.case", "region", region))
		}
	}
}

// The words for the risk before and after the remedy: three of each.
var (
	likelihoods  = []string{"unlikely", "possible", "likely"}
	consequences = []string{"slight", "serious", "severe"}
)

// complete finds what a rule of the program has too, but a test watches over.
func (p *part) complete(r *Rule, at place) {
	if r.IsPermit() && r.IsTrouble() {
		p.problem(at, message.New("pack/own.permits_and_bars"))
	}
	if !r.IsTrouble() {
		return
	}
	for key, sentence := range r.Text.all() {
		if sentence == "" && key != "presumed" {
			p.problem(at, message.New("pack/own.no_text", "key", key))
		}
	}
	risk := at.key("risk")
	for _, w := range []struct {
		key, word string
		among     []string
	}{{"likelihood", r.Risk.Likelihood, likelihoods}, {"consequence", r.Risk.Consequence, consequences},
		{"likelihood_after", r.Risk.LikelihoodAfter, likelihoods}, {"consequence_after", r.Risk.ConsequenceAfter, consequences}} {
		if !slices.Contains(w.among, w.word) {
			p.misspelt(risk.key(w.key), w.word, w.among, message.New("pack/own.risk", "key", w.key, "words", strings.Join(w.among, ", ")))
		}
	}
}

func pathList(paths []result.PathID) string {
	var list []string
	for _, path := range paths {
		list = append(list, path.String())
	}
	return strings.Join(list, ", ")
}

// plain are citations as sources.
func plain(cited []figure.Citation) []result.Source {
	var out []result.Source
	for _, c := range cited {
		out = append(out, c.Source)
	}
	return out
}

// rank puts the newcomers behind the rules that they name: those behind one
// rule by their ids, all before the next rule of ours.
func (a *Addition) rank(ours *Pack) {
	byRule := map[string][]*newcomer{}
	for _, p := range a.parts {
		for i := range p.placed {
			n := &p.placed[i]
			if n.after == "" {
				p.problem(n.at, message.New("pack/own.no_place"))
				continue
			}
			if r := ours.Rule(n.after); r == nil || r.Rank == 0 {
				p.misspelt(n.at.key("after"), n.after, ranked(ours), message.New("pack/own.after", "id", quoted(n.after)))
				continue
			}
			byRule[n.after] = append(byRule[n.after], n)
		}
	}
	for after, list := range byRule {
		slices.SortFunc(list, func(x, y *newcomer) int { return strings.Compare(x.rule.ID, y.rule.ID) })
		from, to := ours.between(after)
		for i, n := range list {
			n.rule.Rank = from + (to-from)*float64(i+1)/float64(len(list)+1)
		}
	}
	for _, p := range a.parts {
		for _, n := range p.placed {
			p.behindPeople(n, ours)
		}
	}
}

// ranked are the rules of ours that call or permit.
func ranked(ours *Pack) []string {
	var ids []string
	for _, r := range ours.Rules {
		if r.Rank != 0 {
			ids = append(ids, r.ID)
		}
	}
	return ids
}

// between is the rank of a rule and that of the next one.
func (p *Pack) between(id string) (from, to float64) {
	from = p.Rule(id).Rank
	to = from + 1
	for _, r := range p.Rules {
		if r.Rank > from && r.Rank < to {
			to = r.Rank
		}
	}
	return from, to
}

// behindPeople refuses a step that would lead where one that protects people,
// and asks for more, should.
func (p *part) behindPeople(n newcomer, ours *Pack) {
	if n.rule.Calls == result.NoPath || n.rule.Rank == 0 {
		return
	}
	var last *Rule
	for _, r := range ours.Rules {
		if r.Protects == result.ProtectsPeople && r.Rank > n.rule.Rank && r.Calls.MinVerdict() > n.rule.Calls.MinVerdict() && (last == nil || r.Rank > last.Rank) {
			last = r
		}
	}
	if last != nil {
		p.problem(n.at.key("after"), message.New("pack/own.before_people", "path", n.rule.Calls, "rule", last.ID))
	}
}
