package reports

import (
	"path"
	"strings"

	"underfoot/assess"
	"underfoot/assess/result"
)

// The sections of a comparison of two visits.
const (
	ChangesSection    = "changes"
	AcceptanceSection = "acceptance"
)

// NewComparison makes the view of two visits: what became of verdicts, ways to
// go on and findings, what the second record answers differently, and what must
// be seen or measured before each finding is taken as settled.
func NewComparison(c *result.Comparison, o Options) *View {
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
	v.Clean()
	return v
}

// A comparer builds the view of a comparison with the words of the later visit.
type comparer struct {
	*builder
	c *result.Comparison
}

// visits names the two records and their days.
func (b comparer) visits() string {
	return b.say("report/comparison.subtitle", "old", b.visit(b.c.Old), "new", b.visit(b.c.New))
}

func (b comparer) visit(r *result.Result) string {
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
	s.addTable("", visitTable().Of(b.language, b.zoneVisits()))
	return s
}

// A visited place is how it stood at two visits.
type visited struct {
	place, first, second string
	tone                 Tone
}

func visitTable() TableOf[visited] {
	return TableOf[visited]{ID: "visits", Tone: func(v visited) Tone { return v.tone }, Columns: []ColumnOf[visited]{
		TextColumn("report/column.place", Title, 20, func(v visited) string { return v.place }),
		TextColumn("report/column.first_visit", Detail, 34, func(v visited) string { return v.first }),
		TextColumn("report/column.second_visit", Detail, 34, func(v visited) string { return v.second }),
	}}
}

// zoneVisits are the zones of both records, and the rooms that only one has.
func (b comparer) zoneVisits() []visited {
	var list []visited
	for i := range b.c.Areas {
		a := &b.c.Areas[i]
		for _, z := range a.Zones {
			list = append(list, visited{place: b.zone(a, z.ID), first: b.stood(z.Old), second: b.stood(z.New)})
		}
	}
	for _, id := range b.c.Added {
		list = append(list, visited{place: id, first: b.say("report/comparison.not_there"), second: b.say("report/comparison.only_new")})
	}
	for _, id := range b.c.Missing {
		list = append(list, visited{place: id, first: b.say("report/comparison.only_old"), second: b.say("report/comparison.not_there"), tone: Waiting})
	}
	return list
}

func (b comparer) zone(a *result.AreaComparison, zone string) string {
	if len(a.Zones) < 2 || zone == "" {
		return areaName(a.New)
	}
	return areaName(a.New) + ", " + strings.ReplaceAll(zone, "-", " ")
}

// stood is how a zone stood at one visit.
func (b comparer) stood(z *result.ZoneResult) string {
	if z == nil {
		return b.say("report/comparison.not_there")
	}
	return b.say("report/comparison.stood", "verdict", b.verdict(z.Verdict), "path", b.path(z.Path))
}

// changes are the findings at both visits, those that ask most first.
func (b comparer) changes() Section {
	s := b.section(ChangesSection)
	var list []changed
	for i := range b.c.Areas {
		a := &b.c.Areas[i]
		for n := range a.Findings {
			list = append(list, changed{&a.Findings[n], a})
		}
	}
	s.addTable("", b.changeTable().Of(b.language, list))
	s.Lead = []Para{{Text: b.say("report/changes.lead")}}
	if len(list) == 0 {
		s.Lead = []Para{{Text: b.say("report/changes.nothing")}}
	}
	return s
}

// A changed finding stands in a room of both visits.
type changed struct {
	*result.FindingChange
	area *result.AreaComparison
}

func (b comparer) changeTable() TableOf[changed] {
	return TableOf[changed]{
		ID:     "changes",
		Tone:   func(c changed) Tone { return changeTone(c.Change) },
		Detail: func(c changed) bool { return small(c.FindingChange) },
		Columns: []ColumnOf[changed]{
			TextColumn("report/column.place", Group, 15, func(c changed) string { return b.zone(c.area, c.Zone) }),
			TextColumn("report/column.became", Mark, 12, func(c changed) string { return b.say("report/change." + c.Change.String()) }),
			TextColumn("report/column.finding", Title, 40, func(c changed) string { return raised(c.FindingChange).Text }),
			TextColumn("report/column.about", Detail, 12, func(c changed) string { return b.about(raised(c.FindingChange)) }),
			TextColumn("report/column.first_visit", Detail, 24, func(c changed) string { return b.at(c.Old) }),
			TextColumn("report/column.second_visit", Detail, 24, func(c changed) string { return b.now(c.FindingChange) }),
			TextColumn("report/column.rule", Aside, 24, func(c changed) string { return raised(c.FindingChange).Rule }),
		},
	}
}

// raised is the finding that states the trouble: of the second visit, or of the
// first where the second no longer has it.
func raised(f *result.FindingChange) *result.Finding {
	if f.New.Compared() > 0 {
		return f.New
	}
	return f.Old
}

// now is how a finding stands at the second visit; where it is cured, with what
// the rule says instead.
func (b comparer) now(f *result.FindingChange) string {
	if f.Change == result.Cured && f.New.Text != "" {
		return b.at(f.New) + "\n" + f.New.Text
	}
	return b.at(f.New)
}

// small reports a change that a short print leaves out: about what nobody has
// named, or as slight before as now.
func small(f *result.FindingChange) bool {
	return isUnnamed(raised(f)) || f.Old.Compared() <= 2 && f.New.Compared() <= 2
}

// at is how a finding stood at one visit, with its value.
func (b comparer) at(f *result.Finding) string {
	if f == nil {
		return b.say("report/comparison.no_finding")
	}
	if found := b.found(f); found != "" {
		return b.stands(f) + ": " + found
	}
	return b.stands(f)
}

func changeTone(c result.Change) Tone {
	switch c {
	case result.Worse, result.New:
		return Urgent
	case result.Unchanged, result.Better:
		return Waiting
	}
	return Settled
}

// changedAnswers are the answers that the two records give differently.
func (b comparer) changedAnswers() Section {
	s := b.section(AnswersSection)
	value := func(x *result.AnswerRow) string {
		if x == nil {
			return b.say("report/comparison.not_answered")
		}
		return x.Value
	}
	s.addTable("", TableOf[result.AnswerChange]{ID: "changed_answers", Shape: Grid, Columns: []ColumnOf[result.AnswerChange]{
		TextColumn("report/column.question", Title, 30, func(a result.AnswerChange) string { return a.Label }),
		TextColumn("report/column.address", Detail, 30, func(a result.AnswerChange) string { return b.address(a.Address) }),
		TextColumn("report/column.first_visit", Detail, 24, func(a result.AnswerChange) string { return value(a.Old) }),
		TextColumn("report/column.second_visit", Detail, 24, func(a result.AnswerChange) string { return value(a.New) }),
	}}.Of(b.language, b.c.Answers))
	s.Lead = []Para{{Text: b.say("report/comparison.answers")}}
	if len(b.c.Answers) == 0 {
		s.Lead = []Para{{Text: b.say("report/comparison.same_answers")}}
	}
	return s
}

// acceptance says for each finding what must be seen or measured.
func (b comparer) acceptance() Section {
	s := b.section(AcceptanceSection)
	var list []accepted
	for i := range b.c.Areas {
		a := &b.c.Areas[i]
		for n := range a.Accept {
			if !isUnnamed(raised(&a.Accept[n].FindingChange)) {
				list = append(list, accepted{&a.Accept[n], a})
			}
		}
	}
	s.addTable("", b.acceptanceTable().Of(b.language, list))
	if len(list) > 0 {
		s.Lead = []Para{{Text: b.say("report/acceptance.lead")}}
	}
	return s
}

// An accepted finding is one to be signed for, in a room of both visits.
type accepted struct {
	*result.Acceptance
	area *result.AreaComparison
}

func (b comparer) acceptanceTable() TableOf[accepted] {
	return TableOf[accepted]{
		ID:     "acceptance",
		Tone:   func(a accepted) Tone { return changeTone(a.Change) },
		Detail: func(a accepted) bool { return small(&a.FindingChange) },
		Columns: []ColumnOf[accepted]{
			TextColumn("report/column.place", Group, 15, func(a accepted) string { return b.zone(a.area, a.Zone) }),
			TextColumn("report/column.became", Mark, 12, func(a accepted) string { return b.say("report/change." + a.Change.String()) }),
			TextColumn("report/column.finding", Title, 40, func(a accepted) string { return raised(&a.FindingChange).Text }),
			TextColumn("report/column.about", Detail, 12, func(a accepted) string { return b.about(raised(&a.FindingChange)) }),
			TextColumn("report/column.look", Detail, 50, func(a accepted) string { return b.lookLines(a.Acceptance) }),
			TextColumn("report/column.todo", Detail, 40, b.still),
			blankColumn[accepted]("report/column.signed", 16),
		},
	}
}

// still is what follows of a finding that the second visit has, too.
func (b comparer) still(a accepted) string {
	if a.New.Compared() <= 0 {
		return ""
	}
	return b.remedy(a.New)
}

// lookLines are what is to be seen or measured, one a line.
func (b comparer) lookLines(a *result.Acceptance) string {
	var out []string
	if a.Change == result.Gone {
		out = append(out, b.say("report/acceptance.gone"))
		if a.Old.Protects == result.ProtectsPeople {
			out = append(out, b.say("report/acceptance.gone_people"))
		}
	}
	for i := range a.Inspections {
		out = append(out, b.inspection(&a.Inspections[i]))
	}
	return strings.Join(distinct(out), "\n")
}

// item is the label of a look with the item that it is about.
func (b comparer) item(l *result.Inspection) string {
	if l.Address.Item != "" {
		return l.Label + " (" + l.Address.Item + ")"
	}
	return l.Label
}

func (b comparer) inspection(l *result.Inspection) string {
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
