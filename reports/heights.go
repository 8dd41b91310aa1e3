package reports

import (
	"strconv"

	"underfoot/assess/quantity"
	"underfoot/assess/result"
)

// heights are what each build adds, layer by layer.
func (b *builder) heights() Section {
	s := b.section(HeightsSection)
	b.eachZone(func(a *result.AreaResult, z *result.ZoneResult) {
		for i := range z.BuildUps {
			s.Parts = append(s.Parts, b.build(place(a, z.ID), len(s.Parts)+1, &z.BuildUps[i]))
		}
	})
	s.Detail = true
	if len(s.Parts) > 0 {
		s.Lead = []Para{{Text: b.say("report/heights.lead")}}
	}
	return s
}

func (b *builder) build(place string, n int, u *result.BuildUp) Part {
	id := "build_" + strconv.Itoa(n)
	build := &Build{ID: id, Height: u.Height, Weight: u.Weight}
	for _, l := range u.Layers {
		build.Layers = append(build.Layers, BuildLayer{Name: b.text(l.Name), Source: b.cite(l.Source), Thickness: l.Thickness, Weight: l.Weight,
			Read: b.amount(quantity.Length, l.Thickness) + ", " + b.amount(quantity.Load, l.Weight)})
	}
	return Part{
		Heading: b.say("report/heights.part", "place", place, "path", b.path(u.Path)),
		Table:   b.buildTable(id).Of(b.language, b.buildRows(build)),
		Build:   build,
	}
}

// A buildRow is a layer of a build, or the sum of its layers.
type buildRow struct {
	BuildLayer
	tone Tone
}

func (b *builder) buildRows(build *Build) []buildRow {
	var rows []buildRow
	for _, l := range build.Layers {
		rows = append(rows, buildRow{BuildLayer: l})
	}
	return append(rows, buildRow{BuildLayer{Name: b.say("report/heights.sum"), Thickness: build.Height, Weight: build.Weight}, Settled})
}

func (b *builder) buildTable(id string) TableOf[buildRow] {
	return TableOf[buildRow]{
		ID: id, Shape: Grid, Tone: func(r buildRow) Tone { return r.tone },
		Columns: []ColumnOf[buildRow]{
			TextColumn("report/column.layer", Title, 36, func(l buildRow) string { return l.Name }),
			amountColumn("report/column.thickness", 20, func(l buildRow) string { return b.amount(quantity.Length, l.Thickness) }),
			amountColumn("report/column.weight", 20, func(l buildRow) string { return b.amount(quantity.Load, l.Weight) }),
			TextColumn("report/column.source", Detail, 24, func(l buildRow) string { return l.Source }),
		},
	}
}
