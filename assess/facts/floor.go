package facts

import (
	"underfoot/assess"
	"underfoot/assess/logic"
	"underfoot/assess/result"
	"underfoot/assess/schema"
)

// A Floor is a job filled in: every fact of every thing, and the checks that
// gave some of them.
type Floor struct {
	Index   schema.Index
	Job     *Frame
	Areas   []*Frame
	Zones   [][]*Frame // by area
	Visited assess.Day
	checks  map[*Frame][]result.Check // by area frame
	plan    *Plan
}

// Fill makes the facts of a job, which must be Normal. Ages count up to the
// day of the visit, or to today where the record does not name one.
func (p *Plan) Fill(job *assess.Job, today assess.Day) *Floor {
	fl := &Floor{plan: p, Visited: job.Visited, checks: map[*Frame][]result.Check{}}
	if fl.Visited == "" {
		fl.Visited = today
	}
	fl.Job = fl.frame(nil, schema.ScopeJob, "", job.Answers, nil)
	for i := range job.Areas {
		fl.addArea(&job.Areas[i])
	}
	for i := range p.order {
		fl.run(&p.order[i])
	}
	return fl
}

func (fl *Floor) frame(parent *Frame, scope schema.Scope, id string, answers assess.Answers, assumed map[string]schema.Set) *Frame {
	f := &Frame{floor: fl, parent: parent, scope: scope, id: id, answers: answers, assumed: assumed,
		facts: make([]schema.Fact, fl.plan.sizes[scope])}
	if parent != nil {
		f.where = parent.where
	}
	switch scope {
	case schema.ScopeArea:
		f.where.Area = id
	case schema.ScopeZone:
		f.where.Zone, f.zone = id, &zoneLists{}
	}
	return f
}

func (fl *Floor) addArea(a *assess.Area) {
	area := fl.frame(fl.Job, schema.ScopeArea, a.ID, a.Answers, nil)
	fl.Areas = append(fl.Areas, area)
	var zones []*Frame
	for i := range a.Zones {
		zones = append(zones, fl.addZone(area, &a.Zones[i]))
	}
	fl.Zones = append(fl.Zones, zones)
}

func (fl *Floor) addZone(area *Frame, z *assess.Zone) *Frame {
	zone := fl.frame(area, schema.ScopeZone, z.ID, z.Answers, z.Assumed)
	for _, list := range schema.ListScopes {
		for i := range z.Lists[list] {
			it := &z.Lists[list][i]
			zone.zone.items[list] = append(zone.zone.items[list], fl.frame(zone, list, it.ID, it.Answers, it.Assumed))
		}
	}
	for _, base := range result.Assemblies() {
		zone.zone.paths = append(zone.zone.paths, fl.frame(zone, schema.ScopePath, base.String(), nil, nil))
	}
	return zone
}

// run makes one maker's facts for every thing of its scope, and opens or
// closes a list once the answer that closes it is known.
func (fl *Floor) run(m *maker) {
	switch m.scope {
	case schema.ScopeJob:
		m.make([]*Frame{fl.Job})
	case schema.ScopeArea:
		m.make(fl.Areas)
	default:
		for _, zones := range fl.Zones {
			for _, z := range zones {
				m.make(z.Things(m.scope))
			}
		}
	}
	if list, ok := fl.closes(m); ok {
		for _, zones := range fl.Zones {
			for _, z := range zones {
				z.close(list, m.gives[0])
			}
		}
	}
}

func (fl *Floor) closes(m *maker) (schema.Scope, bool) {
	for _, list := range schema.ListScopes {
		if len(m.gives) == 1 && m.gives[0] == fl.plan.lists[list] {
			return list, true
		}
	}
	return 0, false
}

// close decides whether a list of the zone has a rest. A list that does not
// apply here has neither rest nor items; one that is complete if it applies at
// all has no rest.
func (f *Frame) close(list schema.Scope, complete schema.FactID) {
	fact := f.Fact(complete)
	switch {
	case fact.Presence.Truth == logic.No:
		f.zone.items[list] = nil
		return
	case fact.Set == schema.SetYes:
		return
	}
	rest := f.floor.frame(f, list, RestID, nil, nil)
	rest.rest = logic.DependOn(f.ref(f.floor.plan.schema.Decl(complete))).Union(fact.Presence.Deps)
	f.zone.rest[list] = rest
}

func (fl *Floor) addCheck(f *Frame, c *result.Check) {
	zone := f.Zone()
	c.Zone = zone.id
	if f.scope == schema.ScopePath {
		c.Path, _ = result.ParsePath(f.id)
	}
	fl.checks[zone.parent] = append(fl.checks[zone.parent], *c)
}

// Checks are the computed checks of an area, in the order of their making.
func (fl *Floor) Checks(area int) []result.Check { return fl.checks[fl.Areas[area]] }
