package record

import (
	"maps"
	"slices"
	"strings"

	"underfoot/assess"
	"underfoot/assess/schema"
)

// A statement is one answer with its whole address.
type statement struct {
	addr schema.Address
	ans  assess.Answer
}

// statements are all answers of a job, from the whole job inwards.
func statements(j *assess.Job) []statement {
	var out []statement
	collect := func(where schema.Address, answers assess.Answers) {
		for _, name := range slices.Sorted(maps.Keys(answers)) {
			at := where
			at.Topic, at.Field, _ = strings.Cut(name, ".")
			out = append(out, statement{at, answers[name]})
		}
	}
	collect(schema.Address{}, j.Answers)
	for _, a := range j.Areas {
		collect(schema.Address{Area: a.ID}, a.Answers)
		for _, z := range a.Zones {
			collect(schema.Address{Area: a.ID, Zone: z.ID}, z.Answers)
			for _, list := range schema.ListScopes {
				for _, it := range z.Lists[list] {
					collect(schema.Address{Area: a.ID, Zone: z.ID, Item: it.ID}, it.Answers)
				}
			}
		}
	}
	return out
}

// things are the addresses of a job's areas, zones and items, outer ones
// first. They have no field.
func things(j *assess.Job) []schema.Address {
	var out []schema.Address
	for _, a := range j.Areas {
		out = append(out, schema.Address{Area: a.ID})
		for _, z := range a.Zones {
			out = append(out, schema.Address{Area: a.ID, Zone: z.ID})
			for _, list := range schema.ListScopes {
				for _, it := range z.Lists[list] {
					out = append(out, schema.Address{Area: a.ID, Zone: z.ID, Topic: list.String(), Item: it.ID})
				}
			}
		}
	}
	return out
}

// thingOf is the innermost thing that an answer belongs to.
func thingOf(addr schema.Address) schema.Address {
	addr.Field = ""
	if addr.Item == "" {
		addr.Topic = ""
	}
	return addr
}

// within reports whether an address lies in a thing or is the thing.
func within(addr, thing schema.Address) bool {
	return addr.Area == thing.Area &&
		(thing.Zone == "" || addr.Zone == thing.Zone) &&
		(thing.Item == "" || addr.Topic == thing.Topic && addr.Item == thing.Item)
}

// thingName is the name of an area, a zone or an item for a reader.
func thingName(thing schema.Address) string {
	words := []string{thing.Area, thing.Zone, thing.Topic, thing.Item}
	return strings.Join(slices.DeleteFunc(words, func(w string) bool { return w == "" }), ".")
}

// drop takes a thing with everything in it out of a job.
func drop(j *assess.Job, thing schema.Address) {
	area := j.Area(thing.Area)
	switch {
	case area == nil:
	case thing.Zone == "":
		j.Areas = slices.DeleteFunc(j.Areas, func(a assess.Area) bool { return a.ID == thing.Area })
	case thing.Item == "":
		area.Zones = slices.DeleteFunc(area.Zones, func(z assess.Zone) bool { return z.ID == thing.Zone })
	default:
		if zone := area.Zone(thing.Zone); zone != nil {
			list, _ := schema.TopicScope(thing.Topic)
			zone.Lists[list] = slices.DeleteFunc(zone.Lists[list], func(it assess.Item) bool { return it.ID == thing.Item })
		}
	}
}

// same reports whether two answers say the same in the same words.
func same(a, b assess.Answer) bool {
	return a.Reply == b.Reply && a.Set == b.Set && a.Text == b.Text && a.Basis == b.Basis &&
		a.With == b.With && a.Note == b.Note && a.On == b.On && slices.Equal(a.Photos, b.Photos)
}
