package reports

import (
	"slices"
	"strconv"
	"strings"

	"underfoot/assess/result"
)

// warnings are the different cautions of a result in order of appearance.
type warnings struct{ list []warning }

// A warning is a caution, numbered from 1, with the rooms that it was raised for.
type warning struct {
	result.Caution
	n     int
	rooms []string
}

func collect(r *result.Result) *warnings {
	w := &warnings{}
	for i := range r.Areas {
		a := &r.Areas[i]
		for _, c := range a.Cautions {
			n := w.find(c.ID)
			if n < 0 {
				n = len(w.list)
				w.list = append(w.list, warning{Caution: c, n: n + 1})
			}
			w.list[n].rooms = append(w.list[n].rooms, areaName(a))
		}
	}
	return w
}

// find is the place of a caution in the list, or -1.
func (w *warnings) find(id string) int {
	return slices.IndexFunc(w.list, func(c warning) bool { return c.ID == id })
}

// cautions are the warnings that findings and plan attach, after those that
// every report carries.
func (b *builder) cautions() Section {
	s := b.section(CautionsSection)
	for _, key := range []string{"suspect", "licensed"} {
		s.Lead = append(s.Lead, Para{Label: b.say("report/cautions." + key), Text: b.say("report/cautions." + key + "_text")})
	}
	s.Lead = append(s.Lead, Para{Label: b.say("report/cautions.local"), Text: b.say("report/view.local")})
	s.addTable("", b.cautionTable().Of(b.language, b.warnings.list))
	return s
}

func (b *builder) cautionTable() TableOf[warning] {
	return TableOf[warning]{ID: "cautions", Columns: []ColumnOf[warning]{
		TextColumn("report/column.number", Mark, 6, func(w warning) string { return strconv.Itoa(w.n) }),
		TextColumn("report/column.caution", Title, 80, func(w warning) string { return w.Text }),
		TextColumn("report/column.where", Aside, 24, b.warnedRooms),
		TextColumn("report/column.sources", Aside, 24, func(w warning) string { return b.cite(w.Sources...) }),
	}}
}

// warnedRooms are the rooms of a warning, where there are several in the job.
func (b *builder) warnedRooms(w warning) string {
	if len(b.r.Areas) < 2 {
		return ""
	}
	return strings.Join(distinct(w.rooms), ", ")
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
