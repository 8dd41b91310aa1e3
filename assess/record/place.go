package record

import (
	"fmt"
	"slices"

	"underfoot/assess"
	"underfoot/assess/message"
	"underfoot/assess/schema"
)

// AddArea adds a room at the end. The name may be empty.
func (d *Document) AddArea(id, name string) error {
	if d.job.Area(id) != nil {
		return refuse(id, message.New("record/thing.area_there"), noHint)
	}
	if what, hint := checkID(id); !what.IsZero() {
		return refuse("", message.New("record/id.of", "of", "area", "what", what), hint)
	}
	job := d.change()
	job.Areas = append(job.Areas, assess.Area{ID: id, Name: name})
	return nil
}

// AddZone adds a zone at the end of an area.
func (d *Document) AddZone(area, id string) error {
	a := d.job.Area(area)
	switch what, hint := checkID(id); {
	case a == nil:
		return refuse(area, message.New("record/thing.no_area"), noHint)
	case !what.IsZero():
		return refuse(area, message.New("record/id.of", "of", "zone", "what", what), hint)
	case a.Zone(id) != nil:
		return refuse(area+"."+id, message.New("record/thing.zone_there"), noHint)
	}
	a = d.change().Area(area)
	a.Zones = append(a.Zones, assess.Zone{ID: id})
	return nil
}

// DropItem takes an item with all its answers off a list.
func (d *Document) DropItem(item schema.Address) error {
	list, err := d.located(&item)
	if err != nil {
		return err
	}
	if a := d.job.Area(item.Area); a == nil || a.Zone(item.Zone) == nil || findItem(a.Zone(item.Zone), list, item.Item) < 0 {
		return refuse(thingName(item), message.New("record/thing.no_item"), noHint)
	}
	drop(d.change(), item)
	return nil
}

// located fills in area and zone of an item's address.
func (d *Document) located(item *schema.Address) (schema.Scope, error) {
	list, ok := schema.TopicScope(item.Topic)
	if !ok || !list.Listed() {
		return list, refuse(item.Topic, message.New("record/thing.no_list"), message.New("record/thing.lists", "lists", fmt.Sprint(listKeys())))
	}
	where, err := d.job.Normal().Locate(*item)
	if err != nil {
		return list, refuse("", message.Of(err), noHint)
	}
	*item = where
	return list, nil
}

// DropZone takes a zone with everything in it out of its area.
func (d *Document) DropZone(area, id string) error {
	if a := d.job.Area(area); a == nil || a.Zone(id) == nil {
		return refuse(area+"."+id, message.New("record/thing.no_zone"), noHint)
	}
	drop(d.change(), schema.Address{Area: area, Zone: id})
	return nil
}

// DropArea takes an area with everything in it out of the record.
func (d *Document) DropArea(id string) error {
	if d.job.Area(id) == nil {
		return refuse(id, message.New("record/thing.no_area"), noHint)
	}
	drop(d.change(), schema.Address{Area: id})
	return nil
}

// RenameArea gives an area another id and name.
func (d *Document) RenameArea(old, id, name string) error {
	switch what, hint := checkID(id); {
	case d.job.Area(old) == nil:
		return refuse(old, message.New("record/thing.no_area"), noHint)
	case !what.IsZero():
		return refuse(old, what, hint)
	case id != old && d.job.Area(id) != nil:
		return refuse(id, message.New("record/thing.area_there"), noHint)
	}
	a := d.change().Area(old)
	a.ID, a.Name = id, name
	if was := d.was.Area(old); was != nil && d.was.Area(id) == nil {
		d.rename(was, id)
	}
	return nil
}

// rename carries a new id into what was read, so that the area's comments and
// unknown keys go with it.
func (d *Document) rename(was *assess.Area, id string) {
	d.tree = copyTree(d.tree)
	if n := element(child(d.tree.Content[0], "areas"), was.ID); n != nil {
		child(n, "id").Value = id
	}
	was.ID, d.renamed = id, true
}

func findItem(z *assess.Zone, list schema.Scope, id string) int {
	return slices.IndexFunc(z.Lists[list], func(it assess.Item) bool { return it.ID == id })
}
