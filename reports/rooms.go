package reports

import (
	"slices"
	"strings"

	"underfoot/assess"
)

// rooms says for each zone what leads, what is settled and what must be known.
func (b *builder) rooms() Section {
	s := b.section(RoomsSection)
	t := &Table{ID: "rooms", Columns: []Column{
		b.column("place", Group, 16), b.column("outcome", Mark, 11), b.column("zone", Title, 14),
		b.column("leads", Detail, 22), b.column("reason", Detail, 28), b.column("settled", Detail, 18), b.column("later", Detail, 18),
		b.column("mustknow", Detail, 26), b.column("possible", Detail, 22), b.column("ruledout", Aside, 44),
	}}
	for i := range b.r.Areas {
		a := &b.r.Areas[i]
		for j := range a.Zones {
			z := &a.Zones[j]
			settled, later := b.lines(b.settled(z)), ""
			if z.Path.Asks() == assess.Stop {
				settled, later = later, settled
			}
			t.add(verdictTone(z.Verdict), areaName(a), b.verdict(z.Verdict), b.zoneName(a, z),
				b.path(z.Path), z.Because, settled, later, b.mustKnow(z), b.possible(z), b.ruledOut(a, z))
		}
	}
	s.addTable("", t)
	return s
}

func (b *builder) zoneName(a *assess.AreaResult, z *assess.ZoneResult) string {
	if len(a.Zones) == 1 {
		return b.say("report/rooms.whole")
	}
	return strings.ReplaceAll(z.ID, "-", " ")
}

// settled are the steps that are called for whatever else comes out. To find
// something out settles nothing.
func (b *builder) settled(z *assess.ZoneResult) []string {
	var out []string
	if z.Behind != assess.NoPath {
		out = append(out, b.path(z.Behind))
	}
	for _, p := range z.Paths {
		if !p.Path.IsBase() && p.State == assess.PathOpen && p.Path != z.Path && p.Path != assess.FindOut {
			out = append(out, b.path(p.Path))
		}
	}
	return out
}

// mustKnow are the questions that waiting paths hang on.
func (b *builder) mustKnow(z *assess.ZoneResult) string {
	var out []assess.Address
	for _, p := range z.Paths {
		if p.State == assess.PathWaiting {
			out = append(out, p.Questions...)
		}
	}
	return b.names(out)
}

// possible are the bases that nothing rules out, other than the leading one;
// none is worth naming while the floor is left alone.
func (b *builder) possible(z *assess.ZoneResult) string {
	if z.Path.Asks() == assess.Stop {
		return ""
	}
	var out []string
	for _, p := range z.Paths {
		if p.Path.IsBase() && p.State != assess.PathRuledOut && p.Path != z.Path {
			out = append(out, b.path(p.Path))
		}
	}
	return b.lines(out)
}

// ruledOut are the bases that are ruled out by a finding, with its sentence.
// A base that no rule spoke of is not worth a line.
func (b *builder) ruledOut(a *assess.AreaResult, z *assess.ZoneResult) string {
	var out []string
	for _, p := range z.Paths {
		if !p.Path.IsBase() || p.State != assess.PathRuledOut || len(p.Because) == 0 {
			continue
		}
		if f := findingByID(a, p.Because[0]); f != nil {
			out = append(out, b.path(p.Path)+": "+f.Text)
		}
	}
	return b.lines(out)
}

func findingByID(a *assess.AreaResult, id string) *assess.Finding {
	i := slices.IndexFunc(a.Findings, func(f assess.Finding) bool { return f.ID == id })
	if i < 0 {
		return nil
	}
	return &a.Findings[i]
}
