package assess

import (
	"maps"
	"slices"
	"underfoot/assess/logic"
	"underfoot/assess/schema"
)

// A Job is one record: what was answered about one house. Answers stand by
// address; which addresses there are is the catalogue's business.
type Job struct {
	Region  string // us, ca, uk, ie, au, nz, de, eu, other; empty: not said
	Units   string // us or mm
	Visited Day
	Answers Answers
	Areas   []Area
}

// An Area is a room, with what is to be laid in it.
type Area struct {
	ID, Name string
	Answers  Answers
	Zones    []Zone
}

// A Zone is a part of a room with one base and one order of layers.
type Zone struct {
	ID      string
	Answers Answers // with `layer.complete` and the like
	Lists   [schema.ScopeCount][]Item
	Assumed map[string]schema.Set // what a plan takes as done, over every answer and sum
}

// An Item is one listed thing: a layer, a crack, a doorway.
type Item struct {
	ID      string
	Answers Answers
	Assumed map[string]schema.Set
}

// Clone is a copy that shares nothing that can change.
func (j *Job) Clone() *Job {
	c := *j
	c.Answers = maps.Clone(j.Answers)
	c.Areas = slices.Clone(j.Areas)
	for i := range c.Areas {
		c.Areas[i] = c.Areas[i].clone()
	}
	return &c
}

func (a Area) clone() Area {
	a.Answers = maps.Clone(a.Answers)
	a.Zones = slices.Clone(a.Zones)
	for i := range a.Zones {
		a.Zones[i] = a.Zones[i].Clone()
	}
	return a
}

// Clone is a copy that shares nothing that can change.
func (z Zone) Clone() Zone {
	z.Answers, z.Assumed = maps.Clone(z.Answers), maps.Clone(z.Assumed)
	for s, items := range z.Lists {
		items = slices.Clone(items)
		for i := range items {
			items[i].Answers, items[i].Assumed = maps.Clone(items[i].Answers), maps.Clone(items[i].Assumed)
		}
		z.Lists[s] = items
	}
	return z
}

// Only is the job with one zone of one area alone, by their places; it shares
// nothing that can change. What is judged of a zone rests on the job, its area
// and itself, so that another floor for it takes no other room.
func (j *Job) Only(area, zone int) *Job {
	c := *j
	c.Answers = maps.Clone(j.Answers)
	a := j.Areas[area]
	a.Zones = a.Zones[zone : zone+1]
	c.Areas = []Area{a.clone()}
	return &c
}

// Normal is the job with at least one area, and at least one zone in each: a
// record that names none has the open area `the-room` with the zone `main`.
func (j *Job) Normal() *Job {
	c := j.Clone()
	if len(c.Areas) == 0 {
		c.Areas = []Area{{ID: "the-room"}}
	}
	for i := range c.Areas {
		if len(c.Areas[i].Zones) == 0 {
			c.Areas[i].Zones = []Zone{{ID: "main"}}
		}
	}
	return c
}

// CompleteField is the short name of the answer that closes a list.
func CompleteField(list schema.Scope) string { return list.String() + ".complete" }

// ListClosed is what is known of the list being complete: yes, no or open. An
// absent load list is a closed empty one, since loads are the owner's choice.
func (z *Zone) ListClosed(list schema.Scope) logic.Truth {
	a, said := z.Answers[CompleteField(list)]
	switch {
	case said && a.Reply == Given && a.Set == schema.SetYes, said && a.Reply == DoesNotApply:
		return logic.Yes
	case said && a.Reply == Given && a.Set == schema.SetNo:
		return logic.No
	case !said && list == schema.ScopeLoad:
		return logic.Yes
	}
	return logic.Open
}
