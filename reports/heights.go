package reports

import (
	"strconv"

	"underfoot/assess"
	"underfoot/assess/quantity"
)

// heights are what each build adds, layer by layer.
func (b *builder) heights() Section {
	s := b.section(HeightsSection)
	b.eachZone(func(a *assess.AreaResult, z *assess.ZoneResult) {
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

func (b *builder) build(place string, n int, u *assess.BuildUp) Part {
	id := "build_" + strconv.Itoa(n)
	build := &Build{ID: id, Height: u.Height, Weight: u.Weight}
	t := &Table{ID: id, Shape: Grid, Columns: []Column{
		b.column("layer", Title, 36), b.numbers("thickness", 20), b.numbers("weight", 20), b.column("source", Detail, 24),
	}}
	for _, l := range u.Layers {
		name, source := b.tell(l.Name), b.cite(l.Source)
		build.Layers = append(build.Layers, BuildLayer{Name: name, Source: source, Thickness: l.Thickness, Weight: l.Weight})
		t.add(Plain, name, b.amount(quantity.Length, l.Thickness), b.amount(quantity.Load, l.Weight), source)
	}
	t.add(Settled, b.say("report/heights.sum"), b.amount(quantity.Length, u.Height), b.amount(quantity.Load, u.Weight), "")
	return Part{
		Heading: b.say("report/heights.part", "place", place, "path", b.path(u.Path)),
		Table:   t, Build: build,
	}
}
