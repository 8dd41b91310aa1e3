package rules

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"underfoot/assess"
	"underfoot/assess/quantity"
	"underfoot/assess/result"
	"underfoot/assess/schema"
)

// changed are the changes of a comparison by finding.
func changed(c *result.Comparison) map[string]result.Change {
	out := map[string]result.Change{}
	for _, a := range c.Areas {
		for _, f := range a.Findings {
			out[a.ID+" "+f.Zone+" "+f.Latest().Rule+" "+f.Latest().Subject] = f.Change
		}
	}
	return out
}

// put answers one question of the first room's first zone.
func put(t *testing.T, e *Engine, job *assess.Job, address, text string, basis assess.Basis) {
	t.Helper()
	at, err := schema.ParseAddress(address)
	if err != nil {
		t.Fatal(err)
	}
	if at, err = job.Locate(at); err != nil {
		t.Fatal(err)
	}
	set, err := e.Catalogue.Read(e.Catalogue.Find(at.Short()).Decl, text, quantity.US)
	if err != nil || !job.Put(at, assess.Answer{Set: set, Text: text, Basis: basis}) {
		t.Fatalf("%s = %s: %v", address, text, err)
	}
}

// One floor before and after: the laboratory has cleared the lower vinyl, the
// upper one has come loose, and the joists are known to be too limber.
func TestCompare(t *testing.T) {
	e := openUS(t)
	old, _ := readJob(t, e, "../testdata/cases/P05.yaml")
	now := old.Clone()
	put(t, e, now, "layer.l2.lab_result", "none-found", assess.Document)
	put(t, e, now, "layer.l2.lab_complete", "yes", assess.Told)
	put(t, e, now, "layer.l1.tight", "no", assess.Seen)
	put(t, e, now, "joist.known_ratio", "300", assess.Document)
	c := e.Judge(now, old.Visited).Compare(e.Judge(old, old.Visited))
	got := changed(c)
	for finding, want := range map[string]result.Change{
		"asbestos-presumed-layer l2": result.Cured, "resilient-loose l1": result.New, "joist-too-soft ": result.New,
	} {
		name := "the-room main " + finding
		if is, ok := got[name]; !ok || is != want {
			t.Errorf("%s is %s (%t), want %s; there are %v", name, is, ok, want, got)
		}
	}
	if z := c.Areas[0].Zones[0]; z.Old.Path != result.TestOrAbate || z.New.Path != result.Strengthen {
		t.Errorf("the way goes from %s to %s", z.Old.Path, z.New.Path)
	}
	var answers []string
	for _, a := range c.Answers {
		answers = append(answers, a.Address.Local())
	}
	slices.Sort(answers)
	if want := "joist.known_ratio layer.l1.tight layer.l2.lab_complete layer.l2.lab_result"; strings.Join(answers, " ") != want {
		t.Errorf("changed answers are %v, want %s", answers, want)
	}
	checkAccepted(t, c)
}

// checkAccepted holds the acceptance list of the cleared vinyl: the report is on
// paper, that it is complete was only told.
func checkAccepted(t *testing.T, c *result.Comparison) {
	t.Helper()
	for _, a := range c.Areas[0].Accept {
		if a.Latest().Rule != "asbestos-presumed-layer" || a.Latest().Subject != "l2" {
			continue
		}
		var inspections []string
		for _, l := range a.Inspections {
			inspections = append(inspections, fmt.Sprintf("%s %s %t", l.Address.Local(), l.Value, l.Firm()))
		}
		if got := strings.Join(inspections, "; "); got != "layer.l2.lab_result None found true; layer.l2.lab_complete yes false" {
			t.Errorf("to be seen: %s", got)
		}
		return
	}
	t.Error("the cleared layer has no line in the acceptance list")
}

// A record beside itself has no change, and exchanged visits exchange the words.
func TestCompareIsFair(t *testing.T) {
	e := openUS(t)
	mirrored := map[result.Change][]result.Change{
		result.New: {result.Cured, result.Gone}, result.Cured: {result.New}, result.Gone: {result.New},
		result.Worse: {result.Better}, result.Better: {result.Worse}, result.Unchanged: {result.Unchanged},
	}
	trials(t, e, 12, func(t *testing.T, g floorplan) {
		a, b := g.job(40), g.job(70)
		for name, change := range changed(e.Judge(a.Clone(), today).Compare(e.Judge(a, today))) {
			if change != result.Unchanged {
				t.Errorf("%s is %s beside itself", name, change)
			}
		}
		there := changed(e.Judge(b, today).Compare(e.Judge(a, today)))
		back := changed(e.Judge(a, today).Compare(e.Judge(b, today)))
		if len(there) != len(back) {
			t.Errorf("%d findings there, %d back", len(there), len(back))
		}
		for name, change := range there {
			if !slices.Contains(mirrored[change], back[name]) {
				t.Errorf("%s is %s there and %s back", name, change, back[name])
			}
		}
	})
}

// Rooms and zones that one record lacks are named, never passed over.
func TestCompareNamesWhatIsNotInBoth(t *testing.T) {
	e := openUS(t)
	old := &assess.Job{Areas: []assess.Area{{ID: "bath"}, {ID: "hall", Zones: []assess.Zone{{ID: "main"}, {ID: "bay"}}}}}
	now := &assess.Job{Areas: []assess.Area{{ID: "hall", Zones: []assess.Zone{{ID: "main"}, {ID: "porch"}}}, {ID: "kitchen"}}}
	c := e.Judge(now, today).Compare(e.Judge(old, today))
	if got := fmt.Sprint(c.Added, c.Missing); got != "[kitchen] [bath]" {
		t.Errorf("added and missing: %s", got)
	}
	var zones []string
	for _, z := range c.Areas[0].Zones {
		zones = append(zones, fmt.Sprintf("%s %t %t", z.ID, z.Old != nil, z.New != nil))
	}
	if got := strings.Join(zones, ", "); got != "main true true, porch false true, bay true false" {
		t.Errorf("zones: %s", got)
	}
}
