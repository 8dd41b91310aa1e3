package assess

import (
	"strconv"
	"strings"

	"underfoot/assess/message"
	"underfoot/assess/schema"
)

// Locate fills in the area and the zone that an address leaves out, where the
// job has only one to choose from. The job must be Normal.
func (j *Job) Locate(a schema.Address) (schema.Address, error) {
	scope, ok := schema.TopicScope(a.Topic)
	if !ok {
		return a, message.New("problem/address.no_topic", "word", strconv.Quote(a.Topic)).Err()
	}
	if a.Field == "complete" && scope.Listed() {
		scope = schema.ScopeZone
	}
	if scope == schema.ScopeJob {
		return a, nil
	}
	if a.Area != "" && a.Zone == "" && scope != schema.ScopeArea && j.Area(a.Area) == nil {
		a.Area, a.Zone = "", a.Area
	}
	if a.Area == "" {
		if len(j.Areas) != 1 {
			return a, message.New("problem/address.which_area", "address", a.String(), "areas", strings.Join(j.areaIDs(), ", ")).Err()
		}
		a.Area = j.Areas[0].ID
	}
	area := j.Area(a.Area)
	if area == nil {
		return a, message.New("problem/address.no_area", "address", a.String(), "area", strconv.Quote(a.Area), "areas", strings.Join(j.areaIDs(), ", ")).Err()
	}
	if scope == schema.ScopeArea {
		return a, nil
	}
	if a.Zone == "" {
		if len(area.Zones) != 1 {
			return a, message.New("problem/address.which_zone", "address", a.String(), "area", area.ID, "zones", strings.Join(area.zoneIDs(), ", ")).Err()
		}
		a.Zone = area.Zones[0].ID
	}
	if area.Zone(a.Zone) == nil {
		return a, message.New("problem/address.no_zone", "address", a.String(), "zone", strconv.Quote(a.Zone), "area", area.ID,
			"zones", strings.Join(area.zoneIDs(), ", ")).Err()
	}
	return a, nil
}

// Answer is the answer at a located address.
func (j *Job) Answer(a schema.Address) (Answer, bool) {
	answers := j.answersAt(a, false)
	if answers == nil || *answers == nil {
		return Answer{}, false
	}
	ans, ok := (*answers)[a.Short()]
	return ans, ok
}

// Put stores an answer at a located address. An item that is not there is
// added at the end of its list; ok is false where area or zone is not there.
func (j *Job) Put(a schema.Address, ans Answer) (ok bool) {
	answers := j.answersAt(a, true)
	if answers == nil {
		return false
	}
	if *answers == nil {
		*answers = Answers{}
	}
	(*answers)[a.Short()] = ans
	return true
}

// AddItem puts an item without answers at the end of its list, where there is
// none of that id.
func (j *Job) AddItem(a schema.Address) { j.answersAt(a, true) }

// Forget takes an answer away; it does nothing where there is none.
func (j *Job) Forget(a schema.Address) {
	if answers := j.answersAt(a, false); answers != nil {
		delete(*answers, a.Short())
	}
}

func (j *Job) answersAt(a schema.Address, create bool) *Answers {
	scope, ok := schema.TopicScope(a.Topic)
	if !ok {
		return nil
	}
	if scope == schema.ScopeJob {
		return &j.Answers
	}
	area := j.Area(a.Area)
	if area == nil || scope == schema.ScopeArea {
		if area == nil {
			return nil
		}
		return &area.Answers
	}
	zone := area.Zone(a.Zone)
	if zone == nil {
		return nil
	}
	if !scope.Listed() || a.Item == "" {
		return &zone.Answers
	}
	for i := range zone.Lists[scope] {
		if zone.Lists[scope][i].ID == a.Item {
			return &zone.Lists[scope][i].Answers
		}
	}
	if !create {
		return nil
	}
	zone.Lists[scope] = append(zone.Lists[scope], Item{ID: a.Item})
	return &zone.Lists[scope][len(zone.Lists[scope])-1].Answers
}

// Area is the room of an id, nil where there is none.
func (j *Job) Area(id string) *Area {
	for i := range j.Areas {
		if j.Areas[i].ID == id {
			return &j.Areas[i]
		}
	}
	return nil
}

// Zone is the part of a room with an id, nil where there is none; no room has
// no parts.
func (a *Area) Zone(id string) *Zone {
	if a == nil {
		return nil
	}
	for i := range a.Zones {
		if a.Zones[i].ID == id {
			return &a.Zones[i]
		}
	}
	return nil
}

func (j *Job) areaIDs() []string {
	ids := make([]string, len(j.Areas))
	for i := range j.Areas {
		ids[i] = j.Areas[i].ID
	}
	return ids
}

func (a *Area) zoneIDs() []string {
	ids := make([]string, len(a.Zones))
	for i := range a.Zones {
		ids[i] = a.Zones[i].ID
	}
	return ids
}
