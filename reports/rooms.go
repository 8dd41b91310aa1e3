package reports

import (
	"slices"
	"strings"

	"underfoot/assess/result"
	"underfoot/assess/schema"
)

// rooms says for each zone what leads, what is settled and what must be known.
func (b *builder) rooms() Section {
	s := b.section(RoomsSection)
	var zones []zoneOf
	b.eachZone(func(a *result.AreaResult, z *result.ZoneResult) { zones = append(zones, zoneOf{z, a}) })
	s.addTable("", b.roomTable().Of(b.language, zones))
	return s
}

// A zoneOf is a zone with its room.
type zoneOf struct {
	*result.ZoneResult
	area *result.AreaResult
}

func (b *builder) roomTable() TableOf[zoneOf] {
	return TableOf[zoneOf]{ID: "rooms", Tone: func(z zoneOf) Tone { return verdictTone(z.Verdict) }, Columns: []ColumnOf[zoneOf]{
		TextColumn("report/column.place", Group, 16, func(z zoneOf) string { return areaName(z.area) }),
		TextColumn("report/column.outcome", Mark, 11, func(z zoneOf) string { return b.verdict(z.Verdict) }),
		TextColumn("report/column.zone", Title, 14, func(z zoneOf) string { return b.zoneName(z.area, z.ZoneResult) }),
		TextColumn("report/column.leads", Detail, 22, func(z zoneOf) string { return b.path(z.Path) }),
		TextColumn("report/column.reason", Detail, 28, func(z zoneOf) string { return z.Sentence }),
		TextColumn("report/column.settled", Detail, 18, func(z zoneOf) string { return b.called(z, false) }),
		TextColumn("report/column.later", Detail, 18, func(z zoneOf) string { return b.called(z, true) }),
		TextColumn("report/column.mustknow", Detail, 26, func(z zoneOf) string { return b.mustKnow(z.ZoneResult) }),
		TextColumn("report/column.possible", Detail, 22, func(z zoneOf) string { return b.possible(z.ZoneResult) }),
		TextColumn("report/column.ruledout", Aside, 44, func(z zoneOf) string { return b.ruledOut(z.area, z.ZoneResult) }),
	}}
}

// called are the steps that are settled, where they come at once or where they
// come later than a stop.
func (b *builder) called(z zoneOf, later bool) string {
	if later != (z.Path.MinVerdict() == result.Stop) {
		return ""
	}
	return b.lines(b.settled(z.ZoneResult))
}

func (b *builder) zoneName(a *result.AreaResult, z *result.ZoneResult) string {
	if len(a.Zones) == 1 {
		return b.say("report/rooms.whole")
	}
	return strings.ReplaceAll(z.ID, "-", " ")
}

// settled are the steps that are called for whatever else comes out. To find
// something out settles nothing.
func (b *builder) settled(z *result.ZoneResult) []string {
	var out []string
	if z.Blocked != result.NoPath {
		out = append(out, b.path(z.Blocked))
	}
	for _, p := range z.Paths {
		if !p.Path.IsAssembly() && p.State == result.PathOpen && p.Path != z.Path && p.Path != result.FindOut {
			out = append(out, b.path(p.Path))
		}
	}
	return out
}

// mustKnow are the questions that waiting paths hang on.
func (b *builder) mustKnow(z *result.ZoneResult) string {
	var out []schema.Address
	for _, p := range z.Paths {
		if p.State == result.PathWaiting {
			out = append(out, p.Questions...)
		}
	}
	return b.names(out)
}

// possible are the bases that nothing rules out, other than the leading one;
// none is worth naming while the floor is left alone.
func (b *builder) possible(z *result.ZoneResult) string {
	if z.Path.MinVerdict() == result.Stop {
		return ""
	}
	var out []string
	for _, p := range z.Paths {
		if p.Path.IsAssembly() && p.State != result.PathRuledOut && p.Path != z.Path {
			out = append(out, b.path(p.Path))
		}
	}
	return b.lines(out)
}

// ruledOut are the bases that are ruled out by a finding, with its sentence.
// A base that no rule spoke of is not worth a line.
func (b *builder) ruledOut(a *result.AreaResult, z *result.ZoneResult) string {
	var out []string
	for _, p := range z.Paths {
		if !p.Path.IsAssembly() || p.State != result.PathRuledOut || len(p.FindingIDs) == 0 {
			continue
		}
		if f := findingByID(a, p.FindingIDs[0]); f != nil {
			out = append(out, b.path(p.Path)+": "+f.Text)
		}
	}
	return b.lines(out)
}

func findingByID(a *result.AreaResult, id string) *result.Finding {
	i := slices.IndexFunc(a.Findings, func(f result.Finding) bool { return f.ID == id })
	if i < 0 {
		return nil
	}
	return &a.Findings[i]
}
