package record

import (
	"maps"
	"slices"

	"underfoot/assess"
	"underfoot/assess/schema"
)

// sameJob reports whether two jobs say the same of the same things, in the
// same order of things.
func sameJob(a, b *assess.Job) bool {
	return a.Region == b.Region && a.Units == b.Units && a.Visited == b.Visited &&
		maps.EqualFunc(a.Answers, b.Answers, same) && slices.EqualFunc(a.Areas, b.Areas, sameArea)
}

func sameArea(a, b assess.Area) bool {
	return a.ID == b.ID && a.Name == b.Name && maps.EqualFunc(a.Answers, b.Answers, same) && slices.EqualFunc(a.Zones, b.Zones, sameZone)
}

func sameZone(a, b assess.Zone) bool {
	for _, list := range schema.ListScopes {
		if !slices.EqualFunc(a.Lists[list], b.Lists[list], sameItem) {
			return false
		}
	}
	return a.ID == b.ID && maps.EqualFunc(a.Answers, b.Answers, same)
}

func sameItem(a, b assess.Item) bool {
	return a.ID == b.ID && maps.EqualFunc(a.Answers, b.Answers, same)
}
