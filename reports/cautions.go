package reports

import (
	"slices"
	"strconv"
	"strings"

	"underfoot/assess"
)

// warnings are the different cautions of a result, numbered from 1 in order of
// appearance, with the rooms that each was raised for.
type warnings struct {
	list  []assess.Caution
	where [][]string
}

func collect(r *assess.Result) *warnings {
	w := &warnings{}
	for i := range r.Areas {
		a := &r.Areas[i]
		for _, c := range a.Cautions {
			n := w.find(c.ID)
			if n < 0 {
				n = len(w.list)
				w.list, w.where = append(w.list, c), append(w.where, nil)
			}
			w.where[n] = append(w.where[n], areaName(a))
		}
	}
	return w
}

// find is the place of a caution in the list, or -1.
func (w *warnings) find(id string) int {
	return slices.IndexFunc(w.list, func(c assess.Caution) bool { return c.ID == id })
}

// cautions are the warnings that findings and plan attach, after those that
// every report carries.
func (b *builder) cautions() Section {
	s := b.section(CautionsSection)
	for _, key := range []string{"suspect", "licensed"} {
		s.Lead = append(s.Lead, Para{Label: b.say("report/cautions." + key), Text: b.say("report/cautions." + key + "_text")})
	}
	s.Lead = append(s.Lead, Para{Label: b.say("report/cautions.local"), Text: b.say("report/view.local")})
	t := &Table{ID: "cautions", Columns: []Column{
		b.column("number", Mark, 6), b.column("caution", Title, 80), b.column("where", Aside, 24), b.column("sources", Aside, 24),
	}}
	for i, c := range b.warnings.list {
		where := ""
		if len(b.r.Areas) > 1 {
			where = strings.Join(distinct(b.warnings.where[i]), ", ")
		}
		t.add(Plain, strconv.Itoa(i+1), c.Text, where, b.cite(c.Sources...))
	}
	s.addTable("", t)
	return s
}

// warned points from a plan step to its cautions by number.
func (b *builder) warned(ids []string) string {
	var out []string
	for _, id := range ids {
		if n := b.warnings.find(id); n >= 0 {
			out = append(out, strconv.Itoa(n+1))
		}
	}
	return strings.Join(out, ", ")
}
