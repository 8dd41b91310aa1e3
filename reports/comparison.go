package reports

import (
	"path"
	"strings"

	"underfoot/assess"
)

// The sections of a comparison of two visits.
const (
	ChangesSection    = "changes"
	AcceptanceSection = "acceptance"
)

// NewComparison makes the view of two visits: what became of verdicts, ways to
// go on and findings, what the second record answers differently, and what must
// be seen or measured before each finding is taken as settled.
func NewComparison(c *assess.Comparison, o Options) *View {
	b := comparer{newBuilder(c.New, o), c}
	v := &View{
		Title:    b.say("report/comparison.title"),
		Subtitle: b.visits(),
		Day:      b.day(),
		Banners:  b.banners(),
		Language: b.language,
	}
	for _, s := range []Section{b.outcome(), b.changes(), b.changedAnswers(), b.acceptance()} {
		if len(s.Parts) > 0 || len(s.Lead) > 0 {
			v.Sections = append(v.Sections, s)
		}
	}
	v.clean()
	return v
}

// A comparer builds the view of a comparison with the words of the later visit.
type comparer struct {
	*builder
	c *assess.Comparison
}

// visits names the two records and their days.
func (b comparer) visits() string {
	return b.say("report/comparison.subtitle", "old", b.visit(b.c.Old), "new", b.visit(b.c.New))
}

func (b comparer) visit(r *assess.Result) string {
	name := path.Base(strings.ReplaceAll(r.File, `\`, "/"))
	day := r.Today
	if r.Job != nil && r.Job.Visited != "" {
		day = r.Job.Visited
	}
	if r.File == "" || name == "-" {
		return b.say("report/comparison.visit_day", "day", string(day))
	}
	return b.say("report/comparison.visit_file", "file", name, "day", string(day))
}

// outcome is what became of the verdict and the way that leads, zone by zone.
func (b comparer) outcome() Section {
	s := b.section(SummarySection)
	s.Lead = []Para{{Label: b.say("report/summary.outcome"), Tone: verdictTone(b.c.New.Verdict),
		Text: b.say("report/summary.sentence", "verdict", b.verdict(b.c.New.Verdict), "means", b.say("report/verdict."+b.c.New.Verdict.String()+"_means"))}}
	t := &Table{ID: "visits", Columns: []Column{
		b.column("place", Title, 20), b.column("first_visit", Detail, 34), b.column("second_visit", Detail, 34)}}
	for i := range b.c.Areas {
		a := &b.c.Areas[i]
		for _, z := range a.Zones {
			t.add(Plain, b.zone(a, z.ID), b.stood(z.Old), b.stood(z.New))
		}
	}
	for _, id := range b.c.Added {
		t.add(Plain, id, b.say("report/comparison.not_there"), b.say("report/comparison.only_new"))
	}
	for _, id := range b.c.Missing {
		t.add(Waiting, id, b.say("report/comparison.only_old"), b.say("report/comparison.not_there"))
	}
	s.addTable("", t)
	return s
}

func (b comparer) zone(a *assess.AreaComparison, zone string) string {
	if len(a.Zones) < 2 || zone == "" {
		return areaName(a.New)
	}
	return areaName(a.New) + ", " + strings.ReplaceAll(zone, "-", " ")
}

// stood is how a zone stood at one visit.
func (b comparer) stood(z *assess.ZoneResult) string {
	if z == nil {
		return b.say("report/comparison.not_there")
	}
	return b.say("report/comparison.stood", "verdict", b.verdict(z.Verdict), "path", b.path(z.Path))
}

// changes are the findings at both visits, those that ask most first.
func (b comparer) changes() Section {
	s := b.section(ChangesSection)
	t := &Table{ID: "changes", Columns: []Column{
		b.column("place", Group, 15), b.column("became", Mark, 12), b.column("finding", Title, 40), b.column("about", Detail, 12),
		b.column("first_visit", Detail, 24), b.column("second_visit", Detail, 24), b.column("rule", Aside, 24)}}
	for i := range b.c.Areas {
		a := &b.c.Areas[i]
		for n := range a.Findings {
			f := &a.Findings[n]
			told := raised(f)
			t.add(changeTone(f.Change), b.zone(a, f.Zone), b.say("report/change."+f.Change.String()), told.Text, b.about(told),
				b.at(f.Old), b.now(f), told.Rule)
			t.Rows[len(t.Rows)-1].Detail = small(f)
		}
	}
	s.addTable("", t)
	s.Lead = []Para{{Text: b.say("report/changes.lead")}}
	if len(t.Rows) == 0 {
		s.Lead = []Para{{Text: b.say("report/changes.nothing")}}
	}
	return s
}

// raised is the finding that states the trouble: of the second visit, or of the
// first where the second no longer has it.
func raised(f *assess.FindingChange) *assess.Finding {
	if f.New.Compared() > 0 {
		return f.New
	}
	return f.Old
}

// now is how a finding stands at the second visit; where it is cured, with what
// the rule says instead.
func (b comparer) now(f *assess.FindingChange) string {
	if f.Change == assess.Cured && f.New.Text != "" {
		return b.at(f.New) + "\n" + f.New.Text
	}
	return b.at(f.New)
}

// small reports a change that a short print leaves out: about what nobody has
// named, or as slight before as now.
func small(f *assess.FindingChange) bool {
	return unnamed(raised(f)) || f.Old.Compared() <= 2 && f.New.Compared() <= 2
}

// at is how a finding stood at one visit, with its value.
func (b comparer) at(f *assess.Finding) string {
	if f == nil {
		return b.say("report/comparison.no_finding")
	}
	if found := b.found(f); found != "" {
		return b.stands(f) + ": " + found
	}
	return b.stands(f)
}

func changeTone(c assess.Change) Tone {
	switch c {
	case assess.Worse, assess.New:
		return Urgent
	case assess.Unchanged, assess.Better:
		return Waiting
	}
	return Settled
}

// changedAnswers are the answers that the two records give differently.
func (b comparer) changedAnswers() Section {
	s := b.section(AnswersSection)
	t := &Table{ID: "changed_answers", Shape: Grid, Columns: []Column{
		b.column("question", Title, 30), b.column("address", Detail, 30), b.column("first_visit", Detail, 24), b.column("second_visit", Detail, 24)}}
	value := func(x *assess.Said) string {
		if x == nil {
			return b.say("report/comparison.not_answered")
		}
		return x.Value
	}
	for _, a := range b.c.Answers {
		t.add(Plain, a.Label, b.builder.address(a.Address), value(a.Old), value(a.New))
	}
	s.addTable("", t)
	s.Lead = []Para{{Text: b.say("report/comparison.answers")}}
	if len(t.Rows) == 0 {
		s.Lead = []Para{{Text: b.say("report/comparison.same_answers")}}
	}
	return s
}

// acceptance says for each finding what must be seen or measured.
func (b comparer) acceptance() Section {
	s := b.section(AcceptanceSection)
	t := &Table{ID: "acceptance", Columns: []Column{
		b.column("place", Group, 15), b.column("became", Mark, 12), b.column("finding", Title, 40), b.column("about", Detail, 12),
		b.column("look", Detail, 50), b.column("todo", Detail, 40), b.column("signed", Detail, 16)}}
	for i := range b.c.Areas {
		a := &b.c.Areas[i]
		for n := range a.Accept {
			if unnamed(raised(&a.Accept[n].FindingChange)) {
				continue
			}
			b.accept(t, b.zone(a, a.Accept[n].Zone), &a.Accept[n])
		}
	}
	s.addTable("", t)
	if len(t.Rows) > 0 {
		s.Lead = []Para{{Text: b.say("report/acceptance.lead")}}
	}
	return s
}

func (b comparer) accept(t *Table, place string, a *assess.Acceptance) {
	told := raised(&a.FindingChange)
	remedy := ""
	if a.New.Compared() > 0 {
		remedy = b.remedy(a.New)
	}
	t.add(changeTone(a.Change), place, b.say("report/change."+a.Change.String()), told.Text, b.about(told), b.lookLines(a), remedy, "")
	row := &t.Rows[len(t.Rows)-1]
	row.Detail = small(&a.FindingChange)
	row.Cells[len(row.Cells)-1].Blank = true
}

// lookLines are what is to be seen or measured, one a line.
func (b comparer) lookLines(a *assess.Acceptance) string {
	var out []string
	if a.Change == assess.Gone {
		out = append(out, b.say("report/acceptance.gone"))
		if a.Old.Protects == "people" {
			out = append(out, b.say("report/acceptance.gone_people"))
		}
	}
	for i := range a.Looks {
		out = append(out, b.look(&a.Looks[i]))
	}
	return strings.Join(distinct(out), "\n")
}

// item is the label of a look with the item that it is about.
func (b comparer) item(l *assess.Look) string {
	if l.Address.Item != "" {
		return l.Label + " (" + l.Address.Item + ")"
	}
	return l.Label
}

func (b comparer) look(l *assess.Look) string {
	switch {
	case l.Missing && l.How != "":
		return b.say("report/acceptance.missing", "label", b.item(l), "how", l.How)
	case l.Missing:
		return b.say("report/acceptance.missing_plain", "label", b.item(l))
	case l.Basis == assess.Document:
		return b.say("report/acceptance.paper", "label", b.item(l), "value", l.Value)
	case l.Firm():
		return b.say("report/acceptance.firm", "label", b.item(l), "value", l.Value, "basis", b.say("report/basis."+l.Basis.String()))
	}
	basis := b.say("report/basis.none")
	if l.Basis != assess.NoBasis {
		basis = b.say("report/basis." + l.Basis.String())
	}
	return b.say("report/acceptance.weak", "label", b.item(l), "value", l.Value, "basis", basis)
}
