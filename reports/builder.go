package reports

import (
	"cmp"
	"path"
	"strings"

	"underfoot/assess"
	"underfoot/assess/message"
	"underfoot/assess/quantity"
	"underfoot/assess/result"
	"underfoot/assess/schema"
)

// A builder makes one view. The sections are made in printing order, since the
// numbers of sources and cautions follow it.
type builder struct {
	words
	citations
	r        *result.Result
	o        Options
	labels   map[schema.Address]string
	warnings *warnings
}

// Options say for whom a view is made.
type Options struct {
	Units quantity.System
	Note  string // printed before everything else, such as that the data is invented
}

// NewView makes the view of a result, in the result's language.
func NewView(r *result.Result, o Options) *View { return newBuilder(r, o).view() }

func newBuilder(r *result.Result, o Options) *builder {
	w := words{cmp.Or(r.Language, message.English())}
	b := &builder{words: w, r: r, o: o}
	b.citations = citations{words: w, index: map[result.Source]int{}}
	b.labels = labels(r)
	b.warnings = collect(r)
	return b
}

func (b *builder) view() *View {
	v := &View{
		Title:    b.say("report/view.title"),
		Subtitle: b.subtitle(),
		Day:      b.day(),
		Banners:  b.banners(),
		Language: b.language,
	}
	for _, make := range []func() Section{
		b.summary, b.rooms, b.findings, b.questions, b.plan, b.quantities, b.options,
		b.heights, b.calculations, b.cautions, b.answers, b.unchecked, b.sources, b.signOff,
	} {
		if s := make(); len(s.Parts) > 0 || len(s.Lead) > 0 {
			v.Sections = append(v.Sections, s)
		}
	}
	v.Clean()
	return v
}

// day is the day of the visit; where the record has none, that of the assessment.
func (b *builder) day() assess.Day {
	if b.r.Job != nil && b.r.Job.Visited != "" {
		return b.r.Job.Visited
	}
	return b.r.Today
}

// subtitle names the record's file without the folders that it lies in.
func (b *builder) subtitle() string {
	if file := path.Base(strings.ReplaceAll(b.r.File, `\`, "/")); b.r.File != "" && file != "-" {
		return b.say("report/view.subtitle_file", "file", file, "day", string(b.day()))
	}
	return b.say("report/view.subtitle_day", "day", string(b.day()))
}

func (b *builder) banners() []string {
	var out []string
	switch {
	case b.o.Note != "":
		out = append(out, b.o.Note)
	case b.invented():
		out = append(out, b.say("report/view.invented"))
	}
	return append(append(out, b.say("report/view.screening"), b.say("report/view.local")), b.localPacks()...)
}

// localPacks name the packs that the program does not ship, with all that they
// relax: nobody should have to look for that.
func (b *builder) localPacks() []string {
	var out []string
	for _, p := range b.r.Packs {
		if !p.Local {
			continue
		}
		text := b.say("report/view.local_pack", "pack", p.ID, "edition", p.Edition)
		if len(p.Relaxes) > 0 {
			text += " " + b.say("report/view.local_relaxes", "relaxes", strings.Join(p.Relaxed(b.r.Language), " | "))
		}
		out = append(out, text)
	}
	return out
}

// invented reports whether the record itself says that it is made up: in the
// name of a room or the note of an answer about the house.
func (b *builder) invented() bool {
	for _, a := range b.r.Areas {
		if strings.Contains(strings.ToLower(a.Name), "invented") {
			return true
		}
	}
	for _, s := range b.r.Answers {
		if strings.Contains(strings.ToLower(s.Answer.Note), "invented") {
			return true
		}
	}
	return false
}

// section is an empty section with its heading.
func (b *builder) section(id string) Section {
	return Section{ID: id, Heading: b.say("report/heading." + id), Sheet: b.say("report/sheet." + id)}
}

// amount prints a quantity in the reader's units.
func (b *builder) amount(d quantity.Dimension, r quantity.Range) string {
	return quantity.Write(d, r, b.o.Units)
}

// addTable appends a part with the table, unless the table has no rows.
func (s *Section) addTable(heading string, t *Table, lead ...Para) {
	if len(t.Rows) > 0 {
		s.Parts = append(s.Parts, Part{Heading: heading, Lead: lead, Table: t})
	}
}

// pointers are those of a list's elements.
func pointers[T any](list []T) []*T {
	out := make([]*T, len(list))
	for i := range list {
		out[i] = &list[i]
	}
	return out
}
