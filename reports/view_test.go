package reports

import (
	"reflect"
	"strings"
	"testing"
	"unicode"

	"pgregory.net/rapid"

	"underfoot/assess/message"
	"underfoot/assess/quantity"
	"underfoot/assess/result"
	"underfoot/reports/internal/sample"
)

func sampleView(o Options) *View { return NewView(sample.Result(), o) }

// everyText visits every text of a view.
func everyText(v *View, visit func(string)) {
	for _, text := range append([]string{v.Title, v.Subtitle}, v.Banners...) {
		visit(text)
	}
	for _, s := range v.Sections {
		visit(s.Heading)
		for _, p := range s.Lead {
			visit(p.Label)
			visit(p.Text)
		}
		for _, part := range s.Parts {
			visit(part.Heading)
			for _, p := range part.Lead {
				visit(p.Text)
			}
			if part.Table == nil {
				continue
			}
			for _, row := range part.Table.Rows {
				for _, c := range row.Cells {
					visit(c.Text)
				}
			}
		}
	}
}

func contains(v *View, want string) bool {
	found := false
	everyText(v, func(text string) { found = found || strings.Contains(text, want) })
	return found
}

// rowWith is the row of a section's tables that has the text in some cell, by heading.
func rowWith(t *testing.T, v *View, section, text string) map[string]string {
	t.Helper()
	for _, part := range v.Section(section).Parts {
		if part.Table == nil {
			continue
		}
		for _, row := range part.Table.Rows {
			cells := map[string]string{}
			found := false
			for i, c := range row.Cells {
				cells[part.Table.Columns[i].Heading] = c.Text
				found = found || strings.Contains(c.Text, text)
			}
			if found {
				return cells
			}
		}
	}
	t.Fatalf("%s has no row with %q", section, text)
	return nil
}

func TestSectionsStandInOrder(t *testing.T) {
	want := []string{SummarySection, RoomsSection, FindingsSection, QuestionsSection, PlanSection, QuantitiesSection, HeightsSection,
		CalculationsSection, CautionsSection, AnswersSection, UncheckedSection, SourcesSection, SignOffSection}
	var got []string
	for _, s := range sampleView(Options{}).Sections {
		got = append(got, s.ID)
	}
	if !reflect.DeepEqual(got, want) {
		t.Errorf("sections %v", got)
	}
}

func TestEmptyResultLeavesSectionsOut(t *testing.T) {
	v := NewView(&result.Result{Areas: []result.AreaResult{{ID: "the-room", Zones: []result.ZoneResult{{ID: "main"}}}}}, Options{})
	for _, id := range []string{PlanSection, QuantitiesSection, HeightsSection, CalculationsSection, AnswersSection, SourcesSection} {
		if v.Section(id) != nil {
			t.Errorf("%s has nothing to say and is there", id)
		}
	}
	if v.Section(UncheckedSection) == nil || v.Section(CautionsSection) == nil {
		t.Error("what is not looked at and the cautions that always hold are gone")
	}
}

func TestRowsHaveACellForEachColumn(t *testing.T) {
	for _, s := range sampleView(Options{}).Sections {
		for _, p := range s.Parts {
			if p.Table == nil {
				continue
			}
			headings := map[string]bool{}
			for _, c := range p.Table.Columns {
				if headings[c.Heading] || c.Heading == "" || c.Width == 0 {
					t.Errorf("%s: column %q is doubled, empty or without width", p.Table.ID, c.Heading)
				}
				headings[c.Heading] = true
			}
			if p.Table.Find(Title) < 0 {
				t.Errorf("%s has no title column", p.Table.ID)
			}
			for _, row := range p.Table.Rows {
				if len(row.Cells) != len(p.Table.Columns) {
					t.Errorf("%s: %d cells under %d columns", p.Table.ID, len(row.Cells), len(p.Table.Columns))
				}
			}
		}
	}
}

func TestSummaryNamesVerdictReasonAndDecidingQuestion(t *testing.T) {
	lead := sampleView(Options{}).Section(SummarySection).Lead
	for i, want := range []string{"The answers given point to: stop.", "Kitchen (invented): the old sheet floor", "take up what may not stay", "What did the laboratory say"} {
		if !strings.Contains(lead[i].Text, want) {
			t.Errorf("line %d is %q, want %q", i, lead[i].Text, want)
		}
	}
}

// A figure that nobody looked up says so wherever it shows.
func TestMemoryIsMarked(t *testing.T) {
	v := sampleView(Options{})
	for _, c := range []struct{ section, row, column, want string }{
		{FindingsSection, "stiff enough", "Limit", "in part from memory"},
		{FindingsSection, "stiff enough", "Sources", "(from memory)"},
		{FindingsSection, "added weight is not computed", "Sources", "(common practice)"},
		{HeightsSection, "porcelain tile", "Source", "from memory"},
		{HeightsSection, "mortar bed coat", "Source", "common practice"},
		{CalculationsSection, "stiffness of the wood", "Source", "from memory"},
		{CautionsSection, "Score and snap", "Sources", "from memory"},
		{SourcesSection, "table of tile weights", "How it is known", "from memory"},
	} {
		if got := rowWith(t, v, c.section, c.row)[c.column]; !strings.Contains(got, c.want) {
			t.Errorf("%s, %s, %s: %q does not say %q", c.section, c.row, c.column, got, c.want)
		}
	}
	if got := rowWith(t, v, HeightsSection, "cement backer board")["Source"]; strings.Contains(got, "memory") {
		t.Errorf("a figure read in its source says %q", got)
	}
}

func TestPresumedAndUnknownAreNotTheSame(t *testing.T) {
	v := sampleView(Options{})
	for text, want := range map[string]string{
		"presumed to hold asbestos": "taken as trouble", "may or may not": "not known", "weight is not computed": "not computed",
		"Two sheets": "possible",
	} {
		if got := rowWith(t, v, FindingsSection, text)["How it stands"]; got != want {
			t.Errorf("%s: %q, want %q", text, got, want)
		}
	}
}

// What was not said or not seen never stands among the answers as if it were.
func TestUncheckedKeepsAnswersApart(t *testing.T) {
	v := sampleView(Options{})
	if got := rowWith(t, v, UncheckedSection, "Wood of the joists")["Answer"]; got != "not sure" {
		t.Errorf("not sure reads %q", got)
	}
	if got := rowWith(t, v, UncheckedSection, "Leak, cured or not")["Answer"]; got != "could not see" {
		t.Errorf("could not see reads %q", got)
	}
	for _, p := range v.Section(AnswersSection).Parts {
		for _, row := range p.Table.Rows {
			if text := row.Cells[1].Text; text == "Design live load" || text == "Size of the joists" {
				t.Errorf("%s stands among the answers", text)
			}
		}
	}
}

func TestNoteStandsBeforeEverything(t *testing.T) {
	if got := sampleView(Options{Note: "Made up for a lesson."}).Banners[0]; got != "Made up for a lesson." {
		t.Errorf("first banner %q", got)
	}
	if got := sampleView(Options{}).Banners[0]; !strings.Contains(got, "invented") {
		t.Errorf("an invented record does not say so: %q", got)
	}
	r := sample.Result()
	r.Areas[0].Name, r.Answers = "Kitchen", nil
	if got := NewView(r, Options{}).Banners[0]; strings.Contains(got, "invented") {
		t.Errorf("a record that does not call itself invented is called so: %q", got)
	}
}

func TestUnitsFollowTheReader(t *testing.T) {
	if got := rowWith(t, sampleView(Options{Units: quantity.Metric}), HeightsSection, "cement backer board")["Thickness"]; got != "12.7 mm" {
		t.Errorf("half an inch in metric is %q", got)
	}
}

func TestFoldersStayOut(t *testing.T) {
	v := sampleView(Options{})
	if contains(v, "houses/") || contains(v, "photos/") || !contains(v, "12-invented-lane.yaml") || !contains(v, "span one.jpg") {
		t.Error("files are to be named without the folders that they lie in")
	}
}

func TestSameResultSameView(t *testing.T) {
	if !reflect.DeepEqual(sampleView(Options{}).Sections, sampleView(Options{}).Sections) {
		t.Error("two views of one result differ")
	}
}

// Whatever stands in names, notes and answers, nothing that a terminal or an
// office program might obey comes through.
func TestViewIsClean(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := sample.Result()
		foreign := rapid.String().Draw(t, "foreign") + "\x1b[2J\u202e\x07"
		r.Areas[0].Name, r.Answers[0].Answer.Note, r.Areas[0].Sentence = foreign, foreign, foreign
		r.Areas[0].Findings[0].Text, r.Areas[0].Zones[0].BuildUps[0].Layers[0].Name = foreign, message.Verbatim(foreign)
		everyText(NewView(r, Options{Note: foreign}), func(text string) {
			for _, c := range text {
				if c != '\n' && (unicode.IsControl(c) || unicode.Is(unicode.Bidi_Control, c)) {
					t.Fatalf("%q has %U", text, c)
				}
			}
		})
	})
}
