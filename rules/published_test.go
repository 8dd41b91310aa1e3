package rules

import (
	"slices"
	"testing"

	"underfoot/assess"
	"underfoot/assess/message"
	"underfoot/assess/quantity"
	"underfoot/assess/result"
)

// What the published cases and the scenarios together have to show.
const (
	publishedCases  = 69 // questions that were handed down
	publishedLeast  = 60 // of them recorded at least
	acceptedPercent = 95 // accepted of 100
	tileOnlyCases   = 12 // answered with ways to lay tile alone
)

// A verdict on a published case, best first.
const (
	outright  = "outright"      // its own path leads
	behind    = "behind a gate" // what was not said is asked first; then its own path leads
	undated   = "undated"       // a suspect layer without a date is tested first, whatever was answered
	argued    = "argued"        // our answer differs, and README.md of the cases says why
	unmatched = "unmatched"
)

// TestPublishedCases holds every case to what practitioners answered, as it
// was told and behind its gate, and counts.
func TestPublishedCases(t *testing.T) {
	cases, ours := readPublished(t), readArgued(t)
	count := map[string]int{}
	tile, tileOnly := 0, 0
	for i := range cases {
		c := &cases[i]
		before := c.assess()
		c.openGate(t)
		after := c.assess()
		c.checkNarrows(t, before, after)
		c.checkMentions(t, before)
		how := c.judge(before, after, ours[c.id])
		if count[how]++; how == unmatched {
			t.Errorf("%s leads to %v, behind its gate to %v, want %v", c.id, leads(before), leads(after), c.expected)
		}
		if how != argued && how != undated && ours[c.id] {
			t.Errorf("%s is argued, and needs no argument", c.id)
		}
		c.neverLead(t, before)
		c.neverLead(t, after)
		if c.tileOnly() {
			tileOnly++
			tile += number(endsInTile(after))
		}
		t.Logf("%-4s %-13s %v, behind its gate %v; answered %v", c.id, how, leads(before), leads(after), c.expected)
	}
	t.Logf("%d of %d published cases: %v; %d of %d with tile alone end in tile", len(cases), publishedCases, count, tile, tileOnly)
	checkCounts(t, len(cases), count)
	if tileOnly != tileOnlyCases || tile < tileOnlyCases-1 {
		t.Errorf("%d of %d cases with tile alone end in tile, want at least %d of %d", tile, tileOnly, tileOnlyCases-1, tileOnlyCases)
	}
}

func checkCounts(t *testing.T, recorded int, count map[string]int) {
	t.Helper()
	scenarios, waiting := scenarioCounts(t)
	accepted := count[outright] + count[behind] + count[undated]
	t.Logf("with the 25 scenarios: %d outright, %d behind a gate", scenarios+count[outright]+count[undated], waiting+count[behind])
	if recorded < publishedLeast {
		t.Errorf("%d cases recorded, want at least %d", recorded, publishedLeast)
	}
	if 100*accepted < acceptedPercent*recorded {
		t.Errorf("%d of %d accepted, want at least %d of 100", accepted, recorded, acceptedPercent)
	}
}

func number(yes bool) int {
	if yes {
		return 1
	}
	return 0
}

// judge says how the answer stands to what was answered in public.
func (c *published) judge(before, after *result.Result, arguedHere bool) string {
	switch {
	case c.accepts(before):
		return outright
	case c.waits(before) && c.accepts(after):
		return behind
	case testsUndated(before):
		return undated
	case arguedHere:
		return argued
	}
	return unmatched
}

// accepts reports whether every zone leads to what was answered.
func (c *published) accepts(r *result.Result) bool {
	return everyZone(r, c.acceptsZone)
}

// waits reports whether each zone leads to its answer or to a gate.
func (c *published) waits(r *result.Result) bool {
	return everyZone(r, func(a *result.AreaResult, z *result.ZoneResult) bool {
		return c.acceptsZone(a, z) || z.Path == result.FindOut || z.Path == result.TestOrAbate
	})
}

// testsUndated reports whether every zone leads to a laboratory because a
// layer's age is not known. That is accepted always: many public answers
// forgot it.
func testsUndated(r *result.Result) bool {
	return everyZone(r, func(a *result.AreaResult, z *result.ZoneResult) bool {
		return z.Path == result.TestOrAbate && slices.ContainsFunc(a.Findings, func(f result.Finding) bool {
			return f.Presumed && f.Protects == result.ProtectsPeople
		})
	})
}

func (c *published) acceptsZone(a *result.AreaResult, z *result.ZoneResult) bool {
	switch {
	case slices.Contains(c.expected, z.Path.String()):
		return true
	case slices.Contains(c.expected, anotherFinish):
		return z.Span.Low >= result.Repair
	case slices.Contains(c.expected, onPaper):
		return !z.Path.IsAssembly() && slices.ContainsFunc(a.Findings, func(f result.Finding) bool { return f.Outcome == result.Fails })
	}
	return false
}

// endsInTile reports whether the plan of every zone ends with tile on the floor.
func endsInTile(r *result.Result) bool {
	return everyZone(r, func(_ *result.AreaResult, z *result.ZoneResult) bool {
		return len(z.Plan) > 0 && z.Plan[len(z.Plan)-1].Path.IsAssembly()
	})
}

// neverLead refuses what must not lead, and tile where the answer was to stop,
// refer, dry or take up.
func (c *published) neverLead(t *testing.T, r *result.Result) {
	t.Helper()
	everyZone(r, func(_ *result.AreaResult, z *result.ZoneResult) bool {
		if slices.Contains(c.never, z.Path.String()) {
			t.Errorf("%s must never lead to %s", c.id, z.Path)
		}
		if c.noTile() && (z.Path.IsAssembly() || z.Path == result.Level) {
			t.Errorf("%s must not be tiled over, but %s leads", c.id, z.Path)
		}
		return true
	})
}

func everyZone(r *result.Result, holds func(*result.AreaResult, *result.ZoneResult) bool) bool {
	for i := range r.Areas {
		a := &r.Areas[i]
		for j := range a.Zones {
			if !holds(a, &a.Zones[j]) {
				return false
			}
		}
	}
	return true
}

// leads are the leading paths of all zones.
func leads(r *result.Result) []string {
	var out []string
	everyZone(r, func(_ *result.AreaResult, z *result.ZoneResult) bool {
		out = append(out, z.Path.String())
		return true
	})
	return out
}

// The rules of each region and unit system are opened once.
type opened struct {
	region string
	system quantity.System
}

func engineOf(t *testing.T, engines map[opened]*Engine, job *assess.Job) *Engine {
	t.Helper()
	key := opened{job.Region, quantity.US}
	if job.Units == "mm" {
		key.system = quantity.Metric
	}
	if engines[key] == nil {
		e, err := Open(key.region, key.system, message.English())
		if err != nil {
			t.Fatal(err)
		}
		engines[key] = e
	}
	return engines[key]
}
